import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { ScopeItem } from "#lib/domain/facts/scope.ts";
import { SPLIT_RULES } from "#lib/domain/facts/split.ts";
import { addRatios, formatRatio, type Ratio, ratio, ZERO } from "#lib/domain/money/ratio.ts";
import { groundOf } from "#lib/domain/sharing/ground.ts";
import { placementOf } from "#lib/domain/sharing/placing.ts";
import { costTree } from "#lib/domain/split/cost-tree.ts";
import { divide } from "#lib/domain/split/divide.ts";
import { worstGroup } from "#lib/domain/split/worst-group.ts";
import { aProperty, aScopeItem, aUnit } from "#tests/support/file.ts";
import {
  aChoice,
  aPricedLine,
  divideLine,
  exactOf,
  type PricedLine,
} from "#tests/support/priced-line.ts";

/** A random line: trunk and nested branches, some properties with two tie-ins, work on all of it. */
function aRandomLine(most: number, options: { readonly unknown?: boolean } = {}) {
  const tieIn = fc.record({
    station: fc.integer({ min: 0, max: 40 }),
    parent: fc.option(fc.nat(20), { nil: null, freq: 2 }),
    owner: fc.nat(20),
    known: options.unknown === true ? fc.boolean() : fc.constant(true),
  });
  const work = fc.record({
    place: fc.constantFrom("stretch", "stretch", "point", "branch"),
    from: fc.nat(100),
    to: fc.nat(100),
    at: fc.nat(20),
    cents: fc.integer({ min: 0, max: 5_000 }),
  });
  return fc
    .record({
      count: fc.integer({ min: 1, max: most }),
      tieIns: fc.array(tieIn, { minLength: most + 2, maxLength: most + 2 }),
      works: fc.array(work, { minLength: 1, maxLength: 5 }),
      units: fc.array(fc.integer({ min: 0, max: 3 }), { minLength: most, maxLength: most }),
      weights: fc.array(fc.integer({ min: 1, max: 9 }), { minLength: most, maxLength: most }),
    })
    .map((random) => lineOf(random));
}

function lineOf(random: {
  readonly count: number;
  readonly tieIns: readonly {
    station: number;
    parent: number | null;
    owner: number;
    known: boolean;
  }[];
  readonly works: readonly { place: string; from: number; to: number; at: number; cents: number }[];
  readonly units: readonly number[];
  readonly weights: readonly number[];
}): PricedLine {
  const tieIns = random.tieIns.slice(0, random.count + 2).map((each, index) => ({
    id: `T${index}`,
    station: each.station * 100,
    parentId: index > 0 && each.parent !== null ? `T${each.parent % index}` : null,
    propertyId: each.known ? `P${index < random.count ? index : each.owner % random.count}` : null,
  }));
  const roots = tieIns.filter((each) => each.parentId === null).map((each) => each.station);
  const top = Math.max(...roots);
  const scope = random.works.map((work, index): ScopeItem => {
    const [from, to] = [Math.round((work.from * top) / 100), Math.round((work.to * top) / 100)];
    const price = { quantity: 100, rate: work.cents };
    if (work.place === "branch") {
      const tieInId = `T${work.at % tieIns.length}`;
      return aScopeItem(`i${index}`, { place: "branch", from: null, to: null, tieInId, ...price });
    }
    if (work.place === "point")
      return aScopeItem(`i${index}`, { place: "point", from, to: null, ...price });
    return aScopeItem(`i${index}`, { from, to, ...price });
  });
  const ids = [...new Set(tieIns.flatMap((each) => each.propertyId ?? []))];
  return aPricedLine(tieIns, {
    properties: ids.map((id, index) => aProperty(id, { weight: random.weights[index] ?? 1 })),
    units: ids.flatMap((id, index) =>
      Array.from({ length: random.units[index] ?? 0 }, (_, unit) => aUnit(`${id}-${unit}`, id)),
    ),
    scope,
  });
}

/** What mending the pipe that a group uses costs, straight from the facts. */
function costOf(line: PricedLine, group: ReadonlySet<string>): Ratio {
  const byId = new Map(line.found.tieIns.map((finding) => [finding.tieIn.id, finding]));
  const used = new Set<string>();
  let top = -1;
  for (const finding of line.found.tieIns) {
    if (!group.has(finding.propertyId ?? "")) continue;
    let each: typeof finding | undefined = finding;
    while (each !== undefined) {
      used.add(each.tieIn.id);
      if (each.tieIn.parentId === null) top = Math.max(top, each.station ?? 0);
      each = byId.get(each.tieIn.parentId ?? "");
    }
  }
  return line.file.scope.reduce((sum, item) => addRatios(sum, costWithin(item, top, used)), ZERO);
}

