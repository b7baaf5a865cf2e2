import Link from "next/link";
import type { LineFile } from "#lib/domain/facts/line-file.ts";

/** A stored document, by its name; nothing where there is none. */
export function PaperLink({
  lineId,
  file,
  uploadId,
  words,
}: {
  readonly lineId: string;
  readonly file: Pick<LineFile, "uploads">;
  readonly uploadId: string | null;
  readonly words: string;
}) {
  const upload = file.uploads.find((each) => each.id === uploadId);
  if (upload === undefined) return null;
  return (
    <span>
      {words}: <Link href={`/lines/${lineId}/notices/paper/${upload.id}`}>{upload.name}</Link>
    </span>
  );
}
