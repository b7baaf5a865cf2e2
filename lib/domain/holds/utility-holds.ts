import { newestTicket } from "../calendar/happenings.ts";
import type { RaisedHold } from "../facts/hold.ts";
import type { LineFile } from "../facts/line-file.ts";
import type { UtilityAnswer, UtilityResponse } from "../facts/utility-response.ts";
import { permitStateOf } from "../permit/steps.ts";
import type { Day } from "../time/day.ts";
import { formatDate } from "../time/format-day.ts";

type TicketFile = Pick<
  LineFile,
  "line" | "locateTickets" | "utilityResponses" | "permits" | "permitSteps"
>;

/** Why a utility's answer lets nobody dig; null: it does. */
const OPEN_WORDS: Record<UtilityAnswer, string | null> = {
  awaited: "has not responded",
  marked: null,
  clear: null,
  "marked-in-part": "marked only part of the dig",
  "wants-time": "asked for more time",
  "wants-to-meet": "wants to meet on site first",
  "no-access": "could not get in to mark",
};

/** Why nobody may dig on this response on a day, after the utility's name; null: nothing is against it. */
export function whyUtilityOpen(response: UtilityResponse, on: Day): string | null {
  const { answer, goodUntil } = response;
  const why = OPEN_WORDS[answer];
  if (why !== null) return why;
  return goodUntil !== null && goodUntil < on ? `marks expired ${formatDate(goodUntil)}` : null;
}

/** The responses to the ticket that was called last: it stands for the older ones. */
export function responsesInForce(
  file: Pick<LineFile, "locateTickets" | "utilityResponses">,
): UtilityResponse[] {
  const ticket = newestTicket(file);
  return file.utilityResponses.filter(({ ticketId }) => ticketId === ticket?.id);
}

/**
 * Utilities on the newest ticket that have not marked or cleared the dig, or whose marks are too old:
 * nobody digs or bursts. Ends with the work: a file that is closed or final holds nothing.
 */
export function utilityCauses(file: TicketFile, { today }: { readonly today: Day }): RaisedHold[] {
  if (file.line.closedOn !== null || isFinal(file)) return [];
  return responsesInForce(file).flatMap((response) => {
    const why = whyUtilityOpen(response, today);
    if (why === null) return [];
    const name = response.utility.trim() || "A utility";
    return [
      {
        cause: "utility-open" as const,
        subjectId: response.id,
        subjectLabel: name,
        stretch: null,
        sentence: `${name} ${why}: its lines in the ground are not marked.`,
        closes: "Its response, recorded under the locate ticket",
      },
    ];
  });
}

function isFinal(file: Pick<LineFile, "permits" | "permitSteps">): boolean {
  return (
    file.permits.length > 0 &&
    file.permits.every((permit) => permitStateOf(file, permit) === "final")
  );
}
