"use server";

import { z } from "zod";
import { officeAction } from "#app/action.ts";
import { fileOrNull, text } from "#app/fields.ts";
import { importLine } from "#lib/operations/import-line.ts";

/** A line file as pasted, or as chosen from the disk; the pasted one wins. */
const lineFile = z
  .object({ text, file: fileOrNull })
  .transform(async ({ text: pasted, file }, context) => {
    const written = pasted === "" ? ((await file?.text()) ?? "") : pasted;
    if (written.trim() !== "") return { written };
    const message = "Nothing was imported: choose a line file, or paste one.";
    context.addIssue({ code: "custom", path: ["file"], message });
    return z.NEVER;
  });

export const importLineAction = officeAction("/lines", {
  may: null,
  typed: lineFile,
  does: (act, { written }) => importLine(act, written),
  says: "",
  field: () => "text",
  leadsTo: ({ lineId }) => `/lines/${lineId}`,
});
