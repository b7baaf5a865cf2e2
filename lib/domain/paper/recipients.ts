import type { LineFile } from "../facts/line-file.ts";
import type { LetterKind } from "../facts/notice.ts";
import type { Report } from "../findings/report.ts";
import type { Recipient } from "./addressed.ts";
import { LETTER_PLANS } from "./kinds/index.ts";

/** Who gets a kind of letter as the file stands, each party once for each property it is about. */
export function recipientsOf(file: LineFile, report: Report, kind: LetterKind): Recipient[] {
  return LETTER_PLANS[kind].recipients(file, report);
}
