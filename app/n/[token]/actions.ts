"use server";

import { revalidatePath } from "next/cache";
import { redirect } from "next/navigation";
import {
  done,
  type FormState,
  oneOf,
  refused,
  textOf,
  textOrNull,
  textsOf,
  ticked,
} from "#app/form.ts";
import { SCREEN_KINDS } from "#lib/domain/consent/signable.ts";
import type { LinkStop } from "#lib/domain/consent/stops.ts";
import { LINK_WORDS } from "#lib/domain/consent/words.ts";
import { LINK_REPLIES } from "#lib/domain/consent/words-en.ts";
import { LANGUAGES, type Language } from "#lib/domain/say/language.ts";
import type { Refusal } from "#lib/operations/act.ts";
import { answerLink } from "#lib/operations/answer-link.ts";
import { signByLink } from "#lib/operations/sign-by-link.ts";
import { withdrawByLink } from "#lib/operations/withdraw-by-link.ts";
import { doorOf, stopOf, stopWords } from "./door.ts";

/** Where a form stands; it comes back from the browser, which may say anything. */
interface At {
  readonly token: unknown;
  readonly language: unknown;
}

interface Place {
  readonly token: string;
  readonly language: Language;
}

function placeOf(at: At | null): Place {
  const { token, language } = at ?? { token: "", language: "en" };
  return { token: String(token), language: LANGUAGES.find((each) => each === language) ?? "en" };
}

/** Beside which field a stop is said; the others stand at the form's foot. */
const FIELDS: Partial<Record<LinkStop, string>> = {
  "no-words": "words",
  "no-release-words": "words",
  "bad-day": "day",
  "too-long": "words",
  "no-capacity": "capacity",
};

function stoppedAt({ language }: Place, refusal: Refusal, form: FormData): FormState {
  const stop = stopOf(refusal);
  const field = stop === "no-name" ? unnamed(form) : (FIELDS[stop ?? "gone"] ?? "");
  return refused(stopWords(LINK_WORDS[language], refusal), form, field);
}

/** Where a name is typed: one field, or one for each of several people. */
function nameFields(form: FormData): string[] {
  return [...new Set(form.keys())].filter((name) => /^signedName(-\d)?$/.test(name));
}

/** The first field for a name that has no letter in it. */
function unnamed(form: FormData): string {
  const fields = nameFields(form);
  return fields.find((name) => !/\p{L}/u.test(textOf(form, name))) ?? fields[0] ?? "signedName";
}

/** What a neighbor says to their letter. */
export async function answerAction(
  from: At,
  _state: FormState,
  form: FormData,
): Promise<FormState> {
  const at = placeOf(from);
  const words = LINK_WORDS[at.language];
  const kind = oneOf(LINK_REPLIES, textOf(form, "kind"));
  if (kind === null) return refused(words.stops["no-kind"], form);
  const answered = answerLink(await doorOf(), {
    secret: at.token,
    kind,
    words: textOf(form, "words"),
    day: textOrNull(form, "day"),
    uploadId: textOrNull(form, "uploadId"),
    form: textOf(form, "form"),
  });
  if (!answered.ok) return stoppedAt(at, answered.error, form);
  revalidatePath(`/n/${at.token}`);
  return done(words.sent);
}

/** Asks for the letter on paper, to be signed there. */
export async function paperAction(from: At, _state: FormState, form: FormData): Promise<FormState> {
  const at = placeOf(from);
  const words = LINK_WORDS[at.language];
  const asked = answerLink(await doorOf(), {
    secret: at.token,
    kind: "wants-paper",
    words: "",
    day: null,
    uploadId: null,
    form: textOf(form, "form"),
  });
  if (!asked.ok) return stoppedAt(at, asked.error, form);
  revalidatePath(`/n/${at.token}`);
  return done(words.paperDone);
}

/** Signs what was ticked, on screen. */
export async function signAction(from: At, _state: FormState, form: FormData): Promise<FormState> {
  const at = placeOf(from);
  const kinds = textsOf(form, "kind").flatMap((kind) => oneOf(SCREEN_KINDS, kind) ?? []);
  const signed = await signByLink(await doorOf(), {
    secret: at.token,
    kinds,
    splitId: textOrNull(form, "splitId"),
    signedNames: nameFields(form).map((name) => String(form.get(name) ?? "")),
    capacity: textOf(form, "capacity"),
    drawing: drawingOf(textOf(form, "drawing")),
    records: ticked(form, "records"),
    language: at.language,
  });
  if (!signed.ok) return stoppedAt(at, signed.error, form);
  revalidatePath(`/n/${at.token}`);
  redirect(`/n/${at.token}?lang=${at.language}#signed`);
}

/** Takes back what was signed on screen, or asks to be let go where it binds already. */
export async function withdrawAction(
  from: At & { readonly consentId: unknown },
  _state: FormState,
  form: FormData,
): Promise<FormState> {
  const at = placeOf(from);
  const withdrawn = withdrawByLink(await doorOf(), {
    secret: at.token,
    consentId: String(from.consentId),
    words: textOf(form, "words"),
  });
  if (!withdrawn.ok) return stoppedAt(at, withdrawn.error, form);
  revalidatePath(`/n/${at.token}`);
  const words = LINK_WORDS[at.language];
  return done(withdrawn.value.taken === "back" ? words.withdrawn : words.releaseSent);
}

const PNG_DATA = "data:image/png;base64,";

/** A canvas hands its picture over as text; empty where nothing was drawn. */
function drawingOf(text: string): Uint8Array | null {
  if (text === "") return null;
  return Buffer.from(text.startsWith(PNG_DATA) ? text.slice(PNG_DATA.length) : "", "base64");
}
