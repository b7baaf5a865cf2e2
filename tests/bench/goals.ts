/** One measure of a run beside what was set as its goal. */
interface Goal {
  readonly measure: string;
  readonly found: number;
  readonly most: number;
  readonly unit: string;
  /** What it is held against. */
  readonly yardstick: string;
}

const goals: Goal[] = [];

/** Notes a measure for the table at the end. */
export function goal(measure: string, found: number, rest: Omit<Goal, "measure" | "found">): void {
  goals.push({ measure, found, ...rest });
}

/** Every goal that this run measured: what was found, what was aimed at, and whether it is met. */
export function printGoals(): void {
  console.log("");
  console.log("Goals (as measured in this run, on this machine, with whatever else it does)");
  for (const { measure, found, most, unit, yardstick } of goals) {
    const met = found <= most ? "met" : "NOT MET";
    const amounts = `${round(found)} of at most ${round(most)} ${unit}`;
    console.log(`  ${met.padEnd(8)} ${measure.padEnd(52)} ${amounts.padEnd(34)} ${yardstick}`);
  }
}

function round(amount: number): string {
  return amount >= 10 ? Math.round(amount).toLocaleString("en-US") : amount.toFixed(1);
}
