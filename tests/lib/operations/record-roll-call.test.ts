import { expect, test } from "vitest";
import { pauseKey, recordRollCall } from "#lib/operations/record-roll-call.ts";
import { anEvent, aRollCallWord } from "../../support/file.ts";
import { aDesk, addRows, anAct, fileOf, must } from "../../support/office.ts";

const PAUSE = anEvent("pause", {
  event: "drains-paused",
  on: "2026-12-02",
  at: "08:00",
  until: "12:00",
});

function aPause() {
  const desk = aDesk();
  addRows(desk.act, { lineId: desk.lineId, table: "events" }, [PAUSE]);
  return desk;
}

const WORD = {
  matter: "drains-off",
  pauseId: "pause",
  propertyId: "14",
  unitId: null,
  answer: "aware",
  spokeWith: "Jesús Peña",
  words: "",
  by: "Ines Peña",
  about: pauseKey(PAUSE),
  seen: "",
} as const;

test("recordRollCall() keeps who answered, what they said, who called and when", () => {
  const { act, lineId } = aPause();
  const { wordId } = must(recordRollCall(act, { lineId, ...WORD }));
  expect(fileOf(act, lineId).rollCall).toEqual([
    aRollCallWord(wordId, {
      propertyId: "14",
      spokeWith: "Jesús Peña",
      by: "Ines Peña",
      at: act.now,
    }),
  ]);
  expect(fileOf(act, lineId).history.at(-1)?.sentence).toBe(
    "Drain shutdown of December 2, 2026: 14 Fennel Row (Jesús Peña) is aware, by Ines Peña",
  );
});

test("a word pressed twice, or over somebody else's, is recorded once", () => {
  const { act, lineId } = aPause();
  const first = must(recordRollCall(act, { lineId, ...WORD }));
  expect(recordRollCall(act, { lineId, ...WORD })).toMatchObject({
    error: { reason: "changed-meanwhile", detail: "Ines Peña" },
  });
  const seen = { ...WORD, answer: "not-reached", seen: first.wordId } as const;
  expect(recordRollCall(act, { lineId, ...seen }).ok).toBe(true);
  expect(fileOf(act, lineId).rollCall).toHaveLength(2);
});

test("a word about hours that were moved since is refused", () => {
  const { act, lineId } = aPause();
  const about = pauseKey({ ...PAUSE, until: "10:00" });
  expect(recordRollCall(act, { lineId, ...WORD, about })).toMatchObject({
    error: { reason: "changed-meanwhile" },
  });
});

test("help and a waiver want their words; a waiver is the office's, in the name of who is signed in", () => {
  const { act, lineId } = aPause();
  const refused = (change: Partial<Parameters<typeof recordRollCall>[1]>, by = act) =>
    recordRollCall(by, { lineId, ...WORD, ...change });
  expect(refused({ answer: "needs-help" })).toMatchObject({ error: { path: "words" } });
  expect(refused({ answer: "waived" })).toMatchObject({ error: { path: "words" } });
  expect(refused({ by: " " })).toMatchObject({ error: { path: "by" } });
  expect(refused({ pauseId: "other" })).toMatchObject({ error: { reason: "not-found" } });
  expect(refused({ propertyId: "none" })).toMatchObject({ error: { reason: "not-found" } });
  const field = { ...anAct(act.db, { role: "field" }), db: act.db, dataFolder: act.dataFolder };
  const waiver = { answer: "waived", words: "House is empty until May" } as const;
  expect(refused(waiver, field)).toMatchObject({ error: { reason: "not-allowed" } });
  expect(refused({}, field).ok).toBe(true);
  const seen = fileOf(act, lineId).rollCall[0]?.id ?? "";
  must(recordRollCall(act, { lineId, ...WORD, ...waiver, by: "Somebody", seen }));
  expect(fileOf(act, lineId).rollCall.at(-1)).toMatchObject({ by: "Dana Okafor", ...waiver });
});

test("that drains are on again is told, not agreed to", () => {
  const { act, lineId } = aPause();
  must(recordRollCall(act, { lineId, ...WORD }));
  const later = { ...act, today: PAUSE.on };
  const back = { lineId, ...WORD, matter: "drains-on" } as const;
  expect(recordRollCall(later, { ...back, answer: "agreed" })).toMatchObject({
    error: { path: "answer" },
  });
  expect(recordRollCall(later, back).ok).toBe(true);
});
