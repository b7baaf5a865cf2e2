import type { LineFile } from "../facts/line-file.ts";
import type { Permit, PermitState } from "../facts/permit.ts";
import { permitStateOf } from "../permit/steps.ts";
import { type ScopeFile, workInForce } from "../sharing/scope-in-force.ts";
import type { Day } from "../time/day.ts";
import { formatDay } from "../time/format-day.ts";

type CardFile = ScopeFile & Pick<LineFile, "permitSteps">;

/** From the day on which it is issued until the trench is closed, the card hangs on site. */
const ON_SITE: readonly PermitState[] = [
  "issued",
  "working",
  "inspection-requested",
  "inspection-failed",
  "passed-may-backfill",
  "extension-asked",
  "extended",
];

/** The permit is issued, work is planned under it, and nobody said that its card is posted. */
export function isCardMissing(file: CardFile, permit: Permit): boolean {
  if (permit.postedOn !== null || !ON_SITE.includes(permitStateOf(file, permit))) return false;
  return workInForce(file).length > 0;
}

/** `Card posted Monday, November 23, by Sami Orlov: front gate`; null where nothing is to be said of it. */
export function cardWords(file: CardFile, permit: Permit, today: Day): string | null {
  if (permit.postedOn === null)
    return isCardMissing(file, permit) ? "Card not posted: no posting is on file" : null;
  const by = permit.postedBy === "" ? "" : `, by ${permit.postedBy}`;
  const place = permit.postedPlace === "" ? "" : `: ${permit.postedPlace}`;
  return `Card posted ${formatDay(permit.postedOn, today)}${by}${place}`;
}
