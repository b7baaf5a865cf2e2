import { getLastOfficeEntry } from "#db/queries/history.ts";
import { deleteReminderRule, listReminderRules, putReminderRule } from "#db/queries/reminder.ts";
import { LETTER_SAID } from "#lib/domain/facts/notice-words.ts";
import {
  REMINDED_KINDS,
  type ReminderRule,
  ruleSentence,
} from "#lib/domain/notices/reminder-rules.ts";
import { ok, type Result } from "#lib/result.ts";
import type { Act, Refusal } from "./act.ts";
import { changeOffice, refuse } from "./change.ts";
import { changedSince } from "./seen.ts";

const NUMBERS = ["daysAfter", "every", "most"] as const;
type Numbers = { readonly [F in (typeof NUMBERS)[number]]: number };
type Typed = {
  readonly kind: string;
  readonly sends: boolean;
  /** `seenOf` all rules, as the page listed them; not given: whatever they are now. */
  readonly seen?: string | undefined;
} & { readonly [F in keyof Numbers]: number | null };

const LIMITS = { daysAfter: [0, 365], every: [1, 365], most: [0, 20] } as const;

/** The numbers as they were typed, or which of them can't be. */
function numbersIn(typed: Typed): Result<Numbers, Refusal> {
  for (const field of NUMBERS) {
    const value = typed[field];
    const [least, most] = LIMITS[field];
    if (value === null || !Number.isInteger(value) || value < least || value > most)
      return refuse("bad-value", field, `Enter a whole number from ${least} to ${most}`);
  }
  const { daysAfter, every, most } = typed;
  return ok({ daysAfter: daysAfter ?? 0, every: every ?? 1, most: most ?? 0 });
}

/**
 * Saves when the office reminds of a kind of letter; none at most takes the rule away. Who turned
 * sending on or off, and when, stands with the rule and in the history.
 */
export function saveReminderRule(act: Act, typed: Typed): Result<null, Refusal> {
  return changeOffice(act, { deed: "run-the-office", action: "save-reminder-rule" }, (db) => {
    const kind = REMINDED_KINDS.find((each) => each === typed.kind);
    if (kind === undefined)
      return refuse("bad-value", "kind", "Choose a letter that asks for a reply");
    const numbers = numbersIn(typed);
    if (!numbers.ok) return numbers;
    const rules = listReminderRules(db);
    const last = getLastOfficeEntry(db, "save-reminder-rule");
    const changed = changedSince(typed.seen, { now: rules, last });
    if (changed !== null) return changed;
    const before = rules.find((each) => each.kind === kind) ?? null;
    const name = LETTER_SAID[kind];
    if (numbers.value.most === 0)
      return ok({
        value: null,
        sentence: before === null ? null : `No reminders of ${name} are drafted any more.`,
        detail: { before, after: null },
        write: (one) => deleteReminderRule(one, kind),
      });
    const after = ruleAfter(act, before, { kind, sends: typed.sends, ...numbers.value });
    const same = JSON.stringify(before) === JSON.stringify(after);
    return ok({
      value: null,
      sentence: same ? null : `Reminders of ${name}: ${ruleSentence(after)}.`,
      detail: { before, after },
      write: (one) => putReminderRule(one, after),
    });
  });
}

/** The rule with who turned sending on or off, and when. */
function ruleAfter(
  act: Act,
  before: ReminderRule | null,
  typed: Omit<ReminderRule, "sendsBy" | "sendsAt">,
): ReminderRule {
  const switched = typed.sends !== (before?.sends ?? false);
  const { sendsBy = "", sendsAt = "" } = switched
    ? { sendsBy: act.actor.name, sendsAt: act.now }
    : (before ?? {});
  const { kind, daysAfter, every, most, sends } = typed;
  return { kind, daysAfter, every, most, sends, sendsBy, sendsAt };
}
