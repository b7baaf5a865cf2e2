import { removeRow } from "#db/queries/row.ts";
import { ok, type Result } from "#lib/result.ts";
import type { Act, Refusal } from "./act.ts";
import { changeLine, refuse } from "./change.ts";

/** Takes a run's recording out of the file. Its bytes stay in the store: the same one attaches again. */
export function removeVideo(
  act: Act,
  { lineId, runId }: { readonly lineId: string; readonly runId: string },
): Result<null, Refusal> {
  const deal = { lineId, deed: "record-the-field", action: "remove-video" } as const;
  return changeLine(act, deal, (file) => {
    const video = file.videos.find((each) => each.runId === runId);
    if (video === undefined) return refuse("not-found", "runId", "the video of this run");
    const run = file.runs.find((each) => each.id === runId)?.name ?? "a run";
    return ok({
      value: null,
      sentence: `Removed the video of ${run} from the file: ${video.name}. The stored file is kept.`,
      detail: { before: video },
      write: (db) => void removeRow(db, "videos", { lineId, id: video.id }),
    });
  });
}
