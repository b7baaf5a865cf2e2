/** How one piece of cost is divided: members by their place in the ground's list of people. */
export interface Allotment {
  readonly members: readonly Member[];
  readonly sum: bigint;
  /** The sum as a person writes it, given the cost in words: `$6,000.00 ÷ 3`. */
  readonly words: (cost: string, weight: bigint) => string;
}

export interface Member {
  readonly index: number;
  readonly weight: bigint;
}

/** The same for each; `note` follows the number: ` ÷ 2 behind T4`. */
export function equalAllotment(indices: readonly number[], note = ""): Allotment {
  const count = indices.length;
  const divided = count === 1 ? `, alone${note}` : ` ÷ ${count}${note}`;
  return {
    members: indices.map((index) => ({ index, weight: 1n })),
    sum: BigInt(count),
    words: (cost) => `${cost}${divided}`,
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
    words: (cost, weight) =>
      weight === sum ? `${cost}, all ${noun}` : `${cost} × ${said(weight)} ÷ ${said(sum)} ${noun}`,
  };
}

/** All of it for one. */
export function soleAllotment(index: number, note: string): Allotment {
  return {
    members: [{ index, weight: 1n }],
    sum: 1n,
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
