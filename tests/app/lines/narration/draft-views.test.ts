import { expect, test } from "vitest";
import { SEEN_COLUMNS } from "#app/lines/[lineId]/camera/narration/draft-columns.ts";
import { draftViews } from "#app/lines/[lineId]/camera/narration/draft-views.ts";
import { readDraft, readDrafts } from "#app/lines/[lineId]/camera/narration/mended.ts";
import { movedViews } from "#app/lines/[lineId]/camera/narration/moved-views.ts";
import { saidParts } from "#app/lines/[lineId]/camera/narration/said-pieces.ts";
import type { Draft, DraftGap } from "#lib/domain/narration/log/draft.ts";
import { aGap, anObservation } from "../../../support/file.ts";

function aDraft(key: string, overrides: Partial<Draft> = {}): Draft {
  return {
    key,
    kind: "tie-in",
    counter: 2_410,
    toCounter: null,
    fromMain: null,
    toFromMain: null,
    reading: "read",
    slack: 0,
    clock: 9,
    fault: null,
    degree: null,
    reduction: null,
    waterDepth: null,
    material: "vitrified-clay",
    upstreamMaterial: "vitrified-clay",
    diameter: 4,
    fitting: "unknown",
    videoSecond: 178,
    quote: `words of ${key}`,
    span: { from: 0, to: 10 },
    hedges: [],
    aboutRecord: "",
    note: "",
    ...overrides,
  };
}

const GAP: DraftGap = {
  key: "g",
  fromCounter: 5_160,
  toCounter: 5_760,
  cause: "under-water",
  quote: "under water",
  span: { from: 20, to: 31 },
};

const EMPTY = { observations: [], gaps: [] };

test("draftViews() shows words, time and cells, and says how sure a row is", () => {
  const drafts = [
    aDraft("a", { hedges: ["looks like"], aboutRecord: "not on the card" }),
    aDraft("b", {
      reading: "between",
      slack: 1_083,
      kind: "fault",
      fault: "roots",
      counter: 2_600,
    }),
    aDraft("c", { slack: 100, counter: 2_900 }),
    aDraft("d", { counter: null, videoSecond: null }),
  ];
  const { seen } = draftViews(EMPTY, { decided: [] }, { drafts, gaps: [] });
  expect(seen[0]).toMatchObject({
    time: "2:58",
    readOut: true,
    decided: null,
    texts: { counter: "24.1", kind: "tie-in", clock: "9", material: "vitrified clay" },
    marks: ["“looks like”", "about the record: “not on the card”"],
  });
  expect(seen[1]).toMatchObject({ readOut: false, marks: ["interpolated by time ± 10.8 ft"] });
  expect(seen[2]).toMatchObject({ readOut: true, marks: ["spoken ± 1.0 ft"] });
  expect(seen[3]).toMatchObject({ readOut: false, time: "", marks: ["no footage spoken"] });
});

test("draftViews() calls a row sure only where nothing else was heard at its footage", () => {
  const drafts = [
    aDraft("left"),
    aDraft("right", { clock: 3 }),
    aDraft("broken", { kind: "fault", fault: "broken", clock: null, counter: 3_000 }),
    aDraft("hole", { kind: "fault", fault: "hole", clock: null, counter: 3_120 }),
    aDraft("roots", { kind: "fault", fault: "roots", clock: null, counter: 3_300 }),
    aDraft("between", { reading: "between", slack: 200, counter: 5_000 }),
  ];
  const { seen } = draftViews(EMPTY, { decided: [] }, { drafts, gaps: [] });
  expect(seen.map(({ sure }) => sure)).toEqual([true, true, false, false, true, false]);
  const asked = "another row at this footage: one find or two?";
  expect(seen.map(({ marks }) => marks.includes(asked))).toEqual([
    false,
    false,
    true,
    true,
    false,
    false,
  ]);
});

test("draftViews() shows what a decided row became, as the log has it now", () => {
  const drafts = [aDraft("a"), aDraft("b"), aDraft("c")];
  const decided = [
    { key: "a", state: "accepted", observationId: "o" },
    { key: "b", state: "dropped", observationId: null },
    { key: "c", state: "accepted", observationId: "removed-since" },
    { key: "g", state: "accepted", observationId: "gap" },
  ] as const;
  const file = {
    observations: [anObservation("o", { counter: 2_450, clock: 3, diameter: 6 })],
    gaps: [aGap("run", { id: "gap", fromCounter: 5_100, toCounter: 5_760 })],
  };
  const { seen, unseen } = draftViews(file, { decided }, { drafts, gaps: [GAP] });
  expect(seen.map((view) => view.decided)).toEqual([
    {
      state: "accepted",
      words: "tie-in at 24.5 ft, 3 o’clock, 6 in, vitrified clay",
      gone: false,
    },
    {
      state: "dropped",
      words: "tie-in at 24.1 ft, 9 o’clock, 4 in, vitrified clay",
      gone: false,
    },
    { state: "accepted", words: "tie-in at 24.1 ft, 9 o’clock, 4 in, vitrified clay", gone: true },
  ]);
  expect(unseen[0]?.decided?.words).toBe("under water from 51.0 to 57.6 ft");
});

