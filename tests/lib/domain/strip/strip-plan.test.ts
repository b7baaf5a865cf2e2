import fc from "fast-check";
import { expect, test } from "vitest";
import { textWidth } from "#lib/domain/say/text-width.ts";
import type { StripDrawing, StripMark } from "#lib/domain/strip/drawing.ts";
import { planStrip } from "#lib/domain/strip/strip-plan.ts";
import type { Shape } from "#lib/domain/strip/strip-shape.ts";

function aMark(id: string, station: number, label: string, detail = ""): StripMark {
  return {
    id,
    kind: "tie-in",
    station,
    toStation: null,
    whisker: 0,
    side: "left",
    label,
    detail,
    loud: false,
    sentence: "",
  };
}

function aDrawing(overrides: Partial<StripDrawing> = {}): StripDrawing {
  return {
    extent: 10_000,
    ticks: [0, 5_000, 10_000],
    above: [],
    below: [],
    onPipe: [],
    joins: [],
    pipes: [{ from: 0, to: 10_000, material: "pvc", words: "PVC" }],
    bands: [],
    title: "",
    ...overrides,
  };
}

const FRAME = { width: 468, scale: null, from: 0, to: 10_000, height: null };

type Words = Extract<Shape, { kind: "words" }>;
type Line = Extract<Shape, { kind: "line" }>;

function wordsOf(shapes: readonly Shape[]): Words[] {
  return shapes.filter((shape) => shape.kind === "words");
}

function boxOf({ at: [x, y], text, size, strong, anchor }: Words) {
  const width = textWidth(text, size, strong);
  const left = { start: x, middle: x - width / 2, end: x - width }[anchor];
  return { left, right: left + width, top: y - size * 0.8, bottom: y + size * 0.2 };
}

const flagged = fc
  .array(
    fc.record({
      station: fc.integer({ min: 0, max: 10_000 }),
      label: fc.string({ minLength: 1, maxLength: 14 }),
      detail: fc.string({ maxLength: 24 }),
    }),
    { minLength: 1, maxLength: 14 },
  )
  .map((marks) =>
    marks.map((mark, index) => aMark(`m${index}`, mark.station, mark.label, mark.detail)),
  );

/** As wide as there is room, and to a scale at which flags at the end have to point back. */
const FRAMES = [FRAME, { ...FRAME, width: 468, scale: 4.5 }, { ...FRAME, scale: 9, to: 5_000 }];

test.each(FRAMES)(
  "planStrip() never lets two flags' words overlap, nor a leader cross words (%#)",
  (frame) => {
    fc.assert(
      fc.property(flagged, (below) => {
        const { shapes } = planStrip(aDrawing({ below, ticks: [] }), frame);
        const boxes = wordsOf(shapes)
          .filter(({ text }) => text.trim() !== "")
          .map(boxOf);
        for (const [index, one] of boxes.entries()) {
          for (const other of boxes.slice(index + 1)) {
            const apart =
              one.right <= other.left + 0.01 ||
              other.right <= one.left + 0.01 ||
              one.bottom <= other.top + 0.01 ||
              other.bottom <= one.top + 0.01;
            expect(apart).toBe(true);
          }
          for (const leader of uprights(shapes)) {
            const crosses =
              leader.x > one.left &&
              leader.x < one.right &&
              leader.top < one.bottom &&
              leader.bottom > one.top;
            expect(crosses).toBe(false);
          }
        }
      }),
    );
  },
);

function uprights(shapes: readonly Shape[]): { x: number; top: number; bottom: number }[] {
  return shapes
    .filter((shape): shape is Line => shape.kind === "line" && shape.points.length === 2)
    .filter(({ points: [a, b] }) => a !== undefined && b !== undefined && a[0] === b[0])
    .map(({ points: [a = [0, 0], b = [0, 0]] }) => ({
      x: a[0],
      top: Math.min(a[1], b[1]),
      bottom: Math.max(a[1], b[1]),
    }));
}

test("planStrip() keeps all words within the frame's width", () => {
  const below = [aMark("end", 10_000, "Upper end of the line", "at the cleanout")];
  const { shapes, width } = planStrip(aDrawing({ below }), FRAME);
  for (const words of wordsOf(shapes)) expect(boxOf(words).right).toBeLessThanOrEqual(width);
});

test("planStrip() draws to the scale that it is given", () => {
  const below = [aMark("a", 1_000, "A"), aMark("b", 3_000, "B")];
  const { shapes } = planStrip(aDrawing({ below }), { ...FRAME, width: 704, scale: 7.2 });
  const [a, b] = ["A", "B"].map((label) => wordsOf(shapes).find(({ text }) => text === label));
  // 20 ft at 1 in = 10 ft: two inches, 144 points.
  expect((b?.at[0] ?? 0) - (a?.at[0] ?? 0)).toBeCloseTo(144, 6);
});

test("planStrip() moves words that do not fit their cell into notes, and leaves none out", () => {
  const cells = [
    { from: 0, to: 300, words: "12 and 14 Fennel Row", loud: false, hatch: "none" as const },
    { from: 300, to: 10_000, words: "18 Fennel Row", loud: false, hatch: "none" as const },
  ];
  const texts = wordsOf(
    planStrip(aDrawing({ bands: [{ title: "Served", cells }] }), FRAME).shapes,
  ).map(({ text }) => text);
  expect(texts).toContain("18 Fennel Row");
  expect(texts).toContain("a");
  expect(texts.some((text) => text.includes("12 and 14 Fennel Row"))).toBe(true);
});

test("planStrip() draws only what lies in its stretch", () => {
  const below = [aMark("a", 1_000, "A"), aMark("b", 8_000, "B")];
  const { shapes } = planStrip(aDrawing({ below }), {
    width: 704,
    scale: 7.2,
    from: 5_000,
    to: 10_000,
    height: null,
  });
  const texts = wordsOf(shapes).map(({ text }) => text);
  expect(texts).toContain("B");
  expect(texts).not.toContain("A");
});

test("planStrip() gives a loud mark another shape than a quiet one", () => {
  const areas = (loud: boolean) =>
    planStrip(aDrawing({ below: [{ ...aMark("a", 1_000, "A"), loud }] }), FRAME)
      .shapes.filter((shape) => shape.kind === "area")
      .map(({ points }) => points.length);
  expect(areas(true)).not.toEqual(areas(false));
});

test("planStrip() leaves second lines out to keep to a height, quiet ones first, labels never", () => {
  const below = Array.from({ length: 14 }, (_, index) => ({
    ...aMark(`m${index}`, 500 + index * 600, `T${index}`, "some address in the row"),
    loud: index === 3,
  }));
  const drawing = aDrawing({ below });
  const full = planStrip(drawing, FRAME);
  const spare = planStrip(drawing, { ...FRAME, height: full.height - 40 });
  const texts = wordsOf(spare.shapes).map(({ text }) => text);
  expect(spare.height).toBeLessThan(full.height);
  expect(texts.filter((text) => text.startsWith("some address"))).toHaveLength(1);
  for (const { label } of below) expect(texts).toContain(label);
});
