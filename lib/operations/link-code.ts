import { randomInt } from "node:crypto";
import { hashRaw } from "@node-rs/argon2";
import { CODE_CHANCE, CODE_SIGNS, linkCode } from "#lib/domain/consent/link-code.ts";

/** The cost of a password: what a try of a stolen code costs. */
const COST = { memoryCost: 19_456, timeCost: 2, parallelism: 1, outputLen: 32 };
/** The same for all: a code has to be found without knowing whose it is. */
const SALT = Buffer.from("wyebook private page");

/** A code for paper, and the secret of the link that it opens. */
export interface CodedSecret {
  readonly code: string;
  readonly secret: string;
}

/** The secret of the private link that a code opens; the same code gives the same secret. */
export async function secretOfCode(code: string): Promise<string> {
  const bytes = await hashRaw(code, { ...COST, salt: SALT });
  return bytes.toString("base64url");
}

/** New codes by chance, one for each letter. */
export async function newCodes(
  noticeIds: readonly string[],
): Promise<ReadonlyMap<string, CodedSecret>> {
  const made = noticeIds.map(async (noticeId): Promise<[string, CodedSecret]> => {
    const code = linkCode(Array.from({ length: CODE_CHANCE }, () => randomInt(CODE_SIGNS)));
    return [noticeId, { code, secret: await secretOfCode(code) }];
  });
  return new Map(await Promise.all(made));
}
