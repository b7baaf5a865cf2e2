import { expect, test } from "vitest";
import { getOffice } from "#db/queries/office.ts";
import { draftNotices } from "#lib/operations/draft-notices.ts";
import { saveNoticeWords, wordsOf } from "#lib/operations/save-notice-words.ts";
import { saveOffice } from "#lib/operations/save-office.ts";
import { seenOf } from "#lib/operations/seen.ts";
import { anOffice } from "../../support/file.ts";
import { aDesk, anAct, fileOf, must } from "../../support/office.ts";

test("of two people who write on one draft the second is told who was first, and may then replace it", () => {
  const { act, lineId } = aDesk();
  const one = { partyId: "owner-12", propertyId: "12", tieInId: null, splitId: null };
  const order = { lineId, kind: "finding", replyBy: null, recipients: [one] } as const;
  const [noticeId = ""] = must(draftNotices(act, order)).noticeIds;
  const draft = () => {
    const notice = fileOf(act, lineId).notices.find(({ id }) => id === noticeId);
    if (notice === undefined) throw new Error("The draft is gone");
    return wordsOf(notice);
  };
  const seen = seenOf(draft());
  const ruth = { ...act, actor: { id: "ruth", name: "Ruth Lindqvist", role: "office" as const } };
  const words = { lineId, noticeId, replyBy: null };
  must(saveNoticeWords(ruth, { ...words, ownWords: "Ruth’s words", seen }));
  expect(saveNoticeWords(act, { ...words, ownWords: "Dana’s words", seen })).toMatchObject({
    error: { reason: "changed-meanwhile", detail: "Ruth Lindqvist" },
  });
  expect(draft().ownWords).toBe("Ruth’s words");
  must(saveNoticeWords(act, { ...words, ownWords: "Dana’s words", seen: seenOf(draft()) }));
  expect(draft().ownWords).toBe("Dana’s words");
});

test("an office form that was opened before somebody else saved does not put old facts back", () => {
  const { act } = aDesk();
  const admin = anAct(act.db, { role: "admin" });
  const stale = seenOf(getOffice(act.db));
  must(saveOffice(admin, anOffice({ license: "NEW-1" }), { seen: stale }));
  expect(saveOffice(admin, anOffice({ bond: "B-2" }), { seen: stale })).toMatchObject({
    error: { reason: "changed-meanwhile", detail: "Dana Okafor" },
  });
  expect(getOffice(act.db)?.license).toBe("NEW-1");
});