function costWithin(item: ScopeItem, top: number, used: ReadonlySet<string>): Ratio {
  const amount = BigInt(item.rate);
  if (item.place === "branch") return used.has(item.tieInId ?? "") ? ratio(amount) : ZERO;
  const low = Math.min(item.from ?? 0, item.to ?? item.from ?? 0);
  const high = Math.max(item.from ?? 0, item.to ?? item.from ?? 0);
  if (low === high) return low <= top ? ratio(amount) : ZERO;
  const part = Math.max(0, Math.min(high, top) - low);
  return ratio(amount * BigInt(part), BigInt(high - low));
}

function groupsOf(keys: readonly string[]): ReadonlySet<string>[] {
  return Array.from(
    { length: 2 ** keys.length },
    (_, bits) => new Set(keys.filter((_key, place) => ((bits >> place) & 1) === 1)),
  );
}

function isBelow(a: Ratio, b: Ratio): boolean {
  return a.n * b.d < b.n * a.d;
}

function minus(a: Ratio, b: Ratio): Ratio {
  return ratio(a.n * b.d - b.n * a.d, a.d * b.d);
}

/** The Shapley value by its definition: every group, weighted by the orders in which it comes first. */
function shapley(line: PricedLine, keys: readonly string[]): Record<string, string> {
  const factorial = (n: number): bigint => (n <= 1 ? 1n : BigInt(n) * factorial(n - 1));
  const value = new Map(
    groupsOf(keys).map((group) => [[...group].sort().join(), costOf(line, group)]),
  );
  const worth = (group: readonly string[]) => value.get([...group].sort().join()) ?? ZERO;
  return Object.fromEntries(
    keys.map((key) => {
      const others = keys.filter((other) => other !== key);
      const sum = groupsOf(others).reduce((all, group) => {
        const orders = factorial(group.size) * factorial(keys.length - group.size - 1);
        const added = minus(worth([...group, key]), worth([...group]));
        return addRatios(all, ratio(added.n * orders, added.d * factorial(keys.length)));
      }, ZERO);
      return [key, formatRatio(sum)];
    }),
  );
}

const OTHER_CHOICES = { faultStation: 0, payerId: "P0" } as const;

