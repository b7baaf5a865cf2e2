import type { Cft } from "../length/station.ts";
import { type Reconciliation, reconcile } from "./reconcile.ts";
import type { ReconcileInput } from "./reconcile-input.ts";

/** A stretch of the trunk that a run saw. */
interface Seen {
  readonly from: Cft;
  readonly to: Cft;
}

/** What is compared, as values alone: the same values are the same question. */
export interface ComparedOnce extends Omit<ReconcileInput, "looked"> {
  readonly seen: readonly Seen[];
}

/** Answers of the files that were asked about last; the one used last stands last. */
const answers = new Map<string, Reconciliation>();
const MOST_ANSWERS = 12;

/** Of a longer question the answer is not kept. */
const LONGEST_KEPT = 200_000;

/**
 * `reconcile`, which asks each question once: most of what is entered in a file (a payment, a letter,
 * an answer) changes nothing of what is compared, and the search takes longer than all the rest.
 */
export function reconcileOnce({ seen, ...given }: ComparedOnce): Reconciliation {
  const key = keyOf({ seen, ...given });
  const known = answers.get(key);
  answers.delete(key);
  const answer =
    known ??
    reconcile({
      ...given,
      looked: (station) => seen.some(({ from, to }) => from <= station && station <= to),
    });
  if (key.length <= LONGEST_KEPT) answers.set(key, answer);
  for (const [oldest] of answers) {
    if (answers.size <= MOST_ANSWERS) break;
    answers.delete(oldest);
  }
  return answer;
}

/** Everything that is read, written out: what is not in here must not be looked at. */
function keyOf({ recordNames, entryNames, fromUpperEnd, seen, ...rows }: ComparedOnce): string {
  const stretches = seen.map(({ from, to }) => [from, to]);
  const read = [rows, [...recordNames], [...entryNames], [...fromUpperEnd], stretches];
  return JSON.stringify(read, (_name, value: unknown) =>
    // JSON knows no infinity and would write it as the null that says "unknown".
    typeof value === "number" && !Number.isFinite(value) ? String(value) : value,
  );
}
