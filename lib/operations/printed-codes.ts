import { z } from "zod";
import type { Db } from "#db/open.ts";
import { getLinkByHash } from "#db/queries/link.ts";
import type { PrintedCode } from "#lib/documents/stamp-code.ts";
import { shownCode } from "#lib/domain/consent/link-code.ts";
import type { DeliveryMethod, Notice } from "#lib/domain/facts/notice.ts";
import { LETTER_WORDS } from "#lib/domain/paper/facts.ts";
import { dayOf } from "#lib/domain/time/moment.ts";
import { forgetLinkSecret, keepLinkSecret, readLinkSecret } from "#lib/storage/link-secret.ts";
import type { Act } from "./act.ts";
import type { CodedSecret } from "./link-code.ts";
import { hashSecret } from "./link-door.ts";
import { newLink, putLink } from "./link-rows.ts";

/** Private pages for letters on paper: codes made beforehand, since each costs what a password does. */
export interface CodeWish {
  /** Days that each is good for. */
  readonly days: number;
  /** How this office is reached from outside: `https://office.example.com`. */
  readonly address: string | null;
  /** By letter. */
  readonly codes: ReadonlyMap<string, CodedSecret>;
}

/** Ways that bring a letter into one reader's hands. What hangs on a door is read by whoever passes. */
export const CODED_METHODS: readonly DeliveryMethod[] = ["first-class", "certified", "by-hand"];

const Kept = z.object({ code: z.string(), secret: z.string(), address: z.string() });

function placeOf(noticeId: string): string {
  return `print-${noticeId}`;
}

/**
 * Makes the private link of a letter on paper, and keeps its code beside the database until the letter
 * is printed. A link that its reader had is called back.
 */
export function putCode(
  db: Db,
  act: Act,
  { lineId, notice, wish }: { lineId: string; notice: Notice; wish: CodeWish },
): void {
  const coded = wish.codes.get(notice.id);
  if (coded === undefined || wish.address === null) return;
  const link = newLink(act, { lineId, notice, days: wish.days, secret: coded.secret });
  putLink(db, act, link);
  const kept = { ...coded, address: wish.address };
  keepLinkSecret(act.dataFolder, placeOf(notice.id), JSON.stringify(kept));
}

/** What is printed onto a letter that waits for it; null where no code is here or it opens nothing. */
export function printedCode(
  { db, dataFolder, zone }: { db: Db; dataFolder: string; zone: string },
  noticeId: string,
): PrintedCode | null {
  const waiting = readLinkSecret(dataFolder, placeOf(noticeId));
  if (waiting === null) return null;
  const { code, secret, address } = Kept.parse(JSON.parse(waiting));
  const link = getLinkByHash(db, hashSecret(secret));
  if (link === null || link.revokedAt !== null) return null;
  const day = dayOf(link.expiresAt, zone);
  return {
    url: `${address}/n/${secret}`,
    door: `${new URL(address).host}/n`,
    code: shownCode(code),
    until: { en: LETTER_WORDS.en.day(day), es: LETTER_WORDS.es.day(day) },
  };
}

/** Forgets the codes of letters that are printed. */
export function forgetCodes(dataFolder: string, noticeIds: readonly string[]): void {
  for (const id of noticeIds) forgetLinkSecret(dataFolder, placeOf(id));
}
