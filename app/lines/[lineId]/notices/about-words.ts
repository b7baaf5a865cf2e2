import type { LineFile } from "#lib/domain/facts/line-file.ts";
import type { Notice } from "#lib/domain/facts/notice.ts";
import { propertyName, tieInName } from "../names.ts";

/** What a letter is about: the property, the tie-in, or the line. */
export function aboutWords(file: LineFile, notice: Pick<Notice, "propertyId" | "tieInId">): string {
  const property = notice.propertyId === null ? "" : propertyName(file, notice.propertyId);
  const tieIn = notice.tieInId === null ? "" : `tie-in ${tieInName(file, notice.tieInId)}`;
  return [property, tieIn].filter((part) => part !== "").join(", ") || "the line";
}
