import { insertRow } from "#db/queries/row.ts";
import type { Narration } from "#lib/domain/facts/narration.ts";
import { wrongText } from "#lib/domain/narration/transcript/wrong-text.ts";
import { ok, type Result } from "#lib/result.ts";
import type { Act, Refusal } from "./act.ts";
import { changeLine, find, refuse } from "./change.ts";

interface NewNarration {
  readonly lineId: string;
  readonly runId: string;
  /** As pasted or as the file holds it. */
  readonly text: string;
}

/** Keeps what was said during a run, as it is; the log is drafted from it and it never changes. */
export function addNarration(
  act: Act,
  { lineId, runId, text }: NewNarration,
): Result<{ narrationId: string }, Refusal> {
  const deal = { lineId, deed: "record-the-field", action: "add-narration" } as const;
  return changeLine(act, deal, (file) => {
    const run = find(file.runs, runId, { path: "runId", what: "the run" });
    if (!run.ok) return run;
    const wrong = wrongText(text);
    if (wrong !== null)
      return refuse(wrong.missing ? "missing-value" : "bad-value", "text", wrong.words);
    const same = file.narrations.some(
      (each) => each.runId === runId && each.text.trim() === text.trim(),
    );
    if (same)
      return refuse("already-there", "text", "This transcript is already with this run; see below");
    const row: Narration = {
      id: act.newId(),
      runId,
      text,
      addedBy: act.actor.name,
      addedAt: act.now,
      decided: [],
    };
    return ok({
      value: { narrationId: row.id },
      sentence: `Added a transcript of ${run.value.name}.`,
      detail: { after: row },
      write: (db) => insertRow(db, "narrations", { lineId, row }),
    });
  });
}
