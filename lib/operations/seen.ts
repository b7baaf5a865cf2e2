import { createHash } from "node:crypto";
import type { HistoryEntry } from "#lib/domain/facts/history-entry.ts";
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
