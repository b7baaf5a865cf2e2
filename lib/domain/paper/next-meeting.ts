import type { Meeting } from "../facts/meeting.ts";
import type { Day } from "../time/day.ts";

/** The meeting that is spoken of: the next one to come, else the last that was; null where there is none. */
export function nextMeeting(meetings: readonly Meeting[], today: Day): Meeting | null {
  const inOrder = meetings.toSorted((one, other) => one.on.localeCompare(other.on));
  return inOrder.find(({ on }) => on >= today) ?? inOrder.at(-1) ?? null;
}
