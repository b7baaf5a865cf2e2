import { insertRow, updateRow } from "#db/queries/row.ts";
import {
  DRAWING_STATES,
  type DrawingMark,
  type DrawingState,
} from "#lib/domain/facts/application.ts";
import { drawingItemsOf } from "#lib/domain/packet/drawing-checklist.ts";
import { ok, type Result } from "#lib/result.ts";
import type { Act, Refusal } from "./act.ts";
import { changeLine, find, refuse } from "./change.ts";
import { changedSince } from "./seen.ts";

interface DrawingWord {
  readonly lineId: string;
  readonly itemId: string;
  readonly state: DrawingState;
  readonly note: string;
  /** `seenOf(mark)` as the form was filled in (null: none); not given: whatever stands there now. */
  readonly seen?: string | undefined;
}

const WORDS: Readonly<Record<DrawingState, string>> = {
  shown: "shown",
  "not-shown": "not shown",
  "does-not-apply": "not applicable",
};

/**
 * A person's word, by name and day, that the drawing shows one item of the authority's checklist, or that it
 * does not apply. Refuses one without saying where it is shown, or why it does not apply.
 */
export function markDrawing(
  act: Act,
  { lineId, itemId, state, note, seen }: DrawingWord,
): Result<null, Refusal> {
  const deal = { lineId, deed: "work-the-file", action: "mark-drawing" } as const;
  return changeLine(act, deal, (file) => {
    const item = find(drawingItemsOf(file.authority), itemId, {
      path: "itemId",
      what: "the item of the drawing",
    });
    if (!item.ok) return item;
    const old = file.drawingMarks.findLast((each) => each.itemId === itemId);
    const changed = changedSince(seen, { now: old ?? null, last: old });
    if (changed !== null) return changed;
    if (!DRAWING_STATES.includes(state))
      return refuse("bad-value", "state", "Select whether it is shown");
    const unsaid = unsaidIn(state, note);
    if (unsaid !== null) return unsaid;
    const mark: DrawingMark = {
      id: old?.id ?? act.newId(),
      itemId,
      state,
      by: act.actor.name,
      on: act.today,
      note: note.trim(),
    };
    return ok({
      value: null,
      sentence: `Drawing, “${item.value.title}”: ${WORDS[state]}${mark.note === "" ? "." : `. ${mark.note}`}`,
      detail: { before: old ?? null, after: mark },
      write: (db) => {
        if (!updateRow(db, "drawingMarks", { lineId, row: mark }))
          insertRow(db, "drawingMarks", { lineId, row: mark });
      },
    });
  });
}

function unsaidIn(state: DrawingState, note: string) {
  if (state === "not-shown" || note.trim() !== "") return null;
  const words = state === "shown" ? "Enter where it is shown" : "Enter why it does not apply";
  return refuse("bad-value", "note", words);
}
