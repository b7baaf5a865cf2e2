import { getAuthority } from "#db/queries/authority.ts";
import { updateLine } from "#db/queries/line.ts";
import type { Authority, ResponsibilityRule } from "#lib/domain/facts/authority.ts";
import type { LineFacts } from "#lib/domain/facts/line.ts";
import { ok, type Result } from "#lib/result.ts";
import type { Act, Refusal } from "./act.ts";
import { changeLine, refuse } from "./change.ts";
import { changedOnLine, fieldsSeen } from "./seen.ts";

interface RuleChoice {
  readonly lineId: string;
  readonly authorityId: string | null;
  /** One of that authority's rules; null takes the choice back. */
  readonly ruleId: string | null;
  /** `seenOf(ruleSeen(line))` as the form was filled in; not given: whatever is chosen now. */
  readonly seen?: string | undefined;
}

/** What is chosen on a line when the form is filled in. */
export function ruleSeen(line: LineFacts) {
  return fieldsSeen(line, ["authorityId", "ruleId"]);
}

/** Says which authority the line lies with and which of its rules the office applies. */
export function chooseRule(
  act: Act,
  { lineId, authorityId, ruleId, seen }: RuleChoice,
): Result<null, Refusal> {
  const deal = { lineId, deed: "work-the-file", action: "choose-rule" } as const;
  return changeLine(act, deal, (file, db) => {
    const { line } = file;
    const changed = changedOnLine(file, seen, { now: ruleSeen(line), about: ["ruleId"] });
    if (changed !== null) return changed;
    const authority = authorityId === null ? null : getAuthority(db, authorityId);
    if (authorityId !== null && authority === null)
      return refuse("not-found", "authorityId", "the authority");
    const rule = authority?.rules.find(({ id }) => id === ruleId) ?? null;
    if (ruleId !== null && rule === null) return refuse("not-found", "ruleId", "the rule");
    const same = line.authorityId === authorityId && line.ruleId === ruleId;
    return ok({
      value: null,
      sentence: same ? null : sentenceFor(authority, rule),
      detail: {
        before: { authorityId: line.authorityId, ruleId: line.ruleId },
        after: { authorityId, ruleId },
      },
      write: (one) => updateLine(one, { ...line, authorityId, ruleId }),
    });
  });
}

function sentenceFor(authority: Authority | null, rule: ResponsibilityRule | null): string {
  if (authority === null) return "Applies no authority's rule.";
  if (rule === null) return `Applies no rule of ${authority.name} yet.`;
  return `Applies “${rule.title}” of ${authority.name} (${rule.citation}).`;
}
