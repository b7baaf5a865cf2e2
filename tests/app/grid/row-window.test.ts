import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { DRAWN_WHOLE, rowsInView, spansToDraw } from "#app/_components/grid/row-window.ts";

describe("rowsInView()", () => {
  test("is what stands in the window, with some rows beyond", () => {
    const at = { count: 1000, height: 900, rowHeight: 36 };
    expect(rowsInView({ ...at, top: 400 })).toEqual({ from: 0, to: 44 });
    expect(rowsInView({ ...at, top: -3600 })).toEqual({ from: 70, to: 155 });
    expect(rowsInView({ ...at, top: -36_000 })).toEqual({ from: 970, to: 1000 });
  });

  test("holds at least one row, wherever the window is", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 5000 }),
        fc.integer({ min: -500_000, max: 500_000 }),
        (count, top) => {
          const { from, to } = rowsInView({ count, top, height: 900, rowHeight: 36 });
          expect(from).toBeGreaterThanOrEqual(0);
          expect(to).toBeLessThanOrEqual(count);
          expect(to).toBeGreaterThan(from);
        },
      ),
    );
  });
});

describe("spansToDraw()", () => {
  test("draws a short table whole", () => {
    expect(spansToDraw(DRAWN_WHOLE, { from: 3, to: 9 }, [])).toEqual([{ from: 0, to: 120 }]);
    expect(spansToDraw(0, { from: 0, to: 0 }, [])).toEqual([]);
  });

  test("draws the row with the cursor and the last one, wherever the window is", () => {
    expect(spansToDraw(1000, { from: 400, to: 480 }, [12, 999])).toEqual([
      { from: 10, to: 15 },
      { from: 400, to: 480 },
      { from: 997, to: 1000 },
    ]);
    expect(spansToDraw(1000, { from: 400, to: 480 }, [399, 481])).toEqual([{ from: 397, to: 484 }]);
  });

  test("draws each row once, in order, and every row that must be there", () => {
    const row = fc.integer({ min: 0, max: 999 });
    fc.assert(
      fc.property(row, fc.integer({ min: 1, max: 90 }), fc.array(row), (from, many, must) => {
        const inView = { from, to: Math.min(from + many, 1000) };
        const spans = spansToDraw(1000, inView, must);
        const drawn = spans.flatMap((span) =>
          Array.from({ length: span.to - span.from }, (_none, at) => span.from + at),
        );
        expect(drawn).toEqual([...new Set(drawn)].toSorted((a, b) => a - b));
        for (const each of [...must, inView.from, inView.to - 1]) expect(drawn).toContain(each);
      }),
    );
  });
});
