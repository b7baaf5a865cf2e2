import type { Db } from "#db/open.ts";
import { insertHistory } from "#db/queries/history.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import { type Deed, mayDo } from "#lib/domain/facts/user.ts";
import { formatDate } from "#lib/domain/time/format-day.ts";
import { err, ok, type Result } from "#lib/result.ts";
import type { Act, Refusal, RefusalReason } from "./act.ts";
import { standingFile } from "./line-report.ts";

/** What a decision came to: what to write, and how the history tells it. */
export interface Change<T> {
  readonly value: T;
  /** One sentence for people; null where nothing changes, so that nothing is told. */
  readonly sentence: string | null;
  /** What changed, for the record. */
  readonly detail: unknown;
  readonly write: (db: Db) => void;
}

export function refuse(
  reason: RefusalReason,
  path = "",
  detail = "",
): { readonly ok: false; readonly error: Refusal } {
  return { ok: false, error: { reason, path, detail } };
}

interface Deal {
  readonly lineId: string;
  readonly deed: Deed;
  /** Name of the operation, as `decide-pairing`. */
  readonly action: string;
  /** May be done on a closed file too: opening it again, printing, and what still comes in. */
  readonly evenClosed?: true;
}

/** Why a closed file takes no change; null where it is open. */
export function closedWords({ line }: Pick<LineFile, "line">): string | null {
  return line.closedOn === null
    ? null
    : `The file was closed on ${formatDate(line.closedOn)}; open it again to change it`;
}

/**
 * One operation on a line in one transaction: may they, is the line there, decide on the file as it
 * stands, then write it together with its history entry, or nothing at all. A closed file is refused.
 */
export function changeLine<T>(
  act: Act,
  { lineId, deed, action, evenClosed }: Deal,
  decide: (file: LineFile, db: Db) => Result<Change<T>, Refusal>,
): Result<T, Refusal> {
  if (!mayDo(act.actor.role, deed)) return refuse("not-allowed");
  return act.db.transaction(
    (db) => {
      const file = standingFile(act.db, db, lineId);
      if (file === null) return refuse("not-found", "lineId", "the line");
      const closed = closedWords(file);
      if (closed !== null && !evenClosed) return refuse("not-in-this-state", "", closed);
      const decided = decide(file, db);
      if (!decided.ok) return decided;
      carryOut({ ...act, db }, { lineId, action }, decided.value);
      return ok(decided.value.value);
    },
    { behavior: "immediate" },
  );
}

/** One operation on the office itself, in one transaction with its history entry. */
export function changeOffice<T>(
  act: Act,
  { deed, action }: Omit<Deal, "lineId">,
  decide: (db: Db) => Result<Change<T>, Refusal>,
): Result<T, Refusal> {
  if (!mayDo(act.actor.role, deed)) return refuse("not-allowed");
  return act.db.transaction(
    (db) => {
      const decided = decide(db);
      if (!decided.ok) return decided;
      carryOut({ ...act, db }, { lineId: null, action }, decided.value);
      return ok(decided.value.value);
    },
    { behavior: "immediate" },
  );
}

function carryOut<T>(
  act: Act,
  { lineId, action }: { lineId: string | null; action: string },
  { sentence, detail, write }: Change<T>,
): void {
  if (sentence === null) return;
  write(act.db);
  tell(act, { lineId, action, sentence, detail });
}

/** Adds an entry to the history, in the name of who acts. */
export function tell(
  act: Act,
  entry: { lineId: string | null; action: string; sentence: string; detail: unknown },
): void {
  insertHistory(act.db, entry.lineId, {
    id: act.newId(),
    at: act.now,
    by: act.actor.name,
    action: entry.action,
    sentence: entry.sentence,
    detail: JSON.stringify(entry.detail ?? {}),
  });
}

/** The one with this id, or a refusal that names what it would have been. */
export function find<T extends { readonly id: string }>(
  rows: readonly T[],
  id: string,
  { path, what }: { path: string; what: string },
): Result<T, Refusal> {
  const row = rows.find((each) => each.id === id);
  return row ? ok(row) : err({ reason: "not-found", path, detail: what });
}
