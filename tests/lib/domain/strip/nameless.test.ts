import { expect, test } from "vitest";
import type { StripDrawing, StripMark } from "#lib/domain/strip/drawing.ts";
import { nameless } from "#lib/domain/strip/nameless.ts";

function aMark(id: string, rest: Partial<StripMark> = {}): StripMark {
  return {
    ...{ id, kind: "tie-in", station: 100, toStation: null, whisker: 0, side: "left" },
    ...{ label: "T1", detail: "", loud: false, sentence: "T1 joins at 1.0 ft.", ...rest },
  };
}

const DRAWING: StripDrawing = {
  ...{ extent: 1000, ticks: [0], pipes: [], title: "Strip drawing" },
  above: [aMark("own-entry", { kind: "entry" })],
  below: [aMark("own-tie-in", { crowd: { count: 2, ids: ["own-tie-in", "own-other"] } })],
  onPipe: [aMark("own-main", { kind: "main" })],
  joins: [{ entryId: "own-entry", tieInId: "own-tie-in", state: "accepted", distance: 5 }],
  bands: [
    {
      title: "Work",
      cells: [{ from: 0, to: 5, words: "dig", loud: false, hatch: "none", id: "own-reach" }],
    },
  ],
};

test("nameless() hands out no id of the file, and what belongs together still does", () => {
  const drawn = nameless(DRAWING);
  expect(JSON.stringify(drawn)).not.toContain("own-");
  const [above, below, main] = [drawn.above[0], drawn.below[0], drawn.onPipe[0]];
  expect(drawn.joins).toEqual([
    { entryId: above?.id, tieInId: below?.id, state: "accepted", distance: 5 },
  ]);
  expect(below?.crowd?.ids[0]).toBe(below?.id);
  expect(new Set([above?.id, ...(below?.crowd?.ids ?? []), main?.id]).size).toBe(4);
  expect(drawn.bands[0]?.cells[0]?.words).toBe("dig");
  expect(nameless(drawn)).toEqual(drawn);
});
