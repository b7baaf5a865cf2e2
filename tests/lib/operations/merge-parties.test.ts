import { expect, test } from "vitest";
import { getJob } from "#db/queries/job.ts";
import { getKeptFile } from "#db/queries/line-file.ts";
import { putOffice } from "#db/queries/office.ts";
import { getRevisions } from "#db/queries/revision.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import { likelySame } from "#lib/domain/party/likely-same.ts";
import { personRows } from "#lib/domain/party/people.ts";
import { signersFor } from "#lib/domain/party/signers.ts";
import { reportOn } from "#lib/domain/report/report-on.ts";
import type { Act } from "#lib/operations/act.ts";
import { draftNotices } from "#lib/operations/draft-notices.ts";
import { exportLine } from "#lib/operations/export-line.ts";
import { judgeParties, undoSameParty } from "#lib/operations/merge-parties.ts";
import { recordConsent } from "#lib/operations/record-consent.ts";
import { runNextJob } from "#lib/operations/run-job.ts";
import { peopleRevision, savePeople } from "#lib/operations/save-people.ts";
import { sendNotices } from "#lib/operations/send-notices.ts";
import { startJob } from "#lib/operations/start-job.ts";
import { anOffice, aParty, aProperty, aRole } from "../../support/file.ts";
import { aWorker } from "../../support/link.ts";
import { aDb, addRows, aFolder, anAct, anOpenLine, fileOf, must } from "../../support/office.ts";

/** Ottilie twice: once as the office typed her, once as the county writes her. */
function twice() {
  const db = aDb();
  const act = { ...anAct(db, { dataFolder: aFolder() }), db };
  putOffice(act.db, anOffice());
  const lineId = anOpenLine(act);
  addRows(act, { lineId, table: "properties" }, [aProperty("12"), aProperty("14")]);
  addRows(act, { lineId, table: "parties" }, [
    aParty("ott", { name: "Ottilie Brandvold", phone: "(360) 555-0112" }),
    aParty("county", { name: "BRANDVOLD, OTTILIE M." }),
    aParty("ann", { name: "Ann Other" }),
  ]);
  addRows(act, { lineId, table: "roles" }, [
    aRole("ott", "12"),
    aRole("county", "14"),
    aRole("ann", "14"),
  ]);
  return { act, lineId };
}

function sendTo(act: Act, lineId: string, partyId: string, propertyId: string) {
  const recipients = [{ partyId, propertyId, tieInId: null, splitId: null }];
  const { noticeIds } = must(
    draftNotices(act, { lineId, kind: "finding", replyBy: null, recipients }),
  );
  must(sendNotices(act, { lineId, noticeIds, method: "by-hand", sentOn: act.today }));
}

function kept(act: Act, lineId: string): LineFile {
  const found = getKeptFile(act.db, lineId);
  if (found === null) throw new Error("There is no such line");
  return found;
}

test("two spellings of a name are shown as likely one, with what speaks for it", () => {
  const { act, lineId } = twice();
  const pairs = likelySame(fileOf(act, lineId));
  expect(pairs.map(({ a, b, because }) => [a.id, b.id, because])).toEqual([
    ["ott", "county", ["Same name, written differently."]],
  ]);
});

test("what is on file of a merged party is read as the other's, and nothing is rewritten", () => {
  const { act, lineId } = twice();
  sendTo(act, lineId, "county", "14");
  must(
    recordConsent(act, {
      lineId,
      kind: "enter",
      partyId: "county",
      propertyId: "14",
      state: "given",
      stateOn: act.today,
      splitId: null,
      amount: null,
      recordingNumber: "",
      uploadId: null,
      note: "On paper",
    }),
  );
  const before = kept(act, lineId);
  must(
    judgeParties(act, { lineId, partyId: "county", intoId: "ott", same: true, reason: "Her card" }),
  );
  const after = fileOf(act, lineId);
  expect(after.parties.map(({ id }) => id)).toEqual(["ott", "ann"]);
  expect(after.notices.map(({ partyId }) => partyId)).toEqual(["ott"]);
  expect(after.consents.map(({ partyId }) => partyId)).toEqual(["ott"]);
  expect(signersFor(after, "14").map(({ partyId }) => partyId)).toEqual(["ott", "ann"]);
  expect(reportOn(after, act.today)).toBeTruthy();
  const now = kept(act, lineId);
  for (const list of ["parties", "roles", "notices", "consents"] as const)
    expect(now[list]).toEqual(before[list]);
  expect(now.sameParties).toMatchObject([
    { partyId: "county", intoId: "ott", same: true, by: "Dana Okafor", reason: "Her card" },
  ]);
  expect(exportLine(act, lineId)).toContain("BRANDVOLD, OTTILIE M.");
});

