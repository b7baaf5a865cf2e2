import { expect, test } from "vitest";
import { getRevisions } from "#db/queries/revision.ts";
import type { Narration } from "#lib/domain/facts/narration.ts";
import { toTenth } from "#lib/domain/length/station.ts";
import { logOf, mainCounterOf } from "#lib/domain/narration/log/narration-log.ts";
import { addNarration } from "#lib/operations/add-narration.ts";
import { addUpload } from "#lib/operations/add-upload.ts";
import { decideDrafts } from "#lib/operations/decide-drafts.ts";
import { measureFromMain } from "#lib/operations/measure-from-main.ts";
import { noteEntry } from "#lib/operations/note-entry.ts";
import { saveRows } from "#lib/operations/save-rows.ts";
import { setPicture } from "#lib/operations/set-picture.ts";
import { settleTieIn } from "#lib/operations/settle-tie-in.ts";
import { takeBackDraft } from "#lib/operations/take-back-draft.ts";
import { anAnchor, anEntry, anObservation, aRecord, aRun } from "../../support/file.ts";
import { aDb, addRows, anAct, anOpenLine, fileOf, must } from "../../support/office.ts";

const TEXT = `0:00 we're in at the cleanout, counter zero
0:20 twenty four one, there's a tap at nine o'clock, looks like four inch clay, not on the card
1:30 under water from fifty one six to fifty seven six, can't see a thing
2:10 roots coming in, maybe
2:40 sixty eight point two, tap on the right, three o'clock
3:30 ninety eight six, that's the main`;

/** A run downstream that was tied at the main, and what was said on it. */
function aDesk(text = TEXT) {
  const act = anAct(aDb());
  const lineId = anOpenLine(act);
  addRows(act, { lineId, table: "runs" }, [aRun("run", { looks: "downstream" })]);
  addRows(act, { lineId, table: "anchors" }, [anAnchor("run", { counter: 9_860 })]);
  const { narrationId } = must(addNarration(act, { lineId, runId: "run", text }));
  const file = () => fileOf(act, lineId);
  const narration = () => file().narrations[0] as Narration;
  const log = logOf(file(), narration());
  const keyOf = (words: string) =>
    [...log.drafts, ...log.gaps].find(({ quote }) => quote.includes(words))?.key ?? "no such draft";
  const gapKey = log.gaps[0]?.key ?? "no gap";
  const at = { lineId, narrationId };
  return { act, lineId, at, file, narration, log, keyOf, gapKey };
}

test("decideDrafts() makes observations with the words, their time and how the counter was found", () => {
  const { act, at, file, narration, log, keyOf } = aDesk();
  const keys = [keyOf("roots"), keyOf("twenty four")];
  const accept = keys.map((key) => ({ key, fields: {} }));
  expect(must(decideDrafts(act, { ...at, accept, drop: [] }))).toEqual({ accepted: 2, dropped: 0 });
  const [tap, roots] = file().observations;
  expect(tap).toMatchObject({
    runId: "run",
    kind: "tie-in",
    counter: 2_410,
    clock: 9,
    diameter: 4,
    material: "vitrified-clay",
    reading: "read",
    videoSecond: log.drafts[0]?.videoSecond,
    tieInId: file().tieIns[0]?.id,
  });
  expect(tap?.quote).toContain("there's a tap at nine o'clock");
  expect(tap?.note).toContain("“looks like”");
  expect(tap?.note).toContain("about the record: “not on the card”");
  expect(roots).toMatchObject({ kind: "fault", fault: "roots", reading: "between", tieInId: null });
  expect(roots?.note).toMatch(/“maybe”.*footage interpolated by time, ± \d+\.\d ft/);
  const slack = Number(/± (\d+\.\d) ft/.exec(roots?.note ?? "")?.[1]);
  expect(roots?.uncertainty).toBe(Math.round(slack * 100));
  expect(slack).toBeGreaterThan(1);
  expect(tap?.uncertainty).toBeNull();
  expect(narration().decided).toEqual([
    { key: keys[1], state: "accepted", observationId: tap?.id },
    { key: keys[0], state: "accepted", observationId: roots?.id },
  ]);
  expect(narration().text).toBe(TEXT);
});

test("rows that are accepted in several goes stand in the log as they were told", () => {
  const { act, at, file, keyOf } = aDesk();
  for (const words of ["sixty eight", "twenty four", "roots"])
    must(decideDrafts(act, { ...at, accept: [{ key: keyOf(words), fields: {} }], drop: [] }));
  expect(file().observations.map(({ quote }) => quote.slice(0, 11))).toEqual([
    "twenty four",
    expect.stringContaining("roots"),
    "sixty eight",
  ]);
});

