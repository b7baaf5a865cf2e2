import { PDFDocument } from "@cantoo/pdf-lib";
import { type Limits, type NoAnswer, openApart } from "#lib/apart/apart.ts";
import { err, ok, type Result } from "#lib/result.ts";

const ENTRY = "lib/documents/upload-pages.apart.ts";

/** For one file; a long scan takes a few seconds. */
const LIMITS: Limits = { time: 25_000, memory: 1_500 };

/** What the files of one packet that can't be merged may cost it in all, in milliseconds. */
const WASTED = 45_000;
/** And what each further one is tried for all the same. */
const LEAST = 5_000;

const WORDS: Readonly<Record<NoAnswer, string>> = {
  "too-long": "it takes too long to read. Open it, print it to a new PDF, and add that.",
  "too-much-memory":
    "it is too large once it is opened. Open it, print it to a new PDF or save it as a smaller picture, and add that.",
  broke: "it can’t be read here. Open it, print it to a new PDF, and add that.",
};

/** Stored files made into pages, one after the other, for one packet. */
export interface Uploads {
  /** The file's pages, or in words why it can't be merged. */
  readonly pages: (bytes: Uint8Array) => Promise<Result<PDFDocument, string>>;
  readonly close: () => void;
}

/**
 * Makes pages of stored files in a process of its own. A file that takes too much ends that process
 * and is named with its reason; the next one has a new process. All such files together cost a
 * packet a minute.
 */
export function openUploads(limits: Limits = LIMITS): Uploads {
  const apart = openApart<{ bytes: Uint8Array }, Result<Uint8Array, string>>(ENTRY, limits);
  let wasted = 0;
  return { pages, close: apart.close };

  async function pages(bytes: Uint8Array): Promise<Result<PDFDocument, string>> {
    const begun = performance.now();
    const answer = await apart.ask({ bytes }, Math.max(LEAST, WASTED - wasted));
    if (!answer.ok) {
      wasted += performance.now() - begun;
      return err(WORDS[answer.error]);
    }
    if (!answer.value.ok) return answer.value;
    return ok(await PDFDocument.load(answer.value.value, { updateMetadata: false }));
  }
}
