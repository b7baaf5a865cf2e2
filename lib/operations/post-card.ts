import { countSave } from "#db/queries/revision.ts";
import { updateRow } from "#db/queries/row.ts";
import type { Permit } from "#lib/domain/facts/permit.ts";
import { permitName } from "#lib/domain/permit/say.ts";
import type { Day } from "#lib/domain/time/day.ts";
import { formatDate } from "#lib/domain/time/format-day.ts";
import { ok, type Result } from "#lib/result.ts";
import type { Act, Refusal } from "./act.ts";
import { changeLine, find, refuse } from "./change.ts";
import { pastDay } from "./past-day.ts";
import { changedOnLine, fieldsSeen } from "./seen.ts";

/** What somebody says of a permit's card: posted when, by whom, where on site. */
export interface PostedCard {
  /** Null: not posted. */
  readonly postedOn: Day | null;
  readonly postedBy: string;
  readonly postedPlace: string;
}

/** What is said of a permit's card, as the form was filled in from it. */
export function cardSeen(permit: Permit) {
  return fieldsSeen(permit, ["postedOn", "postedBy", "postedPlace"]);
}

/** Takes down where a permit's card hangs since when, or that it does not. */
export function postCard(
  act: Act,
  {
    lineId,
    permitId,
    seen,
    ...card
  }: PostedCard & {
    readonly lineId: string;
    readonly permitId: string;
    /** `seenOf(cardSeen(permit))` as the form was filled in; not given: whatever stands there now. */
    readonly seen?: string | undefined;
  },
): Result<null, Refusal> {
  const deal = { lineId, deed: "work-the-file", action: "post-card" } as const;
  return changeLine(act, deal, (file) => {
    const permit = find(file.permits, permitId, { path: "permitId", what: "the permit" });
    if (!permit.ok) return permit;
    const before = permit.value;
    const changed = changedOnLine(file, seen, { now: cardSeen(before), about: [permitId] });
    if (changed !== null) return changed;
    const after = withCard(act, before, card);
    if (!after.ok) return after;
    const said = cardSentence(before, after.value);
    return ok({
      value: null,
      sentence: said === "" ? null : `${permitName(before)}: ${said}.`,
      detail: { before, after: after.value },
      write: (db) => {
        updateRow(db, "permits", { lineId, row: after.value });
        countSave(db, { lineId, table: "permits", by: act.actor.name, at: act.now });
      },
    });
  });
}

/** The permit with its card as it was said. Refuses a day that has not come, and a name or place without a day. */
export function withCard(
  act: Act,
  permit: Permit,
  { postedOn, postedBy, postedPlace }: PostedCard,
): Result<Permit, Refusal> {
  const card = { postedOn, postedBy: postedBy.trim(), postedPlace: postedPlace.trim() };
  if (postedOn === null && card.postedBy + card.postedPlace !== "")
    return refuse("missing-value", "postedOn", "Enter the date on which the card was posted");
  const wrong = postedOn === null ? null : pastDay(act, { day: postedOn, path: "postedOn" });
  return wrong ?? ok({ ...permit, ...card });
}

/** What changed of the card, for the history; empty where nothing did. */
export function cardSentence(before: Permit, after: Permit): string {
  const { postedOn, postedBy, postedPlace } = after;
  const same =
    before.postedOn === postedOn &&
    before.postedBy === postedBy &&
    before.postedPlace === postedPlace;
  if (same) return "";
  if (postedOn === null) return "card not posted";
  const by = postedBy === "" ? "" : ` by ${postedBy}`;
  return `card posted ${formatDate(postedOn)}${by}${postedPlace === "" ? "" : ` (${postedPlace})`}`;
}
