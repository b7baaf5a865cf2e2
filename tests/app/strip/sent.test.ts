import { expect, test } from "vitest";
import { drawingsIn, packDrawings } from "#app/_components/strip-sent.ts";
import { reportOn } from "#lib/domain/report/report-on.ts";
import { drawStrips } from "#lib/domain/strip/draw.ts";
import { gistOf } from "#lib/domain/strip/gist.ts";
import { sampleLine } from "#tests/support/sample-line.ts";

const { file } = sampleLine();
const drawings = drawStrips(file, reportOn(file, "2026-11-25"));
const asJson = (value: unknown) => JSON.parse(JSON.stringify(value));

test("every drawing comes back from its text as it was", () => {
  expect(drawings.cost).not.toEqual(drawings.record);
  expect(drawingsIn(packDrawings(drawings))).toEqual(asJson(drawings));
});

test("what the drawings have alike is written once", () => {
  const one = packDrawings({ all: drawings.all }).length;
  expect(packDrawings(drawings).length).toBeLessThan(2 * one);
});

test("a page's own drawing goes by itself, and the others are not there", () => {
  const { drawing } = gistOf(drawings.cost);
  const read = drawingsIn(packDrawings({ cost: drawing }));
  expect(read).toEqual({ cost: asJson(drawing) });
  expect(read.all).toBeUndefined();
});

test("the same text is read once", () => {
  const text = packDrawings(drawings);
  expect(drawingsIn(text).all).toBe(drawingsIn(`${text}`).all);
});
