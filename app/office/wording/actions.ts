"use server";

import { z } from "zod";
import { formAction, placeAt } from "#app/action.ts";
import { asTyped, read, text } from "#app/fields.ts";
import { LETTER_KINDS } from "#lib/domain/facts/notice.ts";
import { LANGUAGES } from "#lib/domain/say/language.ts";
import { saveWording, useWording } from "#lib/operations/save-wording.ts";

const onWording = placeAt(
  { kind: z.enum(LETTER_KINDS), language: z.enum(LANGUAGES) },
  () => "/office/wording",
);

/** Saves a version, which the page then shows as a letter; it is not in use yet. */
export const saveWordingAction = formAction(onWording, {
  may: "run-the-office",
  typed: z.object({ text: asTyped, seen: text }),
  does: saveWording,
  theirs: "the newest version, in the preview",
  says: ({ version }) => `Version ${version} is saved. Read the preview, then use it.`,
});

const wholeNumber = (typed: string) => (/^\d{1,6}$/.test(typed) ? Number(typed) : null);

/** Puts a version into use, or with 0 the house's wording. */
export const useWordingAction = formAction(onWording, {
  may: "run-the-office",
  typed: z.object({ version: read(wholeNumber, "Choose a version."), seen: text }),
  does: useWording,
  says: ({ version }) =>
    version === 0 ? "The house wording is in use." : `Version ${version} is in use.`,
});
