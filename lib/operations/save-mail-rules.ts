import { getLastOfficeEntry } from "#db/queries/history.ts";
import { getMailRules, putMailRules } from "#db/queries/mailbox.ts";
import type { MailRules } from "#lib/domain/notices/mail-rules.ts";
import { ok, type Result } from "#lib/result.ts";
import type { Act, Refusal } from "./act.ts";
import { changeOffice, refuse } from "./change.ts";
import { changedSince } from "./seen.ts";

const MOST = 100_000;

/**
 * Saves how the office sends mail. Refuses a limit that is no whole number from 1, and where somebody
 * set another since (`seen`: `seenOf` the rules of the page).
 */
export function saveMailRules(
  act: Act,
  { seen, ...rules }: MailRules & { readonly seen?: string | undefined },
): Result<null, Refusal> {
  return changeOffice(act, { deed: "run-the-office", action: "save-mail-rules" }, (db) => {
    const { perHour } = rules;
    if (perHour !== null && (!Number.isInteger(perHour) || perHour < 1 || perHour > MOST))
      return refuse("bad-value", "perHour", "Enter a whole number from 1, or leave it blank");
    const before = getMailRules(db);
    const last = getLastOfficeEntry(db, "save-mail-rules");
    const changed = changedSince(seen, { now: before, last });
    if (changed !== null) return changed;
    const limit = perHour === null ? "no limit" : `at most ${perHour} an hour`;
    return ok({
      value: null,
      sentence: before.perHour === perHour ? null : `Email goes out with ${limit}.`,
      detail: { before, after: rules },
      write: (one) => putMailRules(one, rules),
    });
  });
}
