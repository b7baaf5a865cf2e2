import type { ResponsibilityRule } from "../facts/authority.ts";
import { formatDate } from "../time/format-day.ts";

/** Where a rule is written, else its title; without its day. */
export function sourceOf({
  citation,
  title,
}: Pick<ResponsibilityRule, "citation" | "title">): string {
  return citation || title;
}

/** `QMC 13.08.010, as of October 1, 2026`: a rule's source with the day on which it was looked up. */
export function citationOf(rule: Pick<ResponsibilityRule, "citation" | "title" | "asOf">): string {
  return `${sourceOf(rule)}, as of ${formatDate(rule.asOf)}`;
}
