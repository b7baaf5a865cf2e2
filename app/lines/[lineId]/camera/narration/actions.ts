"use server";

import { revalidatePath } from "next/cache";
import { type FormState, refused } from "#app/form.ts";
import { sentenceOf, stateOf } from "#app/messages.ts";
import { requireAct } from "#app/session.ts";
import { decodeText } from "#lib/exchange/table-file/decode-text.ts";
import { addNarration } from "#lib/operations/add-narration.ts";
import { type Accepted, decideDrafts } from "#lib/operations/decide-drafts.ts";
import { measureFromMain } from "#lib/operations/measure-from-main.ts";
import { noteEntry } from "#lib/operations/note-entry.ts";
import { takeBackDraft } from "#lib/operations/take-back-draft.ts";
import { err, ok, type Result } from "#lib/result.ts";
import { appendRows } from "../../append-rows.ts";

/** What was said, as pasted, or as a file holds it where nothing was pasted. */
export async function addNarrationAction(
  lineId: string,
  runId: string,
  _state: FormState,
  form: FormData,
): Promise<FormState> {
  const act = await requireAct("record-the-field");
  const text = await textIn(form);
  if (text === null)
    return refused(
      "Not saved: this is not a text file. Choose the transcript as .vtt, .srt or .txt.",
      form,
      "file",
    );
  const added = addNarration(act, { lineId, runId, text });
  if (added.ok) revalidatePath(`/lines/${lineId}`, "layout");
  return stateOf(added, { words: "Transcript saved. Review the draft log.", form });
}

/** Forms send every line end in two letters. */
async function textIn(form: FormData): Promise<string | null> {
  const pasted = form.get("text");
  if (typeof pasted === "string" && pasted.trim() !== "") return pasted.replaceAll("\r\n", "\n");
  const file = form.get("file");
  if (!(file instanceof File) || file.size === 0) return "";
  return decodeText(new Uint8Array(await file.arrayBuffer()))?.text ?? null;
}

/** Why drafted rows were not decided on, with the row and the cell that it is about. */
interface DecideRefusal {
  readonly message: string;
  readonly key: string;
  readonly field: string;
}

/** Takes drafted rows into the log as they were mended, and drops others. */
export async function decideDraftsAction(
  lineId: string,
  narrationId: string,
  decisions: { accept: readonly Accepted[]; drop: readonly string[] },
): Promise<Result<{ accepted: number; dropped: number }, DecideRefusal>> {
  const act = await requireAct("record-the-field");
  const decided = decideDrafts(act, { lineId, narrationId, ...decisions });
  if (!decided.ok) {
    const [key = "", field = ""] = decided.error.path.split(".");
    return err({ message: sentenceOf(decided.error), key, field });
  }
  revalidatePath(`/lines/${lineId}`, "layout");
  return ok(decided.value);
}

/** Opens a decided row again. */
export async function takeBackDraftAction(
  lineId: string,
  narrationId: string,
  key: string,
): Promise<Result<null, string>> {
  const act = await requireAct("record-the-field");
  const taken = takeBackDraft(act, { lineId, narrationId, key });
  if (!taken.ok) return err(sentenceOf(taken.error));
  revalidatePath(`/lines/${lineId}`, "layout");
  return ok(null);
}

/** Ties a run to the line where its technician said that the camera is at the main. */
export async function tieAtMainAction(
  lineId: string,
  runId: string,
  counter: number,
  _state: FormState,
  form: FormData,
): Promise<FormState> {
  const act = await requireAct("record-the-field");
  const row = {
    id: act.newId(),
    runId,
    kind: "main-connection",
    counter,
    station: 0,
    note: "from the narration",
  };
  return appendRows(act, { lineId, table: "anchors", rows: [row] }, { form, words: "Tied." });
}

/** Says that a run is measured from the main, as its technician measures. */
export async function measureFromMainAction(
  lineId: string,
  runId: string,
  _state: FormState,
  form: FormData,
): Promise<FormState> {
  const act = await requireAct("record-the-field");
  const measured = measureFromMain(act, { lineId, runId });
  if (measured.ok) revalidatePath(`/lines/${lineId}`, "layout");
  return stateOf(measured, { words: "Measured from the main.", form });
}

/** Keeps what was said about the record with the entry that it speaks of. */
export async function noteEntryAction(
  lineId: string,
  narrationId: string,
  key: string,
  _state: FormState,
  form: FormData,
): Promise<FormState> {
  const act = await requireAct("work-the-file");
  const entryId = String(form.get("entryId") ?? "");
  const noted = noteEntry(act, { lineId, narrationId, key, entryId });
  if (noted.ok) revalidatePath(`/lines/${lineId}`, "layout");
  return stateOf(noted, { words: "Added to the entry’s note.", form });
}
