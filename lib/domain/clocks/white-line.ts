import { newestTicket } from "../calendar/happenings.ts";
import type { ClockRule } from "../facts/clock-rule.ts";
import type { LineFile } from "../facts/line-file.ts";
import type { LocateTicket, WhiteLineWay } from "../facts/permit.ts";
import type { Day } from "../time/day.ts";
import { formatDate, formatDay } from "../time/format-day.ts";

export const WHITE_LINE_WORDS: Record<WhiteLineWay, string> = {
  paint: "paint",
  flags: "flags",
  "paint-and-flags": "paint and flags",
  stakes: "stakes",
};

/** The rule by which the dig area is marked in white before 811 is called; null: none asks for it. */
export function whiteLineRule({ authority }: Pick<LineFile, "authority">): ClockRule | null {
  const rules = authority?.clockRules ?? [];
  return (
    rules.find(({ event, whiteLineFirst }) => event === "locate-called" && whiteLineFirst) ?? null
  );
}

interface WhiteLineBar {
  /** To complete "because". */
  readonly because: string;
  readonly citation: string;
}

/**
 * What is against a call to 811 where the authority asks for white-lining first: the ticket in force was
 * called in before it, or nobody noted it. Null: nothing, no ticket yet, or nothing asks for it.
 */
export function whiteLineBar(
  file: Pick<LineFile, "authority" | "locateTickets">,
): WhiteLineBar | null {
  const rule = whiteLineRule(file);
  const ticket = newestTicket(file);
  if (rule === null || ticket === null) return null;
  const { number, calledOn, whiteLinedOn } = ticket;
  if (whiteLinedOn !== null && whiteLinedOn <= calledOn) return null;
  const named = number === "" ? "the locate ticket" : `locate ticket ${number}`;
  const because =
    whiteLinedOn === null
      ? `no white-lining is on file for ${named}, and the dig area has to be marked in white before the call`
      : `${named} was called in on ${formatDate(calledOn)}, before the dig area was white-lined on ${formatDate(whiteLinedOn)}: call 811 again`;
  return { because, citation: rule.citation };
}

/** `White-lined Thursday, November 19, by Sami Orlov, with paint; photo on file`; null: not noted. */
export function whiteLined(ticket: LocateTicket, today: Day): string | null {
  const { whiteLinedOn, whiteLinedBy, whiteLinedHow, whiteLinePhotoId } = ticket;
  if (whiteLinedOn === null) return null;
  const by = whiteLinedBy === "" ? "" : `, by ${whiteLinedBy}`;
  const how = whiteLinedHow === null ? "" : `, with ${WHITE_LINE_WORDS[whiteLinedHow]}`;
  const photo = whiteLinePhotoId === null ? "no photo" : "photo on file";
  return `White-lined ${formatDay(whiteLinedOn, today)}${by}${how}; ${photo}`;
}
