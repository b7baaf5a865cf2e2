import { expect, test } from "vitest";
import type { ScopeItem } from "#lib/domain/facts/scope.ts";
import { cutAt, overshoots } from "#lib/domain/split/overshoot.ts";
import { aScopeItem } from "#tests/support/file.ts";
import { aPricedLine, divideLine } from "#tests/support/priced-line.ts";

/** Two houses, the farther one behind T5 at 140.9 ft, which may be off by 1 ft. */
const TIE_INS = [
  { id: "T1", station: 3_000 },
  { id: "T5", station: 14_090 },
];

function past(item: Partial<ScopeItem>) {
  const { file, found } = aPricedLine(TIE_INS, { scope: [aScopeItem("Line the trunk", item)] });
  return overshoots(file, found.tieIns);
}

test("overshoots() finds work that ends a little past the last tie-in, and says by how much", () => {
  expect(past({ from: 0, to: 14_100 })).toEqual([
    {
      itemId: "Line the trunk",
      end: 14_090,
      tieIn: "T5 at 140.9 ft",
      sentence:
        "“Line the trunk” reaches 141.0 ft, 0.1 ft past T5 at 140.9 ± 1.0 ft, the last tie-in. No one’s flow passes beyond it.",
    },
  ]);
  expect(past({ place: "point", from: 14_150, to: null })[0]?.sentence).toContain(
    "lies at 141.5 ft",
  );
});

test.each<[string, Partial<ScopeItem>]>([
  ["ends at it", { from: 0, to: 14_090 }],
  ["goes on by more than it may be off", { from: 0, to: 14_300 }],
  ["begins there", { from: 14_090, to: 14_120 }],
  ["has a payer of its own", { from: 0, to: 14_100, payerId: "T5" }],
  ["is general", { place: "general", from: null, to: null }],
])("overshoots() leaves work alone that %s", (_what, item) => {
  expect(past(item)).toEqual([]);
});

test("work cut at the last tie-in can be shared by every rule by place, whichever end was typed first", () => {
  for (const [from, to] of [
    [0, 14_100],
    [14_100, 0],
  ] as const) {
    const item = aScopeItem("lining", { from, to });
    const line = (scope: ScopeItem) => aPricedLine(TIE_INS, { scope: [scope] });
    expect(divideLine(line(item), "portion-used").refusal).toContain("no one’s flow passes there");
    const cut = cutAt(item, 14_090);
    expect([cut.from, cut.to].toSorted()).toEqual([0, 14_090]);
    for (const rule of ["portion-used", "reach-owner"] as const)
      expect(divideLine(line(cut), rule).refusal).toBeNull();
  }
});
