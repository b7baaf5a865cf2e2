import { expect, test } from "vitest";
import { listJobs } from "#db/queries/job.ts";
import { listLinks } from "#db/queries/link.ts";
import { getOffice } from "#db/queries/office.ts";
import { listOutgoing } from "#db/queries/outgoing.ts";
import { frozenLetter } from "#lib/domain/paper/frozen-letter.ts";
import { linkView } from "#lib/domain/paper/link-view.ts";
import { reportOn } from "#lib/domain/report/report-on.ts";
import { recordDelivery } from "#lib/operations/record-delivery.ts";
import { runNextJob } from "#lib/operations/run-job.ts";
import { sendNextOutgoing } from "#lib/operations/send-outgoing.ts";
import { signByLink } from "#lib/operations/sign-by-link.ts";
import {
  aDoor,
  aLinkTo,
  anOpenedLink,
  aSentLetter,
  aSplit,
  aWorker,
  type LinkDesk,
} from "../../support/link.ts";
import { aDesk, fileOf, must } from "../../support/office.ts";
import { tamper } from "../../support/tamper.ts";

const SPOILED = ["", "{", "null", "7", '"a letter"', "{}", '{"kind":"finding","blocks":[null]}'];

test.each(SPOILED)("a letter kept as %j is no letter", (frozen) => {
  expect(frozenLetter(frozen)).toBeNull();
});

test("a private page whose letter can’t be read shows the rest, and asks for no signature", () => {
  const desk = aDesk();
  const { act, lineId } = desk;
  const noticeId = aSentLetter(desk, "entry-consent");
  aLinkTo(desk, noticeId);
  const [link] = listLinks(act.db, { lineId, noticeId });
  const file = fileOf(act, lineId);
  const notice = file.notices.find(({ id }) => id === noticeId);
  const office = getOffice(act.db);
  if (link === undefined || notice === undefined || office === null) throw new Error("No letter");
  const shown = {
    file,
    report: reportOn(file, act.today),
    office,
    link,
    visits: [],
  };
  const whole = linkView({ ...shown, notice });
  expect(whole?.letter?.subject).not.toBe("");
  expect(whole?.asks.length).toBeGreaterThan(0);
  const spoiled = linkView({ ...shown, notice: { ...notice, frozen: "{" } });
  expect(spoiled).toMatchObject({ letter: null, asks: [], share: null });
  expect(spoiled?.partyName).toBe(whole?.partyName);
  expect(spoiled?.replies).toEqual(whole?.replies);
});

/** What was kept of a letter that was sent is spoiled, and its paper is not made yet. */
function spoil({ act }: LinkDesk, noticeId: string): void {
  tamper(act.db, `update notices set frozen_json = '{', upload_id = null where id = '${noticeId}'`);
}

const WHAT_TO_DO = /can’t be read. Restore this line from a backup, or send the letter again/;

test("a letter that can’t be read is not printed, and the job says so at once", async () => {
  const desk = aDesk();
  const { act, lineId } = desk;
  const noticeId = aSentLetter(desk, "entry-consent");
  aLinkTo(desk, noticeId);
  spoil(desk, noticeId);
  await runNextJob(aWorker(desk));
  const [job] = listJobs(act.db, lineId);
  expect(job).toMatchObject({ state: "failed", problem: expect.stringMatching(WHAT_TO_DO) });
});

test("it is not mailed again, and may still be recorded as sent by hand", () => {
  const desk = aDesk();
  const { act, lineId } = desk;
  const noticeId = aSentLetter(desk, "entry-consent");
  spoil(desk, noticeId);
  const again = { lineId, noticeId, sentOn: act.today, tracking: "", note: "" };
  expect(recordDelivery(act, { ...again, method: "mail-message" })).toMatchObject({
    error: { path: "method", detail: expect.stringMatching(WHAT_TO_DO) },
  });
  expect(listOutgoing(act.db, lineId)).toEqual([]);
  must(recordDelivery(act, { ...again, method: "by-hand" }));
});

test("a message that waits in the outbox with it is given up, not tried for days", async () => {
  const desk = aDesk();
  const { act, lineId } = desk;
  const noticeId = aSentLetter(desk, "entry-consent");
  const again = { lineId, noticeId, sentOn: act.today, tracking: "", note: "" };
  must(recordDelivery(act, { ...again, method: "mail-message" }));
  spoil(desk, noticeId);
  await sendNextOutgoing(aWorker(desk));
  expect(listOutgoing(act.db, lineId)[0]).toMatchObject({
    state: "failed",
    problem: expect.stringMatching(WHAT_TO_DO),
  });
});

test("nothing is signed by a letter that can’t be read", async () => {
  const desk = aDesk();
  const { act, lineId } = desk;
  const splitId = aSplit(desk);
  const noticeId = aSentLetter(desk, "proposed-split", { splitId });
  const secret = await anOpenedLink(desk, noticeId);
  tamper(act.db, `update notices set frozen_json = '{' where id = '${noticeId}'`);
  const signing = {
    ...{
      secret,
      splitId,
      kinds: ["pay"] as const,
      signedNames: ["Ottilie Brandvold"],
      capacity: "",
    },
    ...{ drawing: null, records: true, language: "en" as const },
  };
  expect(await signByLink(aDoor(desk), signing)).toMatchObject({
    error: { path: "letter-unreadable" },
  });
  expect(fileOf(act, lineId).signatures).toEqual([]);
});
