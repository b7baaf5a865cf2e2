import type { Consent } from "../facts/consent.ts";
import type { LineFile } from "../facts/line-file.ts";
import type { Notice } from "../facts/notice.ts";
import { latestSplit } from "../split/latest-split.ts";
import { arrivalOf, cameBack } from "./arrival.ts";
import { consentsAskedBy } from "./asked.ts";

/**
 * The last letter by which somebody was asked for a consent on a property, and which did not come
 * back; null: none. For money only a letter on the version of the split that holds.
 */
export function askedByLetter(
  file: Pick<LineFile, "authority" | "notices" | "deliveries" | "replies" | "consents" | "splits">,
  { kind, partyId, propertyId }: Pick<Consent, "kind" | "partyId" | "propertyId">,
): Notice | null {
  const splitId = latestSplit(file)?.id ?? null;
  const letters = file.notices.filter(
    (notice) =>
      notice.state === "sent" &&
      notice.partyId === partyId &&
      notice.propertyId === propertyId &&
      consentsAskedBy(notice).includes(kind) &&
      (kind !== "pay" || notice.splitId === splitId) &&
      !cameBack(arrivalOf(file, notice).state),
  );
  return letters.at(-1) ?? null;
}
