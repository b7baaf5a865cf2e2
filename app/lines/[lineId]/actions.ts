"use server";

import { z } from "zod";
import { formAction, onLine } from "#app/action.ts";
import { feetOrNull, numberOrNull, oneInOr, text, textOrNull } from "#app/fields.ts";
import { CLOSING_WORDS } from "#lib/domain/closing/closing.ts";
import { MATERIALS } from "#lib/domain/facts/line.ts";
import { closeLine, reopenLine } from "#lib/operations/close-line.ts";
import { keepLine } from "#lib/operations/keep-line.ts";
import { saveLine } from "#lib/operations/save-line.ts";

const feet = feetOrNull((typed) => `Not saved: “${typed}” is not a length. Enter feet, e.g. 26.5.`);

export const saveLineAction = formAction(onLine, {
  may: null,
  typed: z.object({
    upperEnd: feet,
    mainStation: feet,
    name: text,
    town: text,
    material: oneInOr(MATERIALS, "unknown"),
    diameter: numberOrNull,
    mainNote: text,
    note: text,
    seen: text,
  }),
  does: (act, { lineId, seen, ...facts }) => saveLine(act, { lineId, facts, seen }),
  says: "Saved.",
  theirs: "above the form",
});

export const keepLineAction = formAction(onLine, {
  may: null,
  typed: z.object({ userId: textOrNull, seen: text }),
  does: keepLine,
  says: "Saved.",
  theirs: "above the form",
});

export const closeLineAction = formAction(onLine, {
  may: null,
  typed: z.object({
    reason: text,
    ...Object.fromEntries(CLOSING_WORDS.map((each) => [each, text])),
  }),
  does: (act, { lineId, reason, ...words }) => closeLine(act, { lineId, reason, words }),
  says: "The file is closed.",
});

export const reopenLineAction = formAction(onLine, {
  may: null,
  typed: z.object({ reason: text }),
  does: reopenLine,
  says: "The file is open again.",
});
