import { getAuthority, putAuthority } from "#db/queries/authority.ts";
import { listLines } from "#db/queries/line.ts";
import { AUTHORITY_PART_NAMES, type Authority } from "#lib/domain/facts/authority.ts";
import type { StatutoryPaper } from "#lib/domain/facts/statutory-paper.ts";
import { withStateWritten } from "#lib/domain/party/address.ts";
import { reachProblems } from "#lib/domain/party/address-check.ts";
import { withOwnParts } from "#lib/domain/responsibility/own-parts.ts";
import { authorityShape } from "#lib/exchange/shape.ts";
import { ok, type Result } from "#lib/result.ts";
import type { Act, Refusal } from "./act.ts";
import { changeOffice, refuse } from "./change.ts";
import { parse } from "./parse.ts";

/**
 * Saves an authority whole, with every part of it. Refuses to
 * take away a rule that a line rests on, or a requirement on which a condition hangs.
 */
export function saveAuthority(
  act: Act,
  authority: Authority,
): Result<{ authorityId: string }, Refusal> {
  const deal = { deed: "run-the-office", action: "save-authority" } as const;
  return changeOffice(act, deal, (db) => {
    const parsed = parse(authorityShape("memory"), withOwnParts(authority));
    if (!parsed.ok) return parsed;
    const before = getAuthority(db, parsed.value.id);
    const after = withOwnConfirmations(before, withStatesWritten(parsed.value));
    const odd =
      oddReach(before, after) ??
      idTwice(after) ??
      unclearFee(before, after) ??
      conditionOfNone(before, after);
    if (odd !== null) return odd;
    const kept = new Set(after.rules.map(({ id }) => id));
    const user = listLines(db).find(
      (line) => line.authorityId === after.id && line.ruleId !== null && !kept.has(line.ruleId),
    );
    if (user) return refuse("in-use", "rules", `The rule is applied on ${user.name}`);
    const same = JSON.stringify(before) === JSON.stringify(after);
    return ok({
      value: { authorityId: after.id },
      sentence: same ? null : `${before === null ? "Added" : "Changed"} ${after.name}.`,
      detail: { before, after },
      write: (one) => putAuthority(one, after),
    });
  });
}

function withStatesWritten(authority: Authority): Authority {
  return {
    ...authority,
    address: withStateWritten(authority.address),
    statutoryPapers: authority.statutoryPapers.map(withStateWritten),
  };
}

/**
 * That a paper's text was compared with the statute is an admin's word of its own (save-paper-text.ts):
 * it is never taken from what is saved, and ends where the paper, its text or its source changed.
 */
function withOwnConfirmations(before: Authority | null, after: Authority): Authority {
  const papers = after.statutoryPapers.map((paper): StatutoryPaper => {
    const was = before?.statutoryPapers.find(({ id }) => id === paper.id);
    const same =
      was !== undefined &&
      (["state", "title", "titleEs", "citation", "text", "textEs"] as const).every(
        (field) => was[field] === paper[field],
      );
    return same
      ? { ...paper, confirmedBy: was.confirmedBy, confirmedOn: was.confirmedOn }
      : { ...paper, confirmedBy: "", confirmedOn: null };
  });
  return { ...after, statutoryPapers: papers };
}

/** State, ZIP code and phone as they were typed now. */
function oddReach(before: Authority | null, { address, phone }: Authority) {
  const { state, zip } = address;
  const typed = { state, zip, phone };
  const was = { state: before?.address.state, zip: before?.address.zip, phone: before?.phone };
  const odd = reachProblems(typed).find(({ field }) => was[field] !== typed[field]);
  if (odd === undefined) return null;
  const path = odd.field === "phone" ? "phone" : `address.${odd.field}`;
  return refuse("bad-value", path, odd.message);
}

/** A fee, as it was typed now, that could never be worked out. */
function unclearFee(before: Authority | null, { fees }: Authority) {
  for (const [at, fee] of fees.entries()) {
    const was = before?.fees.find(({ id }) => id === fee.id);
    if (JSON.stringify(was) === JSON.stringify(fee)) continue;
    if (fee.per === "cost" && fee.step === null)
      return refuse(
        "bad-value",
        `fees.${at}.step`,
        "Enter for how many dollars of cost the amount is: 100 where it is $1 for each $100",
      );
    if (fee.least !== null && fee.most !== null && fee.least > fee.most)
      return refuse("bad-value", `fees.${at}.most`, "“At most” is below “At least”");
  }
  return null;
}

/** A condition that names no requirement: one was taken out, or never there. */
function conditionOfNone(before: Authority | null, { requirements, conditions }: Authority) {
  const at = conditions.findIndex(
    ({ requirementId }) => !requirements.some(({ id }) => id === requirementId),
  );
  const condition = conditions[at];
  if (condition === undefined) return null;
  const gone = before?.requirements.find(({ id }) => id === condition.requirementId);
  return gone === undefined
    ? refuse("bad-value", `conditions.${at}.requirementId`, "Select the requirement")
    : refuse(
        "in-use",
        "requirements",
        `“${gone.title}” is named under “When requirements apply”; delete that row first`,
      );
}

function idTwice(authority: Authority) {
  for (const name of AUTHORITY_PART_NAMES) {
    const seen = new Set<string>();
    for (const [at, { id }] of authority[name].entries()) {
      if (seen.has(id))
        return refuse("bad-value", `${name}.${at}.id`, "Two parts have the same id");
      seen.add(id);
    }
  }
  return null;
}
