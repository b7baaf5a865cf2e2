import type { LineFile } from "#lib/domain/facts/line-file.ts";
import type { Letter } from "#lib/domain/paper/letter.ts";
import { readStored } from "#lib/storage/store.ts";

/** The bytes of the pictures that letters name, by the id of the stored file; what is gone is left out. */
export function pictureBytes(
  dataFolder: string,
  { uploads }: Pick<LineFile, "uploads">,
  letters: readonly Letter[],
): Map<string, Uint8Array> {
  const named = new Set(
    letters.flatMap(({ blocks }) =>
      blocks.flatMap((block) =>
        block.kind === "pictures" ? block.pictures.map(({ uploadId }) => uploadId) : [],
      ),
    ),
  );
  return new Map(
    uploads.flatMap(({ id, sha256 }): [string, Uint8Array][] => {
      const bytes = named.has(id) ? readStored(dataFolder, sha256) : null;
      return bytes === null ? [] : [[id, bytes]];
    }),
  );
}
