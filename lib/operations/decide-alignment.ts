import { insertRow, removeRow } from "#db/queries/row.ts";
import type { AlignmentDecision } from "#lib/domain/facts/alignment-decision.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import type { Cft } from "#lib/domain/length/station.ts";
import { fitWords } from "#lib/domain/reconcile/alignment-sentence.ts";
import { isScaleInBounds, isShiftInBounds } from "#lib/domain/reconcile/fit.ts";
import { recordName } from "#lib/domain/tiein/standing-words-en.ts";
import { ok, type Result } from "#lib/result.ts";
import type { Act, Refusal } from "./act.ts";
import { changeLine, find, refuse } from "./change.ts";
import { changedSince } from "./seen.ts";

interface AlignmentWord {
  readonly lineId: string;
  /** Null: for all records together. */
  readonly recordId: string | null;
  readonly shift: Cft;
  /** Parts per million on top of 1. */
  readonly scale: number;
  readonly state: AlignmentDecision["state"];
  readonly reason: string;
  /** `seenOf(alignmentsSeen(file))` as the form was filled in; not given: whatever is decided now. */
  readonly seen?: string | undefined;
}

/** What was decided of how the records lie when the form was made. */
export function alignmentsSeen({ alignments }: Pick<LineFile, "alignments">): string[] {
  return alignments.map(({ id }) => id);
}

/**
 * A person's word on how the records lie on the camera's axis: the shift and scale to use, or one not
 * to propose again. One is accepted for a record, or for all together, at most: a new one replaces it,
 * and the history keeps both. Refuses without a reason, and lengths beyond 100 ft or 20 %, on top of reading
 * the record in meters or from the other end.
 */
export function decideAlignment(
  act: Act,
  { lineId, seen, ...word }: AlignmentWord,
): Result<{ alignmentId: string }, Refusal> {
  const deal = { lineId, deed: "work-the-file", action: "decide-alignment" } as const;
  return changeLine(act, deal, (file) => {
    const last = file.history.findLast(({ action }) =>
      /^(decide|withdraw)-alignment$/.test(action),
    );
    const changed = changedSince(seen, { now: alignmentsSeen(file), last });
    if (changed !== null) return changed;
    const wrong = wrongWord(file, word);
    if (wrong !== null) return wrong;
    const replaced = file.alignments.filter((each) => isReplaced(each, word));
    const decision: AlignmentDecision = {
      ...word,
      id: act.newId(),
      reason: word.reason.trim(),
      decidedBy: act.actor.name,
      decidedOn: act.today,
    };
    const verb = word.state === "accepted" ? "Accepted" : "Refused";
    return ok({
      value: { alignmentId: decision.id },
      sentence: `${verb} that ${alignmentWords(file, word)}. Reason: ${decision.reason}`,
      detail: { before: replaced, after: decision },
      write: (db) => {
        for (const { id } of replaced) removeRow(db, "alignments", { lineId, id });
        insertRow(db, "alignments", { lineId, row: decision });
      },
    });
  });
}

/** Takes a decision on shift and scale back: the search proposes again. Refuses without a reason. */
export function withdrawAlignment(
  act: Act,
  { lineId, alignmentId, reason }: { lineId: string; alignmentId: string; reason: string },
): Result<null, Refusal> {
  const deal = { lineId, deed: "work-the-file", action: "withdraw-alignment" } as const;
  return changeLine(act, deal, (file) => {
    const decision = find(file.alignments, alignmentId, {
      path: "alignmentId",
      what: "the decision",
    });
    if (!decision.ok) return decision;
    if (reason.trim() === "") return refuse("missing-value", "reason", "Say why");
    return ok({
      value: null,
      sentence: `Undid the decision that ${alignmentWords(file, decision.value)}. Reason: ${reason.trim()}`,
      detail: { before: decision.value, reason },
      write: (db) => void removeRow(db, "alignments", { lineId, id: alignmentId }),
    });
  });
}

type Word = Omit<AlignmentWord, "lineId">;

function wrongWord(file: LineFile, { recordId, shift, scale, state, reason }: Word) {
  if (recordId !== null && !file.records.some(({ id }) => id === recordId))
    return refuse("not-found", "recordId", "the record");
  if (!isShiftInBounds({ shift, scale }))
    return refuse("bad-value", "shift", "Enter feet, up to 100 either way");
  if (!isScaleInBounds(scale))
    return refuse("bad-value", "scale", "Enter a percentage, up to 20 either way");
  if (state === "refused" && shift === 0 && scale === 0)
    return refuse(
      "bad-value",
      "state",
      "The record as recorded can’t be rejected; accept another shift",
    );
  return reason.trim() === "" ? refuse("missing-value", "reason", "Say why") : null;
}

/** The one accepted before, and what was said of the very same shift and scale. */
function isReplaced(old: AlignmentDecision, word: Word): boolean {
  if (old.recordId !== word.recordId) return false;
  const same = old.shift === word.shift && old.scale === word.scale;
  return same || (old.state === "accepted" && word.state === "accepted");
}

/** `Card 1184 reads 2.4 ft longer throughout, probably a different zero point`. */
function alignmentWords(
  file: LineFile,
  { recordId, shift, scale }: Pick<Word, "recordId" | "shift" | "scale">,
): string {
  const record = file.records.find(({ id }) => id === recordId);
  const many = record === undefined && file.records.length > 1;
  const all = many ? "the records together" : "the card";
  return `${record ? recordName(record) : all} ${fitWords({ shift, scale }, many)}`;
}