test("decideDrafts() takes how bad it is, how much of the bore it takes, and what lies beyond", () => {
  const { act, at, file, log } = aDesk(TEXT.replace(/3:30 .*/, "3:10 heavy roots, sixty percent"));
  const heavy = log.drafts.find(({ reading }) => reading === "beyond");
  if (heavy === undefined) throw new Error("No row beyond the last distance");
  must(decideDrafts(act, { ...at, accept: [{ key: heavy.key, fields: {} }], drop: [] }));
  expect(file().observations[0]).toMatchObject({
    fault: "roots",
    degree: "severe",
    reduction: 60,
    reading: "between",
    uncertainty: toTenth(heavy.slack),
  });
  expect(file().observations[0]?.note).toMatch(/beyond the last reading, ± \d+\.\d ft/);
});

test("decideDrafts() keeps a row that moved with a mended one as worked out", () => {
  const { act, at, file, keyOf } = aDesk();
  const accept = [{ key: keyOf("roots"), fields: { counter: 6_310 }, moved: true }];
  must(decideDrafts(act, { ...at, accept, drop: [] }));
  expect(file().observations[0]).toMatchObject({ counter: 6_310, reading: "between" });
  const spoken = [{ key: keyOf("twenty four"), fields: { counter: 2_500 }, moved: true }];
  must(decideDrafts(act, { ...at, accept: spoken, drop: [] }));
  expect(file().observations.find(({ kind }) => kind === "tie-in")).toMatchObject({
    counter: 2_500,
    reading: "read",
  });
});

test("footages from the main enter a log only once its run is measured from there", () => {
  const act = anAct(aDb());
  const lineId = anOpenLine(act);
  addRows(act, { lineId, table: "runs" }, [aRun("run", { looks: "downstream" })]);
  const text =
    "0:00 In the main, zero, coming back.\n0:30 Ten feet from the main, wye on the left.";
  const { narrationId } = must(addNarration(act, { lineId, runId: "run", text }));
  const logNow = () => logOf(fileOf(act, lineId), { runId: "run", text });
  const key = logNow().drafts[0]?.key ?? "";
  const decide = () =>
    decideDrafts(act, { lineId, narrationId, accept: [{ key, fields: {} }], drop: [] });
  expect(logNow().measuredFrom).toBe("main");
  expect(decide()).toMatchObject({ ok: false, error: { path: `${key}.counter` } });
  must(measureFromMain(act, { lineId, runId: "run" }));
  expect(fileOf(act, lineId).runs[0]?.measuredFrom).toBe("main");
  must(decide());
  expect(fileOf(act, lineId).observations[0]).toMatchObject({ kind: "tie-in", counter: 1_000 });
  expect(measureFromMain(act, { lineId, runId: "run" })).toMatchObject({
    ok: false,
    error: { reason: "in-use" },
  });
});

test("decideDrafts() takes what a person mended; a corrected counter counts as read", () => {
  const { act, at, file, keyOf } = aDesk();
  const fields = { counter: 6_000, clock: 12, note: "fine roots", quote: "not said", id: "mine" };
  must(decideDrafts(act, { ...at, accept: [{ key: keyOf("roots"), fields }], drop: [] }));
  const [roots] = file().observations;
  expect(roots).toMatchObject({ counter: 6_000, clock: 12, note: "fine roots", reading: "read" });
  expect(roots?.uncertainty).toBeNull();
  expect(roots?.quote).toContain("roots coming in");
  expect(roots?.id).not.toBe("mine");
});

test("decideDrafts() attaches a tie-in that another run saw, and counts so that open tables are told", () => {
  const { act, lineId, at, file, keyOf, gapKey } = aDesk();
  addRows(act, { lineId, table: "runs" }, [aRun("second")]);
  addRows(act, { lineId, table: "anchors" }, [anAnchor("second")]);
  // Seen upstream from the main at 30.4 ft: the same place as counter 68.2 downstream, on the left.
  const seen = anObservation("o", { runId: "second", counter: 3_040, clock: 9 });
  addRows(act, { lineId, table: "observations" }, [seen]);
  const before = getRevisions(act.db, lineId);
  const accept = [keyOf("sixty eight"), gapKey].map((key) => ({ key, fields: {} }));
  must(decideDrafts(act, { ...at, accept, drop: [keyOf("roots")] }));
  const { observations, tieIns, gaps } = file();
  expect(tieIns).toHaveLength(1);
  expect(observations.map(({ tieInId }) => tieInId)).toEqual([tieIns[0]?.id, tieIns[0]?.id]);
  expect(gaps).toMatchObject([
    { runId: "run", fromCounter: 5_160, toCounter: 5_760, cause: "under-water" },
  ]);
  const after = getRevisions(act.db, lineId);
  expect(after.observations).toBe(before.observations + 1);
  expect(after.gaps).toBe(before.gaps + 1);
  const stale = { lineId, table: "gaps", base: before.gaps, rows: [] } as const;
  expect(saveRows(act, stale)).toMatchObject({ error: { reason: "changed-meanwhile" } });
});

