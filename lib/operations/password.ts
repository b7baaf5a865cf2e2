import { hash, verify } from "@node-rs/argon2";
import { ZxcvbnFactory } from "@zxcvbn-ts/core";
import { adjacencyGraphs, dictionary } from "@zxcvbn-ts/language-common";
import { ok, type Result } from "#lib/result.ts";
import type { Refusal } from "./act.ts";
import { refuse } from "./change.ts";

// Argon2id at the least cost that OWASP's password storage sheet names (2026-08): 19 MiB, 2 passes,
// 1 lane. The package hashes with argon2id unless told otherwise.
const COST = { memoryCost: 19_456, timeCost: 2, parallelism: 1 };

const SHORTEST = 12;
const LONGEST = 1_000;

/** Verified in place of an account that is not there, so that both take the same time. */
const NOBODY =
  "$argon2id$v=19$m=19456,t=2,p=1$d3llYm9vay1ub2JvZHktMQ$0iYzGcxVxvVfTMJ2FYGC3rAyl8pUyEa1hvNB5P4Yz2A";

/** Of 0 to 4: at least a hundred million guesses, as the estimate of zxcvbn has it. */
const LEAST_SCORE = 3;

let estimate: ZxcvbnFactory | undefined;

/**
 * A password that may be set: long enough, nothing cut off, and no easy guess: none that people use
 * all over, no row of keys or digits, nothing made of what is known of the person (`about`: their
 * mail address, name and office).
 */
export function checkPassword(password: string, about: readonly string[]): Result<string, Refusal> {
  if (password.length < SHORTEST)
    return refuse(
      "bad-value",
      "password",
      `A password has at least ${SHORTEST} characters; a short phrase works well`,
    );
  if (password.length > LONGEST)
    return refuse("bad-value", "password", `A password has at most ${LONGEST} characters`);
  estimate ??= new ZxcvbnFactory({ dictionary, graphs: adjacencyGraphs });
  const known = [...about, ...about.flatMap((words) => words.split(/[^\p{L}\p{N}]+/u)), "wyebook"];
  if (
    estimate.check(
      password,
      known.filter((word) => word !== ""),
    ).score < LEAST_SCORE
  )
    return refuse(
      "bad-value",
      "password",
      "This password is too easy to guess; take a few words that do not belong together",
    );
  return ok(password);
}

export function hashPassword(password: string): Promise<string> {
  return hash(password, COST);
}

/** Whether the password is the one that was hashed; false, as slowly, where there is no account. */
export async function isPassword(password: string, passwordHash: string | null): Promise<boolean> {
  const right = await verify(passwordHash ?? NOBODY, password.slice(0, LONGEST + 1));
  return right && passwordHash !== null;
}
