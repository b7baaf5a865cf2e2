import "server-only";
import { db } from "#app/db.ts";
import { getRevisions } from "#db/queries/revision.ts";
import { lineFileOf } from "./file.ts";
import type { LinePart } from "./part.ts";

/** What every part of a page of this line needs, from the file as it is. */
export async function linePartOf(lineId: string): Promise<LinePart> {
  const { file, report, may } = await lineFileOf(lineId);
  return {
    lineId,
    file,
    report,
    revisions: getRevisions(db(), lineId),
    mayRecord: may("record-the-field"),
    mayFile: may("work-the-file"),
  };
}
