import type { LineFile } from "#lib/domain/facts/line-file.ts";
import type { Day } from "#lib/domain/time/day.ts";

/** The last day on which anything in the file happened. Days that lie ahead (replies, bookings) do not count. */
export function latestDay(file: LineFile): Day {
  const days: (Day | null)[] = [
    file.line.openedOn,
    file.line.closedOn,
    ...file.tieIns.map(({ settledOn }) => settledOn),
    ...file.records.map(({ obtainedOn }) => obtainedOn),
    ...file.entries.map(({ explainedOn }) => explainedOn),
    ...file.runs.map(({ ranOn }) => ranOn),
    ...file.pairings.map(({ decidedOn }) => decidedOn),
    ...file.tests.map(({ performedOn }) => performedOn),
    ...file.waivers.map(({ on }) => on),
    ...file.splits.map(({ chosenOn }) => chosenOn),
    ...file.notices.map(({ createdOn }) => createdOn),
    ...file.deliveries.flatMap(({ sentOn, outcomeOn }) => [sentOn, outcomeOn]),
    ...file.replies.flatMap(({ receivedOn, dealtOn }) => [receivedOn, dealtOn]),
    ...file.householdCalls.map(({ calledOn }) => calledOn),
    ...file.rollCall.map(({ at }) => at.slice(0, 10)),
    ...file.consents.map(({ stateOn }) => stateOn),
    ...file.permitSteps.map(({ on }) => on),
    ...file.formEntries.map(({ on }) => on),
    ...file.locateTickets.flatMap(({ calledOn, whiteLinedOn }) => [calledOn, whiteLinedOn]),
    ...file.permits.map(({ postedOn }) => postedOn),
    ...file.history.map(({ at }) => at.slice(0, 10)),
  ];
  return days.reduce<Day>(
    (last, day) => (day !== null && day > last ? day : last),
    file.line.openedOn,
  );
}