test("decideDrafts() does all of it or nothing, and says which row and cell", () => {
  const { act, at, file, narration, keyOf } = aDesk();
  const told = file().history.length;
  const good = { key: keyOf("twenty four"), fields: {} };
  const bad = { key: keyOf("roots"), fields: { counter: null } };
  expect(decideDrafts(act, { ...at, accept: [good, bad], drop: [] })).toMatchObject({
    error: { reason: "bad-value", path: `${bad.key}.counter` },
  });
  const backwards = { key: keyOf("roots"), fields: { counter: 6_000, toCounter: 5_000 } };
  expect(decideDrafts(act, { ...at, accept: [good, backwards], drop: [] })).toMatchObject({
    error: { reason: "bad-value", path: `${bad.key}.toCounter` },
  });
  expect(file().observations).toEqual([]);
  expect(narration().decided).toEqual([]);
  expect(file().history).toHaveLength(told);
});

test("decideDrafts() refuses rows that nobody drafted, or that somebody decided already", () => {
  const { act, at, keyOf } = aDesk();
  const key = keyOf("roots");
  must(decideDrafts(act, { ...at, accept: [], drop: [key] }));
  expect(decideDrafts(act, { ...at, accept: [{ key, fields: {} }], drop: [] })).toMatchObject({
    error: { reason: "changed-meanwhile", path: key },
  });
  const twice = {
    accept: [{ key: keyOf("twenty four"), fields: {} }],
    drop: [keyOf("twenty four")],
  };
  expect(decideDrafts(act, { ...at, ...twice })).toMatchObject({
    error: { reason: "changed-meanwhile" },
  });
  expect(decideDrafts(act, { ...at, accept: [], drop: ["made up"] })).toMatchObject({
    error: { reason: "not-found", path: "made up" },
  });
  expect(decideDrafts(act, { ...at, narrationId: "gone", accept: [], drop: [] })).toMatchObject({
    error: { reason: "not-found", detail: "the transcript" },
  });
  const viewer = anAct(act.db, { role: "viewer" });
  expect(decideDrafts(viewer, { ...at, accept: [], drop: [] })).toMatchObject({
    error: { reason: "not-allowed" },
  });
});

test("decideDrafts() tells the history what was taken and what was dropped", () => {
  const { act, at, file, keyOf } = aDesk();
  const accept = [{ key: keyOf("twenty four"), fields: {} }];
  must(decideDrafts(act, { ...at, accept, drop: [keyOf("roots")] }));
  expect(file().history.at(-1)).toMatchObject({
    action: "decide-drafts",
    sentence:
      "Accepted from the narration of run run: observation at 24.1 ft. Discarded 1 of the rows drafted for run run.",
  });
  const told = file().history.length;
  must(decideDrafts(act, { ...at, accept: [], drop: [] }));
  expect(file().history).toHaveLength(told);
});

test("takeBackDraft() opens an accepted row again: its observation and tie-in go", () => {
  const { act, at, file, narration, keyOf } = aDesk();
  const key = keyOf("twenty four");
  must(decideDrafts(act, { ...at, accept: [{ key, fields: {} }], drop: [] }));
  must(takeBackDraft(act, { ...at, key }));
  expect(file().observations).toEqual([]);
  expect(file().tieIns).toEqual([]);
  expect(narration().decided).toEqual([]);
  expect(file().history.at(-1)?.sentence).toBe(
    "Removed from the log of run run: observation at 24.1 ft, as drafted from what was said.",
  );
  must(decideDrafts(act, { ...at, accept: [{ key, fields: {} }], drop: [] }));
  expect(file().observations).toHaveLength(1);
});

