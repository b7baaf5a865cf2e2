import { createHash } from "node:crypto";
import type { HistoryEntry } from "#lib/domain/facts/history-entry.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import { refuse } from "./change.ts";

/**
 * What a form was filled in from, as a short text that it sends back with what was typed: two states
 * that differ have two of them.
 */
export function seenOf(state: unknown): string {
  return createHash("sha256").update(JSON.stringify(state)).digest("hex").slice(0, 24);
}

/**
 * A refusal where somebody changed what a form was filled in from; null where nobody did, or where the
 * caller saw nothing (`undefined`: a command, a test). `last` says who it was.
 */
export function changedSince(
  seen: string | undefined,
  { now, last }: { now: unknown; last: Pick<HistoryEntry, "by"> | null | undefined },
) {
  if (seen === undefined || seen === seenOf(now)) return null;
  return refuse("changed-meanwhile", "", last?.by ?? "");
}

/**
 * The same on a line. Who it was is told by the history: the last whose entry names the thing (its id,
 * or the name of its field).
 */
export function changedOnLine(
  { history }: Pick<LineFile, "history">,
  seen: string | undefined,
  { now, about }: { readonly now: unknown; readonly about: readonly string[] },
) {
  const names = about.map((each) => JSON.stringify(each));
  const last = history.findLast(({ detail }) => names.some((each) => detail.includes(each)));
  return changedSince(seen, { now, last });
}

/** Some fields of a row, in the order named: what a form that shows these was filled in from. */
export function fieldsSeen<T extends object, K extends keyof T>(
  row: T,
  fields: readonly K[],
): Pick<T, K> {
  return Object.fromEntries(fields.map((field) => [field, row[field]])) as Pick<T, K>;
}
