import type { LineFile } from "../facts/line-file.ts";
import type { Run } from "../facts/run.ts";

/**
 * The newest still of a tie-in: of the latest run that has one, the last in the log. Only pictures
 * that belong to observations of the pipe count; null where there is none.
 */
export function newestPicture(
  file: Pick<LineFile, "observations" | "runs" | "uploads">,
  tieInId: string,
): { readonly uploadId: string; readonly run: Run } | null {
  const stills = file.observations.flatMap((seen) => {
    const run = file.runs.find(({ id }) => id === seen.runId);
    const uploadId = pictureOf(file, seen.pictureId);
    return seen.tieInId === tieInId && run && uploadId !== null ? [{ uploadId, run }] : [];
  });
  const latest = stills
    .map(({ run }) => run.ranOn)
    .sort()
    .at(-1);
  return stills.findLast(({ run }) => run.ranOn === latest) ?? null;
}

/** The id of a stored picture that the file holds; null for anything else. */
export function pictureOf(
  { uploads }: Pick<LineFile, "uploads">,
  pictureId: string | null,
): string | null {
  const upload = uploads.find(({ id }) => id === pictureId);
  return upload === undefined || upload.type === "application/pdf" ? null : upload.id;
}
