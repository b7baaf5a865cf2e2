import { insertRow } from "#db/queries/row.ts";
import type { Narration } from "#lib/domain/narration/narration.ts";
import { ok, type Result } from "#lib/result.ts";
import type { Act, Refusal } from "./act.ts";
import { changeLine, find, refuse } from "./change.ts";

/** Hours of talk; what is longer is no transcript. */
const MOST_LETTERS = 100_000;

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
    if (wrong !== null) return wrong;
    const same = file.narrations.some(
      (each) => each.runId === runId && each.text.trim() === text.trim(),
    );
    if (same)
      return refuse("already-there", "text", "These words are with this run already; see below");
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
      sentence: `Brought in what was said on ${run.value.name}.`,
      detail: { after: row },
      write: (db) => insertRow(db, "narrations", { lineId, row }),
    });
  });
}

function wrongText(text: string) {
  if (text.trim() === "")
    return refuse("missing-value", "text", "Paste what was said, or choose a file that holds it");
  if (text.length > MOST_LETTERS)
    return refuse(
      "bad-value",
      "text",
      `This is ${text.length.toLocaleString("en-US")} letters long; a transcript has at most 100,000. Bring it in in parts`,
    );
  // Marks of a picture, a video or a document that was opened as if it were text.
  if (/[^\P{Cc}\t\n\v\f\r]/u.test(text))
    return refuse(
      "bad-value",
      "text",
      "This is no text. Choose the transcript as .vtt, .srt or .txt, or paste it",
    );
  return null;
}
