import { askApart, type Limits, type NoAnswer } from "#lib/apart/apart.ts";
import { err, type Result } from "#lib/result.ts";
import { MOST_BYTES, type TableFile } from "./sheet.ts";

const ENTRY = "lib/exchange/table-file/read-table.apart.ts";

/** Far more than a table of 2,000 rows needs. */
const LIMITS: Limits = { time: 15_000, memory: 700 };

const WORDS: Readonly<Record<NoAnswer, string>> = {
  "too-long":
    "This file takes too long to read. Copy only the rows you need into a new file and choose that.",
  "too-much-memory":
    "This file is too large when opened. Copy only the rows you need into a new file and choose that.",
  broke: "This file can’t be read. Open it, save it again as CSV or XLSX, and choose it again.",
};

/** As `readTableFile`, in a process of its own: no file keeps other people waiting, or ends the program. */
export async function readTableApart(bytes: Uint8Array): Promise<Result<TableFile, string>> {
  // What is larger is refused unread, so that it need not be handed over.
  const head = bytes.byteLength > MOST_BYTES ? bytes.subarray(0, MOST_BYTES + 1) : bytes;
  const answer = await askApart<{ bytes: Uint8Array }, Result<TableFile, string>>(ENTRY, LIMITS, {
    bytes: head,
  });
  return answer.ok ? answer.value : err(WORDS[answer.error]);
}
