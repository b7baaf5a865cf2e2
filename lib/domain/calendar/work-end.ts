import type { LineFile } from "../file/line-file.ts";
import { permitStateOf, stepsOf } from "../permit/steps.ts";
import type { Day } from "./day.ts";

/**
 * The last day of work: as the office entered it last; else the day of the final, once the permit is
 * final. Null while nobody said.
 */
export function endOfWork(file: Pick<LineFile, "events" | "permits" | "permitSteps">): Day | null {
  const entered = file.events.findLast(({ event }) => event === "work-ends");
  if (entered !== undefined) return entered.on;
  const finals = file.permits
    .filter((permit) => permitStateOf(file, permit) === "final")
    .flatMap(
      (permit) => stepsOf(file, permit).findLast(({ state }) => state === "final")?.on ?? [],
    );
  return finals.toSorted().at(-1) ?? null;
}
