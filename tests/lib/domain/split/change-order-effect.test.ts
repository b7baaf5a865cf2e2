import { expect, test } from "vitest";
import type { ChangeOrder } from "#lib/domain/facts/change-order.ts";
import {
  changeOrderEffects,
  firstPriced,
  nextOrderNumber,
} from "#lib/domain/split/change-order-effect.ts";
import { aScopeItem } from "#tests/support/file.ts";
import { aChoice, aPricedLine } from "#tests/support/priced-line.ts";

function anOrder(number: number, state: ChangeOrder["state"]): ChangeOrder {
  return {
    id: `co${number}`,
    number,
    title: `Change ${number}`,
    reason: "Rock at 40 ft",
    state,
    orderedBy: "Ottilie Brandvold",
    orderedOn: "2026-11-20",
    note: "",
  };
}

/** $1,000 at first; order 1 (agreed) adds $100 for both, order 2 swaps the first item for $2,500. */
const LINE = aPricedLine(
  [
    { id: "A", station: 2_000 },
    { id: "B", station: 6_000 },
  ],
  {
    changeOrders: [anOrder(2, "proposed"), anOrder(1, "agreed")],
    scope: [
      aScopeItem("dig", { from: 0, to: 1_000, quantity: 1_000, droppedById: "co2" }),
      aScopeItem("rock", { from: 0, to: 1_000, quantity: 100, addedById: "co1" }),
      aScopeItem("liner", { from: 0, to: 2_000, quantity: 2_500, addedById: "co2" }),
    ],
  },
);

test("changeOrderEffects() shows each order after the agreed ones before it, to the cent", () => {
  const effects = changeOrderEffects(LINE.file, LINE.found, aChoice("equal"));
  expect(effects.map(({ order, before, after }) => [order.number, before, after])).toEqual([
    [1, 100_000, 110_000],
    [2, 110_000, 260_000],
  ]);
  expect(effects[1]?.shares).toEqual([
    { key: "A", label: "A Fennel Row", before: 55_000, after: 130_000 },
    { key: "B", label: "B Fennel Row", before: 55_000, after: 130_000 },
  ]);
  expect(effects[1]?.sentence).toBe(
    "$1,500.00 more: $1,100.00 before, $2,600.00 after. 2 amounts change.",
  );
  expect(effects[1]?.added.map(({ id }) => id)).toEqual(["liner"]);
  expect(effects[1]?.dropped.map(({ id }) => id)).toEqual(["dig"]);
});

test("changeOrderEffects() gives the totals even where nobody can be asked yet", () => {
  const [first] = changeOrderEffects(LINE.file, LINE.found, aChoice("weights"));
  expect(first).toMatchObject({ before: 100_000, after: 110_000, shares: [] });
  expect(first?.sentence).toContain("can’t be calculated yet");
});

test("firstPriced() is what the work came to before any change", () => {
  expect(firstPriced(LINE.file)).toBe(100_000);
});

test("nextOrderNumber() goes up by itself", () => {
  expect(nextOrderNumber(LINE.file)).toBe(3);
  expect(nextOrderNumber({ changeOrders: [] })).toBe(1);
});
