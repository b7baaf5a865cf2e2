import { insertRow, updateRow } from "#db/queries/row.ts";
import { APPLICATION, type Application } from "#lib/domain/facts/application.ts";
import { usualRow } from "#lib/domain/facts/field.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import { kindName } from "#lib/domain/permit/say.ts";
import { rowShapes } from "#lib/exchange/shape.ts";
import { ok, type Result } from "#lib/result.ts";
import type { Act, Refusal } from "./act.ts";
import { changeLine, refuse } from "./change.ts";
import { parse } from "./parse.ts";
import { pastDay } from "./past-day.ts";
import { changedOnLine } from "./seen.ts";

interface ApplicationTyped {
  readonly lineId: string;
  readonly facts: Partial<Omit<Application, "id">> & Pick<Application, "permitKind">;
  /** `seenOf(application)` as the form was filled in (null: none); not given: whatever stands there now. */
  readonly seen?: string | undefined;
}

/**
 * Saves what an application says beside the facts of the line; one a kind of permit, and what is not
 * named stays. Refuses a signature of a day to come and one by nobody, and a paper that is not
 * stored.
 */
export function saveApplication(
  act: Act,
  { lineId, facts, seen }: ApplicationTyped,
): Result<null, Refusal> {
  const deal = { lineId, deed: "work-the-file", action: "save-application" } as const;
  return changeLine(act, deal, (file) => {
    const before = file.applications.findLast(({ permitKind }) => permitKind === facts.permitKind);
    const about = before === undefined ? [facts.permitKind] : [before.id];
    const changed = changedOnLine(file, seen, { now: before ?? null, about });
    if (changed !== null) return changed;
    const typed = { ...usualRow(APPLICATION), id: act.newId(), ...before, ...facts };
    const parsed = parse(rowShapes("memory").applications, typed);
    if (!parsed.ok) return parsed;
    const after = parsed.value;
    const wrong = wrongSignature(act, after) ?? wrongPaper(file, after);
    if (wrong !== null) return wrong;
    const same = JSON.stringify(before ?? null) === JSON.stringify(after);
    return ok({
      value: null,
      sentence: same ? null : `Changed the application for the ${kindName(after.permitKind)}.`,
      detail: { before: before ?? null, after },
      write: (db) => {
        if (!updateRow(db, "applications", { lineId, row: after }))
          insertRow(db, "applications", { lineId, row: after });
      },
    });
  });
}

function wrongSignature(act: Act, { attestedOn, applicant }: Application) {
  if (attestedOn === null) return null;
  if (applicant.trim() === "")
    return refuse("bad-value", "applicant", "Enter who signed the application");
  return pastDay(act, { day: attestedOn, path: "attestedOn" });
}

function wrongPaper({ uploads }: LineFile, application: Application) {
  const stored = new Set(uploads.map(({ id }) => id));
  const path = (["attestationId", "certificateId"] as const).find((field) => {
    const id = application[field];
    return id !== null && !stored.has(id);
  });
  return path === undefined ? null : refuse("not-found", path, "the stored file");
}
