/** How one piece of cost is divided: members by their place in the ground's list of people. */
export interface Allotment {
  readonly members: readonly Member[];
  readonly sum: bigint;
  /** Where the members are all people from one place in the list to before another, alike: those places. */
  readonly range: PeopleRange | null;
  /** Whether all its members take the same part; `sum` is then how many they are. */
  readonly alike: boolean;
  /** The sum as a person writes it, given the cost in words: `$6,000.00 ÷ 3`. */
  readonly words: (cost: string, weight: bigint) => string;
}

interface PeopleRange {
  readonly from: number;
  readonly to: number;
}

export interface Member {
  readonly index: number;
  readonly weight: bigint;
}

/** The same for each; `note` follows the number: ` ÷ 2 behind T4`. */
export function equalAllotment(indices: readonly number[], note = ""): Allotment {
  return {
    members: indices.map((index) => ({ index, weight: 1n })),
    sum: BigInt(indices.length),
    range: null,
    alike: true,
    words: dividedBy(indices.length, note),
  };
}

function dividedBy(count: number, note: string): Allotment["words"] {
  const divided = count === 1 ? `, alone${note}` : ` ÷ ${count}${note}`;
  return (cost) => `${cost}${divided}`;
}

/**
 * The same for each of the people from one place in the list to before another. On a long line
 * every piece of pipe has its own such range, so that the members are only listed when asked for.
 */
export function rangeAllotment(from: number, to: number): Allotment {
  return {
    get members() {
      return Array.from({ length: to - from }, (_, place) => ({
        index: from + place,
        weight: 1n,
      }));
    },
    sum: BigInt(to - from),
    range: { from, to },
    alike: true,
    words: dividedBy(to - from, ""),
  };
}

/** By weights; `said` writes a weight and `of` the sum of all: `$6,000.00 × 2 ÷ 4 units`. */
export function weightedAllotment(
  members: readonly Member[],
  said: (weight: bigint) => string,
  noun: string,
): Allotment {
  const counted = members.filter((member) => member.weight > 0n);
  const sum = counted.reduce((all, { weight }) => all + weight, 0n);
  return {
    members: counted,
    sum,
    range: null,
    alike: false,
    words: (cost, weight) =>
      weight === sum ? `${cost}, all ${noun}` : `${cost} × ${said(weight)} ÷ ${said(sum)} ${noun}`,
  };
}

/** All of it for one. */
export function soleAllotment(index: number, note: string): Allotment {
  return {
    members: [{ index, weight: 1n }],
    sum: 1n,
    range: null,
    alike: true,
    words: (cost) => `${cost}, ${note}`,
  };
}

/** A measure with decimals as a whole number of millionths, so that sums stay exact. */
export function millionths(measure: number): bigint {
  return BigInt(Math.round(measure * 1_000_000));
}

/** `12500000n` → `12.5`. */
export function sayMillionths(size: bigint): string {
  return String(Number(size) / 1_000_000);
}
