"use server";

import { z } from "zod";
import { formAction, placeAt } from "#app/action.ts";
import { id, text } from "#app/fields.ts";
import { confirmPaperText, savePaperText } from "#lib/operations/save-paper-text.ts";

const ofPaper = placeAt(
  { authorityId: id, paperId: id },
  ({ authorityId }) => `/office/authorities/${authorityId}`,
);

/** Saves the office's text of a statutory paper. */
export const savePaperTextAction = formAction(ofPaper, {
  may: null,
  typed: z.object({ text, textEs: text, seen: text }),
  does: savePaperText,
  says: "Saved. An admin confirms it against the statute.",
  theirs: "below the form, under “As saved”",
});

/** An admin's word that the text shown was compared with the statute. */
export const confirmPaperTextAction = formAction(ofPaper, {
  may: null,
  typed: z.object({ text, textEs: text }),
  does: confirmPaperText,
  says: "Confirmed.",
});