describe("laws of the split", () => {
  test("splitOutcome() never gains or loses a cent, under any rule, however unknown owners are treated", () => {
    fc.assert(
      fc.property(
        aRandomLine(6, { unknown: true }),
        fc.constantFrom(...SPLIT_RULES),
        fc.constantFrom("carried" as const, "held-apart" as const),
        (line, rule, unknownShares) => {
          const outcome = divideLine(line, rule, { ...OTHER_CHOICES, unknownShares });
          if (outcome.refusal !== null) return;
          const sum = outcome.shares.reduce((all, share) => all + share.amount, 0);
          expect(sum).toBe(outcome.total);
          for (const share of outcome.shares) {
            expect(share.recoverable).toBeGreaterThanOrEqual(0);
            expect(share.recoverable).toBeLessThanOrEqual(share.amount);
          }
        },
      ),
      { numRuns: 400 },
    );
  });

  test("splitOutcome() carries for unknown owners exactly what is their own share, to the cent", () => {
    fc.assert(
      fc.property(
        aRandomLine(6, { unknown: true }),
        fc.constantFrom(...SPLIT_RULES),
        (line, rule) => {
          const carried = divideLine(line, rule, { ...OTHER_CHOICES, unknownShares: "carried" });
          const apart = divideLine(line, rule, { ...OTHER_CHOICES, unknownShares: "held-apart" });
          if (carried.refusal !== null || apart.refusal !== null) return;
          const recoverable = carried.shares.reduce((all, share) => all + share.recoverable, 0);
          if (recoverable === 0) return;
          const theirs = apart.shares.filter(({ propertyId }) => propertyId === null);
          expect(recoverable).toBe(theirs.reduce((all, share) => all + share.amount, 0));
        },
      ),
      { numRuns: 1_000 },
    );
  });

  test("splitOutcome() writes steps that add up to each exact share, within a cent of the amount", () => {
    fc.assert(
      fc.property(aRandomLine(5), fc.constantFrom(...SPLIT_RULES), (line, rule) => {
        for (const share of divideLine(line, rule, OTHER_CHOICES).shares) {
          const sum = share.steps.reduce((all, step) => addRatios(all, parsed(step.exact)), ZERO);
          expect(formatRatio(sum)).toBe(share.exact);
          const off = Math.abs(Number(sum.n) / Number(sum.d) - share.amount);
          expect(off).toBeLessThan(1);
        }
      }),
      { numRuns: 200 },
    );
  });

  test("splitOutcome() by portion used is the Shapley value of mending the tree", () => {
    fc.assert(
      fc.property(aRandomLine(5), (line) => {
        const exact = exactOf(divideLine(line, "portion-used"));
        expect(exact).toEqual(shapley(line, Object.keys(exact)));
      }),
      { numRuns: 150 },
    );
  });

  test("splitOutcome() by portion used lets no group pay more than its own pipe costs", () => {
    fc.assert(
      fc.property(aRandomLine(7), (line) => {
        const outcome = divideLine(line, "portion-used");
        expect(outcome.standAlone?.passes).toBe(true);
        const exact = exactOf(outcome);
        for (const group of groupsOf(Object.keys(exact))) {
          const pays = [...group].reduce((sum, key) => addRatios(sum, parsed(exact[key])), ZERO);
          expect(isBelow(costOf(line, group), pays)).toBe(false);
        }
      }),
      { numRuns: 60 },
    );
  });

  test("splitOutcome() by portion used lets more cost fall only on those who use the pipe, equally", () => {
    fc.assert(
      fc.property(aRandomLine(6), fc.integer({ min: 0, max: 4_000 }), (line, station) => {
        const more = aScopeItem("more", {
          place: "point",
          from: station,
          to: null,
          quantity: 100,
          rate: 5_040,
        });
        const after = { ...line, file: { ...line.file, scope: [...line.file.scope, more] } };
        const outcome = divideLine(after, "portion-used");
        if (outcome.refusal !== null) return;
        const before = exactOf(divideLine(line, "portion-used"));
        const added = Object.entries(exactOf(outcome)).map(([key, exact]) =>
          formatRatio(minus(parsed(exact), parsed(before[key]))),
        );
        expect(new Set(added.filter((each) => each !== "0/1")).size).toBe(1);
      }),
      { numRuns: 100 },
    );
  });
});

describe("worstGroup()", () => {
  test("worstGroup() finds by one pass what trying every group finds, up to twelve properties", () => {
    fc.assert(
      fc.property(
        fc.oneof(aRandomLine(5), aRandomLine(9), aRandomLine(12)),
        fc.constantFrom(...SPLIT_RULES),
        (line, rule) => {
          const ground = groundOf(line.file, line.found, "held-apart");
          const division = divide(ground, aChoice(rule, OTHER_CHOICES));
          if (!division.ok) return;
          const items = ground.items.map((priced) => ({
            ...priced,
            placement: placementOf(priced.item, ground),
          }));
          const tree = costTree(ground, items);
          const worst = tree === null ? null : worstGroup(tree, division.value.ruled);
          if (worst === null) throw new Error("Expected a worst group");
          const { numerators, denominator } = division.value.ruled;
          const excessOf = (group: ReadonlySet<string>) => {
            const pays = ground.people.reduce(
              (sum, person, index) =>
                group.has(person.key) ? sum + (numerators[index] ?? 0n) : sum,
              0n,
            );
            return minus(ratio(pays, denominator), costOf(line, group));
          };
          const greatest = groupsOf(ground.people.map((person) => person.key))
            .map(excessOf)
            .reduce((most, each) => (isBelow(most, each) ? each : most), ZERO);
          expect(ratio(worst.excess, worst.denominator)).toEqual(greatest);
          const named = new Set(worst.members.flatMap((index) => ground.people[index]?.key ?? []));
          expect(excessOf(named)).toEqual(greatest);
        },
      ),
      { numRuns: 120 },
    );
  });
});

function parsed(exact: string | undefined): Ratio {
  const [n = "0", d = "1"] = (exact ?? "0/1").split("/");
  return ratio(BigInt(n), BigInt(d));
}
