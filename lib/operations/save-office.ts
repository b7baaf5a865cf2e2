import { getLastOfficeEntry } from "#db/queries/history.ts";
import { getOffice, putOffice } from "#db/queries/office.ts";
import type { Office } from "#lib/domain/facts/line-file.ts";
import { ok, type Result } from "#lib/result.ts";
import type { Act, Refusal } from "./act.ts";
import { changeOffice } from "./change.ts";
import { OfficeShape } from "./office-shape.ts";
import { parse } from "./parse.ts";
import { changedSince } from "./seen.ts";

/**
 * Saves the facts of the office. Refuses a time zone that does not exist, and what was filled in from
 * facts that somebody changed since (`seen`: `seenOf(office)` as the form had it).
 */
export function saveOffice(
  act: Act,
  office: Office,
  { seen }: { readonly seen?: string } = {},
): Result<null, Refusal> {
  return changeOffice(act, { deed: "run-the-office", action: "save-office" }, (db) => {
    const parsed = parse(OfficeShape, office);
    if (!parsed.ok) return parsed;
    const before = companyOf(getOffice(db));
    const last = getLastOfficeEntry(db, "save-office");
    const changed = changedSince(seen, { now: before, last });
    if (changed !== null) return changed;
    const same = JSON.stringify(before) === JSON.stringify(parsed.value);
    return ok({
      value: null,
      sentence: same ? null : "Changed the facts of the office.",
      detail: { before, after: parsed.value },
      write: (one) => putOffice(one, parsed.value),
    });
  });
}

/** What is typed of the company itself, as the form has it: without the wordings in use. */
export function companyOf(office: Office | null): Office | null {
  if (office === null) return null;
  const { wordings: _inUse, ...company } = office;
  return company;
}
