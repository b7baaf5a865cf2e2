"use server";

import { z } from "zod";
import { askAction, formAction, onLineAt } from "#app/action.ts";
import { asTyped, fileOrNull, id, text } from "#app/fields.ts";
import { sentenceOf } from "#app/messages.ts";
import { decodeText } from "#lib/exchange/table-file/decode-text.ts";
import type { Refusal } from "#lib/operations/act.ts";
import { addNarration } from "#lib/operations/add-narration.ts";
import { type Accepted, decideDrafts } from "#lib/operations/decide-drafts.ts";
import { measureFromMain } from "#lib/operations/measure-from-main.ts";
import { noteEntry } from "#lib/operations/note-entry.ts";
import { takeBackDraft } from "#lib/operations/take-back-draft.ts";
import { ok } from "#lib/result.ts";
import { appendRows } from "../../append-rows.ts";

/** Forms send every line end in two letters. What was pasted wins over a file. */
const transcript = z
  .object({ text: asTyped, file: fileOrNull })
  .transform(async ({ text: pasted, file }, context) => {
    if (pasted.trim() !== "") return { text: pasted.replaceAll("\r\n", "\n") };
    if (file === null) return { text: "" };
    const decoded = decodeText(new Uint8Array(await file.arrayBuffer()));
    if (decoded !== null) return { text: decoded.text };
    const message =
      "Not saved: this is not a text file. Choose the transcript as .vtt, .srt or .txt.";
    context.addIssue({ code: "custom", path: ["file"], message });
    return z.NEVER;
  });

/** What was said, as pasted, or as a file holds it where nothing was pasted. */
export const addNarrationAction = formAction(onLineAt({ runId: id }), {
  may: "record-the-field",
  typed: transcript,
  does: addNarration,
  says: "Transcript saved. Review the draft log.",
});

/** What a person decided on drafted rows; the operation looks at each. */
const decisions = z.object({
  accept: z.custom<Accepted>((row) => typeof row === "object" && row !== null).array(),
  drop: z.string().array(),
});

/** Takes drafted rows into the log as they were fixed, and drops others; else says which cell is wrong. */
export const decideDraftsAction = askAction({
  may: "record-the-field",
  takes: z.tuple([id, id, decisions]),
  does: (act, [lineId, narrationId, decided]) =>
    decideDrafts(act, { lineId, narrationId, ...decided }),
  tells: (refusal: Refusal) => {
    const [key = "", field = ""] = refusal.path.split(".");
    return { message: sentenceOf(refusal), key, field };
  },
});

/** Opens a decided row again. */
export const takeBackDraftAction = askAction({
  may: "record-the-field",
  takes: z.tuple([id, id, id]),
  does: (act, [lineId, narrationId, key]) => takeBackDraft(act, { lineId, narrationId, key }),
});

/** Ties a run to the line where its technician said that the camera is at the main. */
export const tieAtMainAction = formAction(onLineAt({ runId: id, counter: z.number() }), {
  may: "record-the-field",
  typed: z.object({}),
  does: (act, { lineId, runId, counter }) =>
    appendRows(act, { lineId, table: "anchors" }, () =>
      ok([
        {
          id: act.newId(),
          runId,
          kind: "main-connection",
          counter,
          station: 0,
          note: "from the narration",
        },
      ]),
    ),
  says: "Tied.",
});

/** Says that a run is measured from the main, as its technician measures. */
export const measureFromMainAction = formAction(onLineAt({ runId: id }), {
  may: "record-the-field",
  typed: z.object({}),
  does: measureFromMain,
  says: "Measured from the main.",
});

/** Keeps what was said about the record with the entry that it speaks of. */
export const noteEntryAction = formAction(onLineAt({ narrationId: id, key: id }), {
  may: "work-the-file",
  typed: z.object({ entryId: text }),
  does: noteEntry,
  says: "Added to the entry’s note.",
});
