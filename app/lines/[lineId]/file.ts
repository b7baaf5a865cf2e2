import "server-only";
import { notFound } from "next/navigation";
import { cache } from "react";
import { db } from "#app/db.ts";
import { requireUser } from "#app/session.ts";
import { today } from "#app/today.ts";
import { getOffice } from "#db/queries/office.ts";
import type { QuestionAnswer } from "#lib/domain/desk/answer.ts";
import { answersOn } from "#lib/domain/desk/answers.ts";
import type { LineFile, Office } from "#lib/domain/facts/line-file.ts";
import type { RowTable } from "#lib/domain/facts/row-table.ts";
import type { User } from "#lib/domain/facts/user.ts";
import { type Deed, mayDo } from "#lib/domain/facts/user.ts";
import type { Report } from "#lib/domain/findings/report.ts";
import { type LineReport, lineReport } from "#lib/operations/line-report.ts";

export interface OpenFile {
  readonly file: LineFile;
  readonly report: Report;
  /** Of the file's own rows: what a table is saved with again. */
  readonly revisions: Record<RowTable, number>;
  readonly office: Office | null;
  /** The ten questions with their answers so far. */
  readonly answers: readonly QuestionAnswer[];
  readonly user: User;
  /** Whether the user may do a deed on the file as it stands: pages hide what cannot be done. */
  readonly may: (deed: Deed) => boolean;
}

/**
 * The line's file and every computed answer, once per request. Leads to the sign-in where nobody is
 * signed in, to "not found" where there is no such line.
 */
export const lineFileOf = cache(async (lineId: string): Promise<OpenFile> => {
  const user = await requireUser();
  const found = lineReport(db(), lineId, today());
  if (found === null) return notFound();
  const { file, report, revisions } = found;
  const office = getOffice(db());
  return {
    file,
    report,
    revisions,
    office,
    answers: answersTo(found, office),
    user,
    may: (deed) => file.line.closedOn === null && mayDo(user.role, deed),
  };
});

/** Kept as long as the report is, which is made anew whenever the line or the office changes. */
const answered = new WeakMap<Report, readonly QuestionAnswer[]>();

function answersTo({ file, report }: LineReport, office: Office | null): readonly QuestionAnswer[] {
  const known = answered.get(report) ?? answersOn(file, report, office);
  answered.set(report, known);
  return known;
}
