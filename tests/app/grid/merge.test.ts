import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { changedRows, isSame, mergeRows, withTheirs } from "#app/_components/grid/merge.ts";

const BASE = [
  { id: "a", label: "House 12", distance: 1550 },
  { id: "b", label: "House 14", distance: 2350 },
];
const [A, B] = BASE as [(typeof BASE)[0], (typeof BASE)[0]];

test("changedRows() are those that are new or otherwise, whatever the order of their fields", () => {
  const moved = { distance: 1550, label: "House 12", id: "a" };
  const other = { ...B, distance: 2400 };
  const added = { id: "c", label: "House 16", distance: 3900 };
  expect(changedRows(BASE, [added, moved, other])).toEqual([added, other]);
  expect(changedRows(BASE, [B])).toEqual([]);
});

describe("mergeRows()", () => {
  test("puts changes to different fields and rows together", () => {
    const mine = [{ ...A, label: "House 12A" }, B];
    const theirs = [{ ...A, distance: 1600 }, B, { id: "c", label: "House 16", distance: 3900 }];
    expect(mergeRows(BASE, mine, theirs)).toEqual({
      rows: [
        { id: "a", label: "House 12A", distance: 1600 },
        B,
        { id: "c", label: "House 16", distance: 3900 },
      ],
      clashes: [],
    });
  });

  test("calls the same field changed to two values a clash, and keeps mine until a person says", () => {
    const mine = [{ ...A, distance: 1500 }, B];
    const theirs = [{ ...A, distance: 1600 }, B];
    const merged = mergeRows(BASE, mine, theirs);
    expect(merged.clashes).toEqual([{ id: "a", mine: mine[0], theirs: theirs[0] }]);
    expect(merged.rows).toEqual(mine);
    expect(withTheirs(merged)).toEqual(theirs);
  });

  test("is no clash where both changed a field to the same value", () => {
    const both = [{ ...A, distance: 1600 }, B];
    expect(mergeRows(BASE, both, both)).toEqual({ rows: both, clashes: [] });
  });

  test("lets a row go that one removed and the other left alone", () => {
    expect(mergeRows(BASE, [B], BASE)).toEqual({ rows: [B], clashes: [] });
    expect(mergeRows(BASE, BASE, [A])).toEqual({ rows: [A], clashes: [] });
  });

  test("asks where one removed a row that the other changed", () => {
    const changed = { ...A, label: "House 12 rear" };
    const mineGone = mergeRows(BASE, [B], [changed, B]);
    expect(mineGone.clashes).toEqual([{ id: "a", mine: null, theirs: changed }]);
    expect(withTheirs(mineGone)).toEqual([B, changed]);
    const theirsGone = mergeRows(BASE, [changed, B], [B]);
    expect(theirsGone.clashes).toEqual([{ id: "a", mine: changed, theirs: null }]);
    expect(theirsGone.rows).toEqual([changed, B]);
    expect(withTheirs(theirsGone)).toEqual([B]);
  });

  test("loses no row that either side added, and invents none", () => {
    const row = fc.record({ id: fc.constantFrom(..."abcdefgh"), label: fc.string() });
    const rows = fc.uniqueArray(row, { selector: (one) => one.id, maxLength: 8 });
    fc.assert(
      fc.property(rows, rows, rows, (base, mine, theirs) => {
        const ids = mergeRows(base, mine, theirs).rows.map((one) => one["id"]);
        const was = new Set(base.map((one) => one.id));
        for (const one of [...mine, ...theirs]) if (!was.has(one.id)) expect(ids).toContain(one.id);
        const known = new Set([...mine, ...theirs].map((one) => one.id));
        for (const id of ids) expect(known).toContain(id);
        expect(new Set(ids).size).toBe(ids.length);
      }),
    );
  });

  test("changes nothing when they changed nothing", () => {
    const row = fc.record({ id: fc.constantFrom(..."abcdefgh"), label: fc.string() });
    const rows = fc.uniqueArray(row, { selector: (one) => one.id, maxLength: 8 });
    fc.assert(
      fc.property(rows, rows, (base, mine) => {
        expect(mergeRows(base, mine, base)).toEqual({ rows: mine, clashes: [] });
      }),
    );
  });
});

test("isSame() goes by content, whatever the order of fields", () => {
  expect(isSame({ a: 1, b: [{ c: 2, d: null }] }, { b: [{ d: null, c: 2 }], a: 1 })).toBe(true);
  expect(isSame([1, 2], [2, 1])).toBe(false);
});
