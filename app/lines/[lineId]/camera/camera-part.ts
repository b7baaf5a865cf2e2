import type { Run } from "#lib/domain/facts/run.ts";
import { lineFileOf } from "../file.ts";
import type { LinePart } from "../part.ts";

/** What the pages about the camera are made from. */
export async function cameraPart(lineId: string): Promise<LinePart> {
  const { file, report, revisions, may } = await lineFileOf(lineId);
  return {
    lineId,
    file,
    report,
    revisions,
    mayRecord: may("record-the-field"),
    mayFile: may("work-the-file"),
  };
}

/** The run that an address names, or the first one. */
export function runNamed(runs: readonly Run[], id: string | string[] | undefined): Run | undefined {
  return runs.find((run) => run.id === id) ?? runs[0];
}
