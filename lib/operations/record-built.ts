import { insertRow, updateRow } from "#db/queries/row.ts";
import type { BuiltWork } from "#lib/domain/facts/built.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import { reportOn } from "#lib/domain/report/report-on.ts";
import { scopeInForce } from "#lib/domain/sharing/scope-in-force.ts";
import { deedsOf, deedsOfWork } from "#lib/domain/split/work-deeds.ts";
import type { Day } from "#lib/domain/time/day.ts";
import { formatDate } from "#lib/domain/time/format-day.ts";
import { ok, type Result } from "#lib/result.ts";
import type { Act, Refusal } from "./act.ts";
import { changeLine, refuse } from "./change.ts";
import { refuseHeld } from "./held.ts";
import { pastDay } from "./past-day.ts";
import { changedOnLine } from "./seen.ts";

interface BuiltWord {
  readonly lineId: string;
  /** The scope item that was carried out; null: the whole work, as on an as-built drawing. */
  readonly itemId: string | null;
  readonly on: Day;
  /** Who says so. */
  readonly by: string;
  readonly words: string;
  readonly uploadId: string | null;
  /** `seenOf(built)` as the form was filled in (null: nothing); not given: whatever stands there now. */
  readonly seen?: string | undefined;
}

/**
 * Takes down what was dug, lined, burst or capped, on a named person’s word or by an as-built. The
 * same piece of work taken down again is corrected. Refuses a day to come, nobody’s word, the whole
 * work without words or a paper, work that is not in force, and what a hold stops.
 */
export function recordBuilt(
  act: Act,
  { lineId, seen, ...word }: BuiltWord,
): Result<{ builtId: string }, Refusal> {
  const deal = { lineId, deed: "record-the-field", action: "record-built" } as const;
  return changeLine(act, deal, (file) => {
    const before = file.built.find(({ itemId }) => itemId === word.itemId) ?? null;
    const about = before === null ? [] : [before.id];
    const changed = changedOnLine(file, seen, { now: before, about });
    if (changed !== null) return changed;
    const wrong = wrongWord(act, file, word) ?? heldWork(act, file, word.itemId);
    if (wrong !== null) return wrong;
    const built: BuiltWork = {
      id: before?.id ?? act.newId(),
      itemId: word.itemId,
      on: word.on,
      by: word.by.trim(),
      words: word.words.trim(),
      uploadId: word.uploadId,
    };
    const title = file.scope.find(({ id }) => id === word.itemId)?.title ?? "The whole job";
    const said = built.words === "" ? "" : ` ${built.words}`;
    return ok({
      value: { builtId: built.id },
      sentence: `“${title}” was done on ${formatDate(built.on)}, per ${built.by}.${said}`,
      detail: { before, after: built },
      write: (db) => {
        if (!updateRow(db, "built", { lineId, row: built }))
          insertRow(db, "built", { lineId, row: built });
      },
    });
  });
}

function wrongWord(
  act: Act,
  file: LineFile,
  { itemId, on, by, words, uploadId }: Omit<BuiltWord, "lineId">,
) {
  if (itemId !== null && !scopeInForce(file).some(({ id }) => id === itemId))
    return refuse("not-found", "itemId", "this work item");
  if (by.trim() === "") return refuse("missing-value", "by", "Enter who reported it");
  if (uploadId !== null && !file.uploads.some(({ id }) => id === uploadId))
    return refuse("not-found", "uploadId", "the as-built");
  if (itemId === null && uploadId === null && words.trim() === "")
    return refuse("missing-value", "words", "Say what was built, or add the as-built");
  return pastDay(act, { day: on, path: "on" });
}

/** What was done against a hold is first settled or waived, with a name and a reason. */
function heldWork(act: Act, file: LineFile, itemId: string | null) {
  const report = reportOn(file, act.today);
  const item = file.scope.find(({ id }) => id === itemId);
  const site = { options: file.options, tieIns: report.tieIns };
  const deeds = item === undefined ? deedsOfWork(file, report.tieIns) : deedsOf(item, site);
  return refuseHeld(report, deeds, "itemId");
}