test("the paper of a merged party's letter belongs to that letter, which stays as it was sent", async () => {
  const { act, lineId } = twice();
  sendTo(act, lineId, "county", "14");
  must(judgeParties(act, { lineId, partyId: "county", intoId: "ott", same: true, reason: "" }));
  const [sent] = kept(act, lineId).notices;
  const subjectIds = [sent?.id ?? ""];
  const { jobId } = must(startJob(act, { lineId, kind: "letters", subjectIds }));
  await runNextJob(aWorker({ act, lineId }));
  expect(getJob(act.db, jobId)).toMatchObject({ state: "done", problem: "" });
  const [now] = kept(act, lineId).notices;
  expect(now?.uploadId).toMatch(/./);
  expect(now).toEqual({ ...sent, uploadId: now?.uploadId });
});

test("undone, both stand as before", () => {
  const { act, lineId } = twice();
  const before = kept(act, lineId);
  const { wordId } = must(
    judgeParties(act, { lineId, partyId: "county", intoId: "ott", same: true, reason: "" }),
  );
  must(undoSameParty(act, { lineId, wordId }));
  const { history: _now, ...now } = kept(act, lineId);
  const { history: _was, ...was } = before;
  expect(now).toEqual(was);
  expect(undoSameParty(act, { lineId, wordId })).toMatchObject({ error: { reason: "not-found" } });
});

test("a pair that is two is not asked about again; nobody is merged twice or with themselves", () => {
  const { act, lineId } = twice();
  const judge = (partyId: string, intoId: string, same = true) =>
    judgeParties(act, { lineId, partyId, intoId, same, reason: "" });
  must(judge("county", "ott", false));
  expect(likelySame(fileOf(act, lineId))).toEqual([]);
  expect(judge("ott", "county")).toMatchObject({ error: { reason: "not-in-this-state" } });
  expect(judge("ann", "ann")).toMatchObject({ error: { reason: "bad-value" } });
  must(judge("ann", "ott"));
  expect(judge("ann", "county")).toMatchObject({ error: { reason: "not-in-this-state" } });
  expect(judge("ott", "ann")).toMatchObject({ error: { reason: "bad-value" } });
  expect(judge("gone", "ott")).toMatchObject({ error: { reason: "not-found" } });
});

test("the list of people is saved after a merge without losing who was merged", () => {
  const { act, lineId } = twice();
  const base = peopleRevision(getRevisions(act.db, lineId));
  const stale = personRows(fileOf(act, lineId));
  must(judgeParties(act, { lineId, partyId: "county", intoId: "ott", same: true, reason: "" }));
  expect(savePeople(act, { lineId, base, rows: stale })).toMatchObject({
    error: { reason: "changed-meanwhile" },
  });
  const rows = personRows(fileOf(act, lineId)).map((row) => ({ ...row, note: "Seen" }));
  const now = peopleRevision(getRevisions(act.db, lineId));
  must(savePeople(act, { lineId, base: now, rows }));
  const noted = kept(act, lineId).parties.map(({ id, note }) => [id, note]);
  expect(noted.sort()).toEqual([
    ["ann", "Seen"],
    ["county", ""],
    ["ott", "Seen"],
  ]);
  const without = personRows(fileOf(act, lineId)).filter(({ name }) => name === "Ann Other");
  const last = peopleRevision(getRevisions(act.db, lineId));
  expect(savePeople(act, { lineId, base: last, rows: without })).toMatchObject({
    error: { reason: "in-use", by: expect.stringContaining("Ottilie Brandvold") },
  });
});
