import { readCode } from "#lib/domain/consent/link-code.ts";
import { ok, type Result } from "#lib/result.ts";
import type { Refusal } from "./act.ts";
import { secretOfCode } from "./link-code.ts";
import { findOpenLink, type LinkDoor, stopped, takeCodeTry } from "./link-door.ts";

/**
 * The secret of the private link that a code from a letter on paper opens. Refuses what is no code, one
 * that opens nothing (never was, expired or called back: one answer), and too many tries.
 */
export async function openByCode(
  door: LinkDoor,
  typed: string,
): Promise<Result<{ readonly secret: string }, Refusal>> {
  const code = readCode(typed);
  if (code === null) return stopped("bad-code");
  const tried = takeCodeTry(door);
  if (!tried.ok) return tried;
  const secret = await secretOfCode(code);
  const link = findOpenLink(door, secret, "opening");
  return link.ok ? ok({ secret }) : link;
}
