import { getLineFile } from "#db/queries/line-file.ts";
import { insertRow, updateRow } from "#db/queries/row.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import type { Run } from "#lib/domain/facts/run.ts";
import { mayDo } from "#lib/domain/facts/user.ts";
import type { Video, VideoType } from "#lib/domain/facts/video.ts";
import { err, ok, type Result } from "#lib/result.ts";
import { isStored, type StoredFile } from "#lib/storage/store.ts";
import type { Act, Refusal } from "./act.ts";
import { plainName } from "./add-upload.ts";
import { changeLine, closedWords, find, refuse } from "./change.ts";

interface OfRun {
  readonly lineId: string;
  readonly runId: string;
}

interface NewVideo extends OfRun {
  /** As the person's machine calls it. */
  readonly name: string;
  readonly stored: StoredFile<VideoType>;
}

/** Whether somebody may bring a run its recording: asked before gigabytes are taken in. */
export function mayAddVideo(act: Act, { lineId, runId }: OfRun): Result<null, Refusal> {
  if (!mayDo(act.actor.role, "record-the-field")) return refuse("not-allowed");
  const file = getLineFile(act.db, lineId);
  if (file === null) return refuse("not-found", "lineId", "the line");
  const closed = closedWords(file);
  if (closed !== null) return refuse("not-in-this-state", "", closed);
  const there = thereOn(file, runId);
  if (!there.ok) return there;
  const { run, video } = there.value;
  if (video !== null && isStored(act.dataFolder, video.sha256)) return refuseSecond(run, video);
  return ok(null);
}

/**
 * Gives a run its recording. Where the file names a recording that is not in this office's store,
 * the same one, by its hash, attaches to it. Refuses a second recording for a run.
 */
export function addVideo(
  act: Act,
  { lineId, runId, name, stored }: NewVideo,
): Result<{ videoId: string }, Refusal> {
  const deal = { lineId, deed: "record-the-field", action: "add-video" } as const;
  return changeLine(act, deal, (file) => {
    const there = thereOn(file, runId);
    if (!there.ok) return there;
    const { run, video } = there.value;
    if (video !== null && video.sha256 !== stored.sha256) return refuseOther(run, video);
    const row: Video = {
      id: video?.id ?? act.newId(),
      runId,
      name: plainName(name),
      ...stored,
      addedBy: act.actor.name,
      addedAt: act.now,
      note: video?.note ?? "",
    };
    return ok({
      value: { videoId: row.id },
      sentence:
        video === null
          ? `Added the video of ${run.name}: ${row.name}.`
          : `Uploaded the video of ${run.name} again: ${row.name}.`,
      detail: { before: video, after: row },
      write: (db) =>
        video === null
          ? insertRow(db, "videos", { lineId, row })
          : void updateRow(db, "videos", { lineId, row }),
    });
  });
}

function thereOn(
  file: LineFile,
  runId: string,
): Result<{ run: Run; video: Video | null }, Refusal> {
  const run = find(file.runs, runId, { path: "runId", what: "the run" });
  if (!run.ok) return err(run.error);
  const video = file.videos.find((each) => each.runId === runId) ?? null;
  return ok({ run: run.value, video });
}

function refuseSecond(run: Run, video: Video) {
  const detail = `${run.name} already has a video: ${video.name}. Remove that one first, then add this one`;
  return refuse("already-there", "runId", detail);
}

function refuseOther(run: Run, video: Video) {
  const detail = `This is not the video that ${run.name} lists: ${video.name}, ${video.bytes} bytes. Upload that one, or remove it from the file first`;
  return refuse("already-there", "runId", detail);
}
