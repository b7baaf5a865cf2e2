import { getKeptFile } from "#db/queries/line-file.ts";
import { writeLineFile } from "#lib/exchange/line-file.ts";
import { readStored } from "#lib/storage/store.ts";
import type { Act } from "./act.ts";

/** Everything on a line as a line file, stored files included; null where there is no such line. */
export function exportLine(
  { db, dataFolder }: Pick<Act, "db" | "dataFolder">,
  lineId: string,
): string | null {
  const file = getKeptFile(db, lineId);
  if (file === null) return null;
  const contents = new Map(
    file.uploads.flatMap(({ id, sha256 }): [string, Uint8Array][] => {
      const bytes = readStored(dataFolder, sha256);
      return bytes === null ? [] : [[id, bytes]];
    }),
  );
  return writeLineFile({ file, contents });
}