test("readDraft() reads what was typed over as the log's own table does", () => {
  const { seen } = draftViews(EMPTY, { decided: [] }, { drafts: [aDraft("a")], gaps: [] });
  const [view] = seen;
  if (view === undefined) throw new Error("No view");
  const edits = { a: { counter: "25.05 ft", clock: "25", fault: "roots" } };
  expect(readDraft(view, SEEN_COLUMNS, edits)).toMatchObject({
    fields: { counter: 2_505, fault: "roots", kind: "tie-in" },
    problems: { clock: "enter 1 to 12, half hours as 3:30" },
  });
});

test("readDrafts() gives the ticked open rows that can be accepted, and counts the others", () => {
  const drafts = [aDraft("a"), aDraft("b", { counter: null }), aDraft("c"), aDraft("d")];
  const decided = [{ key: "d", state: "dropped", observationId: null }] as const;
  const views = draftViews(EMPTY, { decided }, { drafts, gaps: [GAP] });
  const ticked = new Set(["a", "b", "d", "g"]);
  const read = readDrafts(views, { edits: { a: { counter: "30" } }, ticked });
  expect(read.wrong).toBe(1);
  expect(read.good.map(({ key }) => key)).toEqual(["a", "g"]);
  expect(read.good[0]?.fields).toMatchObject({ counter: 3_000 });
  expect(read.good[1]?.fields).toMatchObject({ fromCounter: 5_160, cause: "under-water" });
});

test("only what was spoken there, without a hedge, is sure", () => {
  const drafts = [
    aDraft("a"),
    aDraft("b", { counter: 3_000, hedges: ["maybe"] }),
    aDraft("c", { counter: 4_000, reading: "between", slack: 300 }),
    aDraft("d", { counter: 5_000, slack: 100 }),
    aDraft("e", { counter: null }),
    aDraft("f", { counter: 6_000, reading: "beyond", slack: 300 }),
  ];
  const { seen } = draftViews(EMPTY, { decided: [] }, { drafts, gaps: [] });
  expect(seen.filter(({ sure }) => sure).map(({ key }) => key)).toEqual(["a"]);
  expect(seen[5]?.marks).toEqual(["beyond the last reading ± 3.0 ft"]);
});

test("saidParts() cuts each line where the words of a row begin or end, and loses none", () => {
  const lines = [
    { from: 0, to: 22, text: "wye left, under water ", second: 61.4 },
    { from: 23, to: 31, text: "the end.", second: null },
  ];
  const views = [
    { key: "a", span: { from: 0, to: 8 } },
    { key: "b", span: { from: 4, to: 26 } },
  ];
  const parts = saidParts(lines, views);
  expect(parts.map(({ time }) => time)).toEqual(["1:01", ""]);
  expect(parts.map(({ pieces }) => pieces.map(({ text }) => text).join(""))).toEqual(
    lines.map(({ text }) => text),
  );
  expect(parts[0]?.pieces.map(({ text, keys }) => [text, keys])).toEqual([
    ["wye ", ["a"]],
    ["left", ["a", "b"]],
    [", under water ", ["b"]],
  ]);
});

test("movedViews() moves the open rows beside a distance that was typed over", () => {
  const place = (second: number, counter: number, reading: "read" | "between") => ({
    ...{ videoSecond: second, counter, reading },
  });
  const drafts = [
    aDraft("a", place(0, 1_000, "read")),
    aDraft("b", place(30, 1_500, "between")),
    aDraft("c", place(60, 2_000, "read")),
  ];
  const { seen } = draftViews(EMPTY, { decided: [] }, { drafts, gaps: [] });
  const readings = [
    { counter: 1_000, videoSecond: 0, quote: "" },
    { counter: 2_000, videoSecond: 60, quote: "" },
  ];
  const { views, moved } = movedViews(seen, readings, { c: { counter: "24" } });
  expect([...moved]).toEqual(["b"]);
  expect(views.map(({ texts }) => texts["counter"])).toEqual(["10.0", "17.0", "20.0"]);
  expect(movedViews(seen, readings, { c: { counter: "no" } }).moved.size).toBe(0);
});
