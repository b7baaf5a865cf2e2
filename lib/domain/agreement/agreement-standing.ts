import type { Agreement } from "../facts/authority.ts";
import type { LineFile } from "../facts/line-file.ts";
import { type Cft, plainFeet } from "../length/station.ts";
import { formatDate } from "../time/format-day.ts";
import { type AgreementWay, agreementProgress } from "./agreement-progress.ts";

/** Where an agreement stands in the order of what counts: recorded, then signed by all, else nowhere. */
type AgreementRank = "recorded" | "signed" | "draft";

export interface RankedAgreement {
  readonly agreement: Agreement;
  readonly rank: "recorded" | "signed";
}

type AgreementFile = Pick<LineFile, "agreements" | "consents"> & AgreementWay;

/**
 * A recorded agreement has a recording date or number. One without either counts as signed once a
 * signature on an agreement is noted for every property that has parts in it; until then it is a
 * draft and decides nothing. One whose steps are kept goes by them: all its title holders have signed.
 */
function agreementRank(agreement: Agreement, file: AgreementFile): AgreementRank {
  if (agreement.recordedOn !== null || agreement.recordingNumber.trim() !== "") return "recorded";
  const { steps, state } = agreementProgress(file, agreement);
  if (steps.length > 0) return state === "signed" || state === "notarised" ? "signed" : "draft";
  const { consents } = file;
  const bound = agreement.shares.filter((share) => share.parts > 0);
  const signed = new Set(
    consents
      .filter((consent) => consent.kind.startsWith("agreement-") && consent.state === "given")
      .map((consent) => consent.propertyId),
  );
  const all = bound.length > 0 && bound.every((share) => signed.has(share.propertyId));
  return all ? "signed" : "draft";
}

/**
 * The agreements that count, the strongest first: recorded before signed, and among recorded ones
 * the one recorded last, which is taken to replace those before it.
 */
export function rankedAgreements(file: AgreementFile): RankedAgreement[] {
  return file.agreements
    .flatMap((agreement): RankedAgreement[] => {
      const rank = agreementRank(agreement, file);
      return rank === "draft" ? [] : [{ agreement, rank }];
    })
    .sort((a, b) => {
      if (a.rank !== b.rank) return a.rank === "recorded" ? -1 : 1;
      const [first, second] = [a.agreement.recordedOn ?? "", b.agreement.recordedOn ?? ""];
      if (first === second) return 0;
      return first > second ? -1 : 1;
    });
}

/** The strongest agreement that covers all of a stretch, or null. */
export function agreementOver(
  ranked: readonly RankedAgreement[],
  from: Cft,
  to: Cft,
): RankedAgreement | null {
  return (
    ranked.find(
      ({ agreement }) =>
        (agreement.fromStation ?? 0) <= from &&
        to <= (agreement.toStation ?? Number.MAX_SAFE_INTEGER),
    ) ?? null
  );
}

/** Where the agreements that count begin and end. */
export function agreementEnds(ranked: readonly RankedAgreement[]): Cft[] {
  return ranked.flatMap(({ agreement }) =>
    [agreement.fromStation, agreement.toStation].filter((station) => station !== null),
  );
}

/** `“Sewer agreement”, recorded as 198404120331`. */
export function agreementName({ agreement, rank }: RankedAgreement): string {
  const title = `“${agreement.title}”`;
  if (rank === "signed") return `${title}, signed by all in it and not recorded`;
  const { recordedOn } = agreement;
  const number = agreement.recordingNumber.trim();
  return number === "" && recordedOn !== null
    ? `${title}, recorded on ${formatDate(recordedOn)}`
    : `${title}, recorded as ${number}`;
}

/** `0.0 to 60.0 ft`, or `the whole line`. */
export function agreementExtent(agreement: Agreement): string {
  const { fromStation, toStation } = agreement;
  if (fromStation === null && toStation === null) return "the whole line";
  if (toStation === null) return `the line from ${plainFeet(fromStation ?? 0)} ft up`;
  return `${plainFeet(fromStation ?? 0)} to ${plainFeet(toStation)} ft`;
}
