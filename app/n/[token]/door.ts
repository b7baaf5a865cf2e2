import "server-only";
import { randomUUID } from "node:crypto";
import { headers } from "next/headers";
import { callerOf } from "#app/caller.ts";
import { db, writable } from "#app/db.ts";
import { getUser } from "#app/session.ts";
import { today } from "#app/today.ts";
import { LINK_STOPS, type LinkStop } from "#lib/domain/consent/stops.ts";
import type { LinkWords } from "#lib/domain/consent/words-en.ts";
import type { Language } from "#lib/domain/say/language.ts";
import { readEnv } from "#lib/env.ts";
import type { Refusal } from "#lib/operations/act.ts";
import type { LinkDoor } from "#lib/operations/link-door.ts";

/** Somebody at a private page: nobody who signed in, and from where. */
export async function doorOf(): Promise<LinkDoor> {
  const asker = { ...(await callerOf()), officeUser: (await getUser())?.name ?? "" };
  // Whatever is asked there is noted.
  await writable();
  return {
    db: db(),
    now: new Date().toISOString(),
    today: today(),
    dataFolder: readEnv().dataFolder,
    newId: randomUUID,
    ...asker,
  };
}

/** Whether this page comes back after a deed on it, and is no new opening. */
export async function isAfterDeed(): Promise<boolean> {
  const sent = await headers();
  return sent.get("next-action") !== null || isPosted(sent);
}

/** Whether this page comes back after a form that a browser without scripts sent. */
export async function isAfterPost(): Promise<boolean> {
  return isPosted(await headers());
}

function isPosted(sent: Pick<Headers, "get">): boolean {
  const kind = sent.get("content-type") ?? "";
  return (
    sent.get("next-action") === null && /^(multipart\/form-data|application\/x-www)/.test(kind)
  );
}

/** The language that was chosen on the page; the reader's own where none was. */
export function languageOf(asked: string | string[] | undefined, own: Language): Language {
  return asked === "en" || asked === "es" ? asked : own;
}

/** Why something was not done, in the reader's language. */
export function stopWords(words: LinkWords, refusal: Pick<Refusal, "path">): string {
  const stop = stopOf(refusal);
  return stop === null ? words.refusedPlain : words.stops[stop];
}

export function stopOf({ path }: Pick<Refusal, "path">): LinkStop | null {
  return LINK_STOPS.find((stop) => stop === path) ?? null;
}
