import sharp from "sharp";
import type { LetterBlock } from "#lib/domain/paper/letter.ts";

/** A picture as it is put on paper. */
export interface PrintPicture {
  readonly jpeg: Buffer;
  readonly width: number;
  readonly height: number;
}

/** Sharp enough for half a page, and small enough to mail. */
const LONGEST_SIDE = 1_200;

/** What takes longer to read is left out, as what can't be read is. */
const LONGEST_SECONDS = 20;

/**
 * The pictures that blocks name, ready for paper, by the id of the stored file; `uploads` are the
 * stored bytes. What is not there or is no picture is left out: its caption stands alone then.
 */
export async function readyPictures(
  blocks: readonly LetterBlock[],
  uploads: ReadonlyMap<string, Uint8Array>,
): Promise<Map<string, PrintPicture>> {
  const ready = new Map<string, PrintPicture>();
  const named = blocks.flatMap((block) => (block.kind === "pictures" ? block.pictures : []));
  for (const { uploadId } of named) {
    const bytes = uploads.get(uploadId);
    const picture = bytes === undefined ? null : await printed(bytes);
    if (picture !== null) ready.set(uploadId, picture);
  }
  return ready;
}

async function printed(bytes: Uint8Array): Promise<PrintPicture | null> {
  try {
    const { data, info } = await sharp(bytes, { failOn: "error", limitInputPixels: 120_000_000 })
      .rotate()
      .resize(LONGEST_SIDE, LONGEST_SIDE, { fit: "inside", withoutEnlargement: true })
      .flatten({ background: "#ffffff" })
      .jpeg({ quality: 80 })
      .timeout({ seconds: LONGEST_SECONDS })
      .toBuffer({ resolveWithObject: true });
    return { jpeg: data, width: info.width, height: info.height };
  } catch {
    return null;
  }
}
