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
} from "#app/_form.ts";
import { SCREEN_KINDS } from "#lib/domain/consent/signable.ts";
import type { LinkStop } from "#lib/domain/consent/stops.ts";
import { LINK_WORDS } from "#lib/domain/consent/words.ts";
import { LINK_REPLIES } from "#lib/domain/consent/words-en.ts";
import type { Language } from "#lib/domain/party/party.ts";
import type { Refusal } from "#lib/operations/act.ts";
import { answerLink } from "#lib/operations/answer-link.ts";
import { signByLink } from "#lib/operations/sign-by-link.ts";
import { withdrawByLink } from "#lib/operations/withdraw-by-link.ts";
import { doorOf, stopOf, stopWords } from "./_door.ts";

interface At {
  readonly token: string;
  readonly language: Language;
}

/** Beside which field a stop is said; the others stand at the form's foot. */
const FIELDS: Partial<Record<LinkStop, string>> = {
  "no-words": "words",
  "bad-day": "day",
  "too-long": "words",
  "no-name": "signedName",
  "no-capacity": "capacity",
};

function stoppedAt({ language }: At, refusal: Refusal, form: FormData): FormState {
  const stop = stopOf(refusal);
  const field = stop === null ? "" : (FIELDS[stop] ?? "");
  return refused(stopWords(LINK_WORDS[language], refusal), form, field);
}

/** What a neighbour says to their letter. */
export async function answerAction(at: At, _state: FormState, form: FormData): Promise<FormState> {
  const words = LINK_WORDS[at.language];
  const kind = oneOf(LINK_REPLIES, textOf(form, "kind"));
  if (kind === null) return refused(words.stops["no-kind"], form);
  const answered = answerLink(await doorOf(), {
    secret: at.token,
    kind,
    words: textOf(form, "words"),
    day: textOrNull(form, "day"),
    uploadId: textOrNull(form, "uploadId"),
  });
  if (!answered.ok) return stoppedAt(at, answered.error, form);
  revalidatePath(`/n/${at.token}`);
  return done(words.sent);
}

/** Asks for the letter on paper, to be signed there. */
export async function paperAction(at: At, _state: FormState, form: FormData): Promise<FormState> {
  const words = LINK_WORDS[at.language];
  const asked = answerLink(await doorOf(), {
    secret: at.token,
    kind: "wants-paper",
    words: "",
    day: null,
    uploadId: null,
  });
  if (!asked.ok) return stoppedAt(at, asked.error, form);
  revalidatePath(`/n/${at.token}`);
  return done(words.paperDone);
}

/** Signs what was ticked, on screen. */
export async function signAction(at: At, _state: FormState, form: FormData): Promise<FormState> {
  const typed = form.get("signedName");
  const kinds = textsOf(form, "kind").flatMap((kind) => oneOf(SCREEN_KINDS, kind) ?? []);
  const signed = await signByLink(await doorOf(), {
    secret: at.token,
    kinds,
    splitId: textOrNull(form, "splitId"),
    signedName: typeof typed === "string" ? typed : "",
    capacity: textOf(form, "capacity"),
    drawing: drawingOf(textOf(form, "drawing")),
    records: ticked(form, "records"),
    language: at.language,
  });
  if (!signed.ok) return stoppedAt(at, signed.error, form);
  revalidatePath(`/n/${at.token}`);
  redirect(`/n/${at.token}?lang=${at.language}#signed`);
}

/** Takes back what was signed on screen. */
export async function withdrawAction(
  at: At & { readonly consentId: string },
  _state: FormState,
  form: FormData,
): Promise<FormState> {
  const { token: secret, consentId } = at;
  const withdrawn = withdrawByLink(await doorOf(), { secret, consentId });
  if (!withdrawn.ok) return stoppedAt(at, withdrawn.error, form);
  revalidatePath(`/n/${at.token}`);
  return done(LINK_WORDS[at.language].withdrawn);
}

const PNG_DATA = "data:image/png;base64,";

/** A canvas hands its picture over as text; empty where nothing was drawn. */
function drawingOf(text: string): Uint8Array | null {
  if (text === "") return null;
  return Buffer.from(text.startsWith(PNG_DATA) ? text.slice(PNG_DATA.length) : "", "base64");
}
