"use server";

import { redirect } from "next/navigation";
import { type FormState, refused, textOf } from "#app/form.ts";
import { LINK_WORDS } from "#lib/domain/consent/words.ts";
import { LANGUAGES } from "#lib/domain/say/language.ts";
import { openByCode } from "#lib/operations/open-by-code.ts";
import { doorOf, stopWords } from "./[token]/door.ts";

/** Leads from the code of a letter on paper to its private page. */
export async function openByCodeAction(
  from: unknown,
  _state: FormState,
  form: FormData,
): Promise<FormState> {
  const language = LANGUAGES.find((each) => each === from) ?? "en";
  const opened = await openByCode(await doorOf(), textOf(form, "code"));
  if (!opened.ok) return refused(stopWords(LINK_WORDS[language], opened.error), form, "code");
  redirect(`/n/${opened.value.secret}${language === "es" ? "?lang=es" : ""}`);
}
