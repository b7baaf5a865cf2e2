import type { LineFile } from "../facts/line-file.ts";
import { permitStateOf, stepsOf } from "../permit/steps.ts";
import type { Day } from "../time/day.ts";

/**
 * The last day of work as the office entered it: with the event that the work ends, or as the last
 * day of the event that it begins; of the two the later one. Null while nobody said.
 */
export function enteredEnd({ events }: Pick<LineFile, "events">): Day | null {
  const ends = events.findLast(({ event }) => event === "work-ends")?.on ?? null;
  const last = events.findLast(({ event }) => event === "work-begins")?.lastOn ?? null;
  return (
    [ends, last]
      .flatMap((day) => day ?? [])
      .toSorted()
      .at(-1) ?? null
  );
}

/**
 * The last day of work: as the office entered it; else the day of the final, once the permit is
 * final. Null while nobody said.
 */
export function endOfWork(file: Pick<LineFile, "events" | "permits" | "permitSteps">): Day | null {
  const entered = enteredEnd(file);
  if (entered !== null) return entered;
  const finals = file.permits
    .filter((permit) => permitStateOf(file, permit) === "final")
    .flatMap(
      (permit) => stepsOf(file, permit).findLast(({ state }) => state === "final")?.on ?? [],
    );
  return finals.toSorted().at(-1) ?? null;
}
