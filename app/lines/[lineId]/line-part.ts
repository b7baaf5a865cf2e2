import "server-only";
import { lineFileOf } from "./file.ts";
import type { LinePart } from "./part.ts";

/** What every part of a page of this line needs, from the file as it is. */
export async function linePartOf(lineId: string): Promise<LinePart> {
  const { file, report, revisions, may } = await lineFileOf(lineId);
  const mayRecord = may("record-the-field");
  return { lineId, file, report, revisions, mayRecord, mayFile: may("work-the-file") };
}