test("takeBackDraft() opens what was dropped, what was a gap, and what was removed by hand since", () => {
  const { act, lineId, at, file, narration, keyOf, gapKey } = aDesk();
  const tap = keyOf("twenty four");
  const accept = [tap, gapKey].map((key) => ({ key, fields: {} }));
  must(decideDrafts(act, { ...at, accept, drop: [keyOf("roots")] }));
  const base = getRevisions(act.db, lineId).observations;
  must(saveRows(act, { lineId, table: "observations", base, rows: [] }));
  for (const key of [tap, gapKey, keyOf("roots")]) must(takeBackDraft(act, { ...at, key }));
  expect(narration().decided).toEqual([]);
  expect(file().gaps).toEqual([]);
  expect(takeBackDraft(act, { ...at, key: tap })).toMatchObject({ error: { reason: "not-found" } });
});

test("takeBackDraft() removes nothing that something rests on by now", () => {
  const { act, lineId, at, file, narration, keyOf } = aDesk();
  const key = keyOf("twenty four");
  must(decideDrafts(act, { ...at, accept: [{ key, fields: {} }], drop: [] }));
  const [tieIn] = file().tieIns;
  must(
    settleTieIn(act, {
      lineId,
      tieInId: tieIn?.id ?? "",
      kind: "capped-stub",
      propertyId: null,
      inactive: true,
      ownerAccepted: false,
      reason: "Dug up, capped, dry",
    }),
  );
  expect(takeBackDraft(act, { ...at, key })).toMatchObject({
    error: {
      reason: "in-use",
      detail: "tie-in T1 has only this sighting and is used elsewhere in the file",
    },
  });
  expect(file().observations).toHaveLength(1);
  expect(narration().decided).toHaveLength(1);
});

test("takeBackDraft() keeps an observation that was given a picture", () => {
  const { act, lineId, at, file, keyOf } = aDesk();
  const key = keyOf("roots");
  must(decideDrafts(act, { ...at, accept: [{ key, fields: {} }], drop: [] }));
  const stored = { type: "image/png", bytes: 8, sha256: "a".repeat(64) } as const;
  const { uploadId } = must(addUpload(act, { lineId, name: "still.png", stored, note: "" }));
  const observationId = file().observations[0]?.id ?? "";
  must(setPicture(act, { lineId, observationId, uploadId }));
  expect(takeBackDraft(act, { ...at, key })).toMatchObject({ error: { reason: "in-use" } });
  must(setPicture(act, { lineId, observationId, uploadId: null }));
  expect(takeBackDraft(act, { ...at, key }).ok).toBe(true);
});

test("mainCounterOf() goes on foot for foot below the lowest anchor; null where nothing is tied", () => {
  const down = aRun("run", { looks: "downstream" });
  expect(mainCounterOf(down, [])).toBeNull();
  expect(mainCounterOf(down, [anAnchor("run", { counter: 8_860, station: 1_000 })])).toBe(9_860);
  const up = aRun("run", { looks: "upstream" });
  const two = [
    anAnchor("run", { counter: 2_500, station: 2_000 }),
    anAnchor("run", { counter: 1_500, station: 1_000 }),
  ];
  expect(mainCounterOf(up, two)).toBe(500);
  // Two points that agree with each other are followed; two that don't tell nothing.
  expect(mainCounterOf(down, two)).toBe(500);
  const torn = [anAnchor("run"), anAnchor("run", { id: "b", counter: 1_500, station: 900 })];
  expect(mainCounterOf(down, torn)).toBeNull();
  const back = aRun("run", { looks: "downstream", measuredFrom: "main" });
  expect(mainCounterOf(back, [])).toBe(0);
});

test("noteEntry() keeps what was said about the record with the entry that it speaks of, once", () => {
  const { act, lineId, at, file, keyOf } = aDesk(
    TEXT.replace("not on the card", "card has it at twenty one"),
  );
  addRows(act, { lineId, table: "records" }, [aRecord("card")]);
  const entries = [
    anEntry("far", { recordId: "card", distance: 7_450 }),
    anEntry("near", { recordId: "card", distance: 2_150 }),
  ];
  addRows(act, { lineId, table: "entries" }, entries);
  const key = keyOf("twenty four");
  const note = { ...at, key, entryId: "near" };
  must(noteEntry(act, note));
  expect(file().entries.find(({ id }) => id === "near")?.note).toContain(
    "from the narration: “card has it at twenty one”",
  );
  expect(noteEntry(act, note)).toMatchObject({ ok: false, error: { reason: "already-there" } });
  expect(noteEntry(act, { ...note, key: "none" })).toMatchObject({ ok: false });
});
