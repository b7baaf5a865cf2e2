import { expect, test } from "vitest";
import { getAuthority, putAuthority } from "#db/queries/authority.ts";
import { insertRow } from "#db/queries/row.ts";
import { usualRow } from "#lib/domain/facts/field.ts";
import { CONTRACT, STATUTORY_PAPER } from "#lib/domain/facts/statutory-paper.ts";
import { isOpenPaper, papersOn } from "#lib/domain/statutory/papers.ts";
import { chooseRule } from "#lib/operations/choose-rule.ts";
import { decidePaper } from "#lib/operations/decide-paper.ts";
import { draftBatch } from "#lib/operations/draft-batch.ts";
import { draftNotices } from "#lib/operations/draft-notices.ts";
import { saveAuthority } from "#lib/operations/save-authority.ts";
import { confirmPaperText, savePaperText } from "#lib/operations/save-paper-text.ts";
import { sendNotices } from "#lib/operations/send-notices.ts";
import { anAuthority } from "../../support/file.ts";
import { aDesk, fileOf, must } from "../../support/office.ts";

const TEXT = "You may cancel this contract.\nSign here: ________";

/** An authority with one paper, and a contract signed by the owner of No. 12. */
function aDeskWithPaper() {
  const { act: desk, lineId } = aDesk();
  const act = { ...desk, actor: { ...desk.actor, role: "admin" as const } };
  const authority = anAuthority();
  must(saveAuthority(act, authority));
  must(chooseRule(act, { lineId, authorityId: authority.id, ruleId: null }));
  const paper = {
    ...usualRow(STATUTORY_PAPER),
    ...{ id: "cancel", authorityId: authority.id, title: "Right to cancel" },
    ...{ event: "contract" as const, citation: "Code 5", asOf: "2026-11-02" },
    ...{ by: "in-person" as const },
  };
  putAuthority(act.db, { ...authority, statutoryPapers: [paper] });
  const contract = {
    ...usualRow(CONTRACT),
    ...{ id: "c", propertyId: "12", partyId: "owner-12", signedOn: act.today },
  };
  insertRow(act.db, "contracts", { lineId, row: contract });
  const place = { authorityId: authority.id, paperId: "cancel" };
  const paperNow = () => getAuthority(act.db, authority.id)?.statutoryPapers[0];
  const due = () => papersOn(fileOf(act, lineId))[0];
  return { act, lineId, place, authorityId: authority.id, paperNow, due };
}

test("the office's text is saved, confirmed by an admin, and unconfirmed by any change of it", () => {
  const { act, place, paperNow, authorityId } = aDeskWithPaper();
  const shown = { text: TEXT, textEs: "" };
  expect(confirmPaperText(act, { ...place, text: "", textEs: "" })).toMatchObject({
    error: { reason: "missing-value" },
  });
  must(savePaperText(act, { ...place, ...shown }));
  expect(confirmPaperText(act, { ...place, text: "other", textEs: "" })).toMatchObject({
    error: { reason: "not-in-this-state" },
  });
  const office = { ...act, actor: { ...act.actor, role: "office" as const } };
  expect(confirmPaperText(office, { ...place, ...shown })).toMatchObject({
    error: { reason: "not-allowed" },
  });
  must(confirmPaperText(act, { ...place, text: TEXT.replace("\n", "\r\n"), textEs: "" }));
  expect(paperNow()).toMatchObject({ confirmedBy: act.actor.name, confirmedOn: act.today });
  const kept = getAuthority(act.db, authorityId);
  if (kept === null) throw new Error("no authority");
  must(saveAuthority(act, { ...kept, note: "new" }));
  expect(paperNow()?.confirmedBy).toBe(act.actor.name);
  const [paper] = kept.statutoryPapers;
  if (paper === undefined) throw new Error("no paper");
  must(saveAuthority(act, { ...kept, statutoryPapers: [{ ...paper, citation: "Code 6" }] }));
  expect(paperNow()).toMatchObject({ confirmedBy: "", confirmedOn: null, text: TEXT });
  must(saveAuthority(act, { ...kept, statutoryPapers: [{ ...paper, confirmedBy: "Nobody" }] }));
  expect(paperNow()?.confirmedBy).toBe("");
});

test("a paper is drafted once, goes out only with a confirmed text, and then counts as given", () => {
  const { act, lineId, place, due } = aDeskWithPaper();
  const { noticeIds } = must(draftBatch(act, { lineId, kind: "statutory-notice", replyBy: null }));
  expect(noticeIds).toHaveLength(1);
  expect(due()?.state).toBe("draft");
  expect(draftBatch(act, { lineId, kind: "statutory-notice", replyBy: null }).ok).toBe(false);
  const sent = { lineId, noticeIds, method: "by-hand", sentOn: act.today } as const;
  expect(sendNotices(act, sent)).toMatchObject({ ok: false });
  must(savePaperText(act, { ...place, text: TEXT, textEs: "" }));
  expect(sendNotices(act, sent)).toMatchObject({ ok: false });
  must(confirmPaperText(act, { ...place, text: TEXT, textEs: "" }));
  must(sendNotices(act, sent));
  const { frozen } = fileOf(act, lineId).notices.find(({ id }) => id === noticeIds[0]) ?? {};
  expect(frozen).toContain("You may cancel this contract.");
  expect(frozen).toContain("Code 5");
  expect(frozen).not.toContain("Check this text");
  expect(due()).toMatchObject({ state: "given", givenOn: act.today, late: false });
});

test("nobody is written a paper that is not asked of them", () => {
  const { act, lineId } = aDeskWithPaper();
  const one = { partyId: "owner-14", propertyId: "14", tieInId: null, splitId: null };
  const drafted = draftNotices(act, {
    ...{ lineId, kind: "statutory-notice", replyBy: null },
    recipients: [{ ...one, paperId: "cancel" }],
  });
  expect(drafted).toMatchObject({ error: { reason: "missing-value" } });
});

test("a paper is given up by name with a reason, once, and can be taken up again", () => {
  const { act, lineId, due } = aDeskWithPaper();
  const word = { lineId, paperId: "cancel", partyId: "owner-12", propertyId: "12" };
  expect(decidePaper(act, { ...word, givenUp: true, reason: " " })).toMatchObject({
    error: { path: "reason" },
  });
  expect(decidePaper(act, { ...word, givenUp: false, reason: "" })).toMatchObject({
    error: { reason: "not-in-this-state" },
  });
  must(decidePaper(act, { ...word, givenUp: true, reason: "Signed at our counter" }));
  expect(due()).toMatchObject({ state: "given-up", decision: { by: act.actor.name } });
  expect(decidePaper(act, { ...word, givenUp: true, reason: "again" }).ok).toBe(false);
  must(decidePaper(act, { ...word, givenUp: false, reason: "" }));
  const now = due();
  expect(now !== undefined && isOpenPaper(now)).toBe(true);
});
