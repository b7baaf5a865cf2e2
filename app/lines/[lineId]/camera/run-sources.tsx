import Link from "next/link";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import type { Run } from "#lib/domain/facts/run.ts";

/** Ways to fill a run's log without typing it: what was said while it ran, and files. */
export function RunSources({
  lineId,
  run,
  file,
}: {
  readonly lineId: string;
  readonly run: Run;
  readonly file: Pick<LineFile, "narrations" | "runs">;
}) {
  const id = encodeURIComponent(run.id);
  const said = file.narrations.some((narration) => narration.runId === run.id);
  return (
    <>
      <Link href={`/lines/${lineId}/camera/narration?run=${id}`}>
        {said ? "Narration" : "Draft the log from the narration"}
      </Link>
      <Link href={`/lines/${lineId}/bring-in?table=observations&to=${id}`}>
        Import rows from a file
      </Link>
      {file.runs.length < 2 ? null : (
        <Link href={`/lines/${lineId}/bring-in?table=observations&to=each`}>
          Import one file for all runs
        </Link>
      )}
    </>
  );
}
