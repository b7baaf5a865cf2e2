import { expect, test } from "vitest";
import { summedLines } from "#db/queries/summary.ts";
import type { Act } from "#lib/operations/act.ts";
import { answerLink } from "#lib/operations/answer-link.ts";
import { dealWithReply, reopenReply } from "#lib/operations/deal-with-reply.ts";
import { recordReply } from "#lib/operations/record-reply.ts";
import { renewSummaries } from "#lib/operations/renew-summaries.ts";
import { aDoor, aLinkTo, aSentLetter } from "../../support/link.ts";
import { aDesk, anAct, closeAnyhow, fileOf, must } from "../../support/office.ts";

/** A desk with a letter out and one reply to it, typed by the office. */
function withReply() {
  const desk = aDesk();
  const { act, lineId } = desk;
  const noticeId = aSentLetter(desk, "finding");
  const { replyId } = must(
    recordReply(act, {
      lineId,
      noticeId,
      kind: "asks",
      receivedOn: act.today,
      words: "Is the drain by my shed on this pipe?",
      suitsOn: null,
      uploadId: null,
    }),
  );
  return { ...desk, noticeId, replyId };
}

test("dealWithReply() records who dealt with it, when, how and with what words, and the history tells it", () => {
  const { act, lineId, replyId } = withReply();
  const words = "Called her: the yard drain is on its own line.";
  must(dealWithReply(act, { lineId, replyId, how: "called-back", on: act.today, words }));
  const file = fileOf(act, lineId);
  expect(file.replies).toMatchObject([
    { dealtBy: "Dana Okafor", dealtOn: "2026-11-25", dealtHow: "called-back", dealtWords: words },
  ]);
  expect(file.history.at(-1)).toMatchObject({
    by: "Dana Okafor",
    sentence: `Dealt with the reply of Ottilie Brandvold (called back): ${words}`,
  });
});

test("dealWithReply() refuses no words, a day before the reply or to come, and who may not", () => {
  const { act, lineId, replyId } = withReply();
  const dealing = { lineId, replyId, how: "answered", on: act.today, words: "Wrote back" } as const;
  expect(dealWithReply(act, { ...dealing, words: " " })).toMatchObject({
    error: { reason: "missing-value", path: "words" },
  });
  expect(dealWithReply(act, { ...dealing, on: "2026-11-24" })).toMatchObject({
    error: { path: "on" },
  });
  expect(dealWithReply(act, { ...dealing, on: "2026-11-26" })).toMatchObject({
    error: { path: "on" },
  });
  expect(dealWithReply(act, { ...dealing, how: "shrugged" as never })).toMatchObject({
    error: { path: "how" },
  });
  expect(dealWithReply(anAct(act.db, { role: "field" }), dealing)).toMatchObject({
    error: { reason: "not-allowed" },
  });
  expect(fileOf(act, lineId).replies).toMatchObject([{ dealtHow: null }]);
});

test("reopenReply() lets a reply wait again, with the reason", () => {
  const { act, lineId, replyId } = withReply();
  expect(reopenReply(act, { lineId, replyId, reason: "x" })).toMatchObject({
    error: { reason: "not-in-this-state" },
  });
  const words = "Wrote back";
  must(dealWithReply(act, { lineId, replyId, how: "answered", on: act.today, words }));
  expect(reopenReply(act, { lineId, replyId, reason: "" })).toMatchObject({
    error: { path: "reason" },
  });
  must(reopenReply(act, { lineId, replyId, reason: "The letter came back" }));
  expect(fileOf(act, lineId).replies).toMatchObject([
    { dealtBy: "", dealtOn: null, dealtHow: null, dealtWords: "" },
  ]);
  expect(fileOf(act, lineId).history.at(-1)?.sentence).toContain("The letter came back");
});

test("a reply that comes by link stands in the file just as one that the office types", () => {
  const desk = withReply();
  const { act, lineId, noticeId } = desk;
  const typed = {
    kind: "wants-another-day",
    words: "I work nights",
    suitsOn: "2026-12-04",
  } as const;
  const receivedOn = act.today;
  must(recordReply(act, { lineId, noticeId, receivedOn, uploadId: null, ...typed }));
  const secret = aLinkTo(desk, noticeId);
  const said = { kind: typed.kind, words: typed.words, day: typed.suitsOn, uploadId: null };
  must(answerLink(aDoor(desk), { secret, ...said }));
  const [office, link] = fileOf(act, lineId).replies.slice(-2);
  expect(link).toEqual({ ...office, id: link?.id, takenBy: "private link" });
});

test("answerLink() takes a wish for paper without words, and refuses a day that does not exist", () => {
  const desk = withReply();
  const secret = aLinkTo(desk, desk.noticeId);
  const said = { secret, words: "", uploadId: null };
  must(answerLink(aDoor(desk), { ...said, kind: "wants-paper", day: null }));
  expect(fileOf(desk.act, desk.lineId).replies.at(-1)).toMatchObject({
    kind: "wants-paper",
    words: "",
  });
  expect(
    answerLink(aDoor(desk), { ...said, kind: "wants-another-day", day: "2026-02-31" }),
  ).toMatchObject({ error: { path: "bad-day" } });
});

test("a reply on a closed file can be dealt with", () => {
  const { act, lineId, replyId } = withReply();
  must(closeAnyhow(act, lineId));
  expect(onDesk(act)).toEqual([lineId]);
  const words = "Sent her the drawing";
  must(dealWithReply(act, { lineId, replyId, how: "answered", on: act.today, words }));
  expect(fileOf(act, lineId).replies).toMatchObject([{ dealtHow: "answered" }]);
  expect(onDesk(act)).toEqual([]);
});

function onDesk({ db, today: day }: Act): string[] {
  renewSummaries(db, day, 10);
  return summedLines(db, "on-the-desk", { day, from: 0, most: 10 }).map(({ lineId }) => lineId);
}
