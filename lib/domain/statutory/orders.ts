import type { LineFile } from "../facts/line-file.ts";
import type { Contract } from "../facts/statutory-paper.ts";
import type { Cents } from "../money/cents.ts";
import type { Day } from "../time/day.ts";

/** Somebody who ordered work for a property. */
export interface Order {
  readonly partyId: string;
  readonly propertyId: string;
  /** The day on which it was signed; null while nobody entered it. */
  readonly on: Day | null;
  readonly place: Contract["place"];
  /** Null while nobody entered it. */
  readonly amount: Cents | null;
}

type Ordered = Pick<LineFile, "contracts" | "consents">;

/**
 * Everybody who ordered work, each once for each property: by a contract on file, else by a consent
 * to pay that stands. Of several contracts the first day counts, and one without a day leaves it open.
 */
export function ordersOf({ contracts, consents }: Ordered): Order[] {
  const signed = groupedBy(contracts).map((group): Order => {
    const [first] = group;
    const days = group.map(({ signedOn }) => signedOn);
    const amounts = group.map(({ amount }) => amount);
    const places = group.map(({ place }) => place);
    return {
      partyId: first.partyId,
      propertyId: first.propertyId,
      on: days.includes(null) ? null : (days.toSorted()[0] ?? null),
      place: places.find((place) => place !== "office") ?? "office",
      amount: amounts.reduce<Cents | null>(
        (sum, each) => (sum === null || each === null ? null : sum + each),
        0,
      ),
    };
  });
  const agreed = groupedBy(consents.filter(({ kind }) => kind === "pay")).flatMap(
    (group): Order[] => {
      const last = group.at(-1);
      const given = group.find(({ state }) => state === "given");
      if (last?.state !== "given" || given === undefined) return [];
      const { partyId, propertyId } = last;
      if (signed.some((one) => one.partyId === partyId && one.propertyId === propertyId)) return [];
      return [
        { partyId, propertyId, on: given.stateOn, place: "unknown", amount: last.amount ?? null },
      ];
    },
  );
  return [...signed, ...agreed];
}

interface Placed {
  readonly partyId: string;
  readonly propertyId: string;
}

function groupedBy<T extends Placed>(rows: readonly T[]): [T, ...T[]][] {
  const groups = new Map<string, [T, ...T[]]>();
  for (const row of rows) {
    const key = JSON.stringify([row.partyId, row.propertyId]);
    const group = groups.get(key);
    if (group === undefined) groups.set(key, [row]);
    else group.push(row);
  }
  return [...groups.values()];
}
