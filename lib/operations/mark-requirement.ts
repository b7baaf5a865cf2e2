import { insertRow, updateRow } from "#db/queries/row.ts";
import {
  REQUIREMENT_STATES,
  type RequirementMark,
  type RequirementState,
} from "#lib/domain/facts/permit.ts";
import { REQUIREMENT_WORDS } from "#lib/domain/permit/state-words.ts";
import { ok, type Result } from "#lib/result.ts";
import type { Act, Refusal } from "./act.ts";
import { changeLine, find, refuse } from "./change.ts";
import { changedOnLine } from "./seen.ts";

interface Mark {
  readonly lineId: string;
  readonly requirementId: string;
  readonly state: RequirementState;
  readonly uploadId: string | null;
  readonly note: string;
  /** `seenOf(mark)` as the form was filled in (null: none); not given: whatever stands there now. */
  readonly seen?: string | undefined;
}

/** The office's word on one thing that the authority asks for, with the stored file that meets it. */
export function markRequirement(
  act: Act,
  { lineId, requirementId, state, uploadId, note, seen }: Mark,
): Result<null, Refusal> {
  const deal = { lineId, deed: "work-the-file", action: "mark-requirement" } as const;
  return changeLine(act, deal, (file) => {
    const requirement = find(file.authority?.requirements ?? [], requirementId, {
      path: "requirementId",
      what: "the requirement",
    });
    if (!requirement.ok) return requirement;
    if (!REQUIREMENT_STATES.includes(state))
      return refuse("bad-value", "state", "Select the status");
    if (uploadId !== null && !file.uploads.some(({ id }) => id === uploadId))
      return refuse("not-found", "uploadId", "the stored file");
    const old = file.requirementMarks.find((each) => each.requirementId === requirementId);
    const now = old ?? null;
    const changed = changedOnLine(file, seen, { now, about: [requirementId] });
    if (changed !== null) return changed;
    const mark: RequirementMark = {
      id: old?.id ?? act.newId(),
      requirementId,
      state,
      uploadId,
      note: note.trim(),
    };
    return ok({
      value: null,
      sentence: `“${requirement.value.title}”: ${REQUIREMENT_WORDS[state]}${mark.note === "" ? "." : `. ${mark.note}`}`,
      detail: { before: old ?? null, after: mark },
      write: (db) => {
        if (!updateRow(db, "requirementMarks", { lineId, row: mark }))
          insertRow(db, "requirementMarks", { lineId, row: mark });
      },
    });
  });
}
