import { expect, test } from "vitest";
import { listOutgoing } from "#db/queries/outgoing.ts";
import { insertUser } from "#db/queries/user.ts";
import { draftNotices } from "#lib/operations/draft-notices.ts";
import { saveMailRules } from "#lib/operations/save-mail-rules.ts";
import { sendNotices } from "#lib/operations/send-notices.ts";
import { sendNextOutgoing } from "#lib/operations/send-outgoing.ts";
import { testMail } from "#lib/operations/test-mail.ts";
import { aMailbox } from "../../support/imap.ts";
import { aDesk, must } from "../../support/office.ts";
import { aPeer } from "../../support/smtp.ts";
import { aWorkplace } from "../../support/workplace.ts";

function anAdmin() {
  const desk = aDesk();
  const role = "admin" as const;
  const act = { ...desk.act, actor: { ...desk.act.actor, role } };
  const user = {
    id: act.actor.id,
    name: act.actor.name,
    email: "dana@example.com",
    role,
    disabled: false,
  };
  insertUser(act.db, { user, passwordHash: "none", at: act.now });
  return { ...desk, act };
}

test("the settings are tried with a message to whoever asks, and the mailbox is opened", async () => {
  const { act } = anAdmin();
  const peer = await aPeer();
  const { imap } = await aMailbox(["Subject: One\r\n\r\nwords\r\n"]);
  const { said } = must(await testMail(act, { smtp: peer.smtp, imap, mailFrom: "" }));
  expect(said).toMatch(
    /^To dana@example.com, accepted: 250 .*Mailbox INBOX: opened, 1 message in it\.$/,
  );
  expect(peer.received[0]).toMatchObject({ to: { text: '"Dana Okafor" <dana@example.com>' } });
});

test("what each server refuses is told in its own words", async () => {
  const { act } = anAdmin();
  const peer = await aPeer([550, 451]);
  const settings = { smtp: peer.smtp, imap: null, mailFrom: "" };
  const detail = async (all: Parameters<typeof testMail>[1]) => {
    const tried = await testMail(act, all);
    return tried.ok ? "works" : tried.error.detail;
  };
  expect(await detail(settings)).toMatch(/refused for good: 550/);
  expect(await detail(settings)).toMatch(/not accepted now: 451/);
  const { imap } = await aMailbox();
  const locked = { ...imap, password: "wrong" };
  expect(await detail({ ...settings, imap: locked })).toMatch(/accepted: 250.*Mailbox INBOX: \w/);
  expect(await detail({ ...settings, smtp: { ...peer.smtp, port: 1 } })).toContain("ECONNREFUSED");
  expect(await detail({ ...settings, smtp: null })).toContain("No mail server is set");
});

test("only an admin tries the settings or sets the limit", async () => {
  const { act } = aDesk();
  const none = { smtp: null, imap: null, mailFrom: "" };
  expect(await testMail(act, none)).toMatchObject({ error: { reason: "not-allowed" } });
  expect(saveMailRules(act, { perHour: 5 })).toMatchObject({ error: { reason: "not-allowed" } });
});

test("no more emails go out in an hour than the office says; the rest wait and go later", async () => {
  const desk = anAdmin();
  const { act, lineId } = desk;
  expect(saveMailRules(act, { perHour: 0 })).toMatchObject({ error: { path: "perHour" } });
  must(saveMailRules(act, { perHour: 1 }));
  const recipients = ["12", "14"].map((house) => ({
    ...{ partyId: `owner-${house}`, propertyId: house, tieInId: null, splitId: null },
  }));
  const drafts = { lineId, kind: "finding", replyBy: "2026-12-10", recipients } as const;
  const { noticeIds } = must(draftNotices(act, drafts));
  must(sendNotices(act, { lineId, noticeIds, method: "mail-message", sentOn: "2026-11-25" }));
  const peer = await aPeer();
  const { place, wait } = aWorkplace(desk, { smtp: peer.smtp });
  const states = () =>
    listOutgoing(act.db, lineId).map(({ state, attempts }) => `${state} ${attempts}`);
  expect(await sendNextOutgoing(place)).toBe(true);
  expect(await sendNextOutgoing(place)).toBe(false);
  wait(59);
  expect(await sendNextOutgoing(place)).toBe(false);
  expect(states()).toEqual(["sent 1", "waiting 0"]);
  wait(1);
  expect(await sendNextOutgoing(place)).toBe(true);
  expect(states()).toEqual(["sent 1", "sent 1"]);
  expect(peer.received).toHaveLength(2);
});
