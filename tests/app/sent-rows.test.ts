import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { packRows, sentRows, unpackRows } from "#app/_components/sent-rows.ts";

const ROWS = Array.from({ length: 300 }, (_none, at) => ({ id: `o${at}`, runId: `run${at % 3}` }));

describe("sentRows()", () => {
  test("a short table goes whole, also what is not shown of it", () => {
    const rows = ROWS.slice(0, 32);
    expect(sentRows(rows, { runId: "run1" })).toEqual({ rows, unsent: 0, whole: true });
  });

  test("of a long one the first rows that are shown go, and how many follow", () => {
    const sent = sentRows(ROWS, { runId: "run1" });
    expect(sent.whole).toBe(false);
    expect(sent.rows).toHaveLength(24);
    expect(sent.rows.every(({ runId }) => runId === "run1")).toBe(true);
    expect(sent.rows.length + sent.unsent).toBe(100);
  });

  test("what is shown may all be sent while the rest of the table is not", () => {
    const sent = sentRows([...ROWS, { id: "x", runId: "other" }], { runId: "other" });
    expect(sent).toEqual({ rows: [{ id: "x", runId: "other" }], unsent: 0, whole: false });
  });
});

test("packed rows come out as they went in, through JSON, whatever fields each has", () => {
  const value = fc.jsonValue();
  const row = fc.dictionary(fc.constantFrom("id", "a b", "list", "deep"), value);
  fc.assert(
    fc.property(fc.array(row), fc.nat(), (rows, base) => {
      const pack = JSON.parse(JSON.stringify(packRows(base, rows)));
      expect(pack.base).toBe(base);
      expect(unpackRows(pack)).toEqual(JSON.parse(JSON.stringify(rows)));
    }),
  );
});
