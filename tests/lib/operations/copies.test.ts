import { expect, test } from "vitest";
import { getRevisions } from "#db/queries/revision.ts";
import { personRows } from "#lib/domain/party/people.ts";
import { reportOn } from "#lib/domain/report/report-on.ts";
import { draftBatch } from "#lib/operations/draft-batch.ts";
import { draftNotices } from "#lib/operations/draft-notices.ts";
import { saveNoticeWords } from "#lib/operations/save-notice-words.ts";
import { peopleRevision, savePeople } from "#lib/operations/save-people.ts";
import { sendNotices } from "#lib/operations/send-notices.ts";
import { waiveHold } from "#lib/operations/waive-hold.ts";
import { aSplit } from "#tests/support/link.ts";
import { aDesk, fileOf, must } from "#tests/support/office.ts";

const KIND = "joint-agreement";
const REPLY_BY = "2026-12-20";

/** A desk with a lender of No. 12, entered in the people table as anybody is. */
function aDeskWithLender() {
  const desk = aDesk();
  const { act, lineId } = desk;
  const rows = [
    ...personRows(fileOf(act, lineId)),
    {
      ...{ id: "new", name: "Harbor Savings Bank", kind: "firm" as const },
      ...{ role: "lender" as const, propertyId: "12", street: "1 Commerce Street" },
      ...{ city: "Quillhaven", state: "WA", zip: "98000" },
    },
  ];
  const base = peopleRevision(getRevisions(act.db, lineId));
  must(savePeople(act, { lineId, base, rows }));
  const bank = fileOf(act, lineId).parties.find(({ name }) => name === "Harbor Savings Bank");
  const file = () => fileOf(act, lineId);
  return { ...desk, bankId: bank?.id ?? "", file };
}

test("a lender is entered in the people table and kept", () => {
  const { bankId, file } = aDeskWithLender();
  expect(file().roles.find(({ partyId }) => partyId === bankId)?.role).toBe("lender");
});

test("a batch drafts the owner's letter and the lender's copy; only the letter asks for a reply", () => {
  const { act, lineId, bankId, file } = aDeskWithLender();
  must(draftBatch(act, { lineId, kind: KIND, replyBy: REPLY_BY }));
  const drafts = file().notices.filter(({ kind }) => kind === KIND);
  const replyBy = Object.fromEntries(drafts.map((each) => [each.partyId, each.replyBy]));
  expect(replyBy).toMatchObject({ "owner-12": REPLY_BY, [bankId]: null });
  const copy = drafts.find(({ partyId }) => partyId === bankId);
  const words = { lineId, noticeId: copy?.id ?? "", ownWords: "" };
  expect(saveNoticeWords(act, { ...words, replyBy: REPLY_BY })).toMatchObject({
    error: { reason: "bad-value", path: "replyBy" },
  });
  must(saveNoticeWords(act, { ...words, ownWords: "As you asked.", replyBy: null }));
});

const TITLES = {
  "joint-agreement": "Copy: Agreement on the shared sewer",
  "share-demand": "Copy: Payment request for your share",
} as const;

test.each(["joint-agreement", "share-demand"] as const)(
  "a copy (%s) goes out only after the letter it copies, and says what that said",
  (kind) => {
    const desk = aDeskWithLender();
    const { act, lineId, bankId, file } = desk;
    for (const { key, waiver } of reportOn(file(), act.today).holds)
      if (waiver === null) must(waiveHold(act, { lineId, holdKey: key, reason: "Known to all" }));
    aSplit(desk);
    must(draftBatch(act, { lineId, kind, replyBy: REPLY_BY }));
    const noticeTo = (partyId: string) =>
      file().notices.find((each) => each.kind === kind && each.partyId === partyId);
    const send = (partyId: string) => {
      const noticeIds = [noticeTo(partyId)?.id ?? ""];
      return sendNotices(act, { lineId, noticeIds, method: "first-class", sentOn: act.today });
    };
    expect(JSON.stringify(send(bankId))).toContain("send it before its copy");
    must(send("owner-12"));
    must(send(bankId));
    const frozen = (partyId: string) => JSON.parse(noticeTo(partyId)?.frozen ?? "{}");
    expect(frozen(bankId)).toMatchObject({ title: TITLES[kind], asks: [], answerBy: "" });
    const lists = frozen("owner-12").blocks.filter(
      (each: { kind: string }) => each.kind === "list",
    );
    expect(lists.length).toBeGreaterThan(0);
    for (const list of lists) expect(frozen(bankId).blocks).toContainEqual(list);
  },
);

test("a lender is written no other letter, and no copy where the letter is not due", () => {
  const { act, lineId, bankId } = aDeskWithLender();
  const recipients = [{ partyId: bankId, propertyId: "12", tieInId: null, splitId: null }];
  for (const kind of ["finding", "share-demand"] as const) {
    const drafted = draftNotices(act, { lineId, kind, replyBy: null, recipients });
    expect(drafted).toMatchObject({ error: { reason: "held", path: "recipients.0" } });
    expect(JSON.stringify(drafted)).toContain("only as lender");
  }
});
