import type { Consent } from "../facts/consent.ts";
import type { LineFile } from "../facts/line-file.ts";
import type { SplitVersion } from "../facts/split.ts";
import type { Report } from "../findings/report.ts";
import type { Cents } from "../money/cents.ts";
import { latestSplit } from "../split/latest-split.ts";

export const CONSENT_STANDINGS = [
  /** Given, and what was signed still holds. */
  "current",
  /** Given, on an amount that no longer holds. */
  "superseded-amount",
  "asked",
  "refused",
  "withdrawn",
  /** Signed in a name that a person of the office has yet to look at. */
  "name-held",
  /** Signed in a name that the office did not take for the party's. */
  "name-refused",
  /** A later word of the same kind by the same party on the same property stands for it. */
  "replaced",
] as const;
export type ConsentStanding = (typeof CONSENT_STANDINGS)[number];

type Signed = Pick<LineFile, "consents" | "splits">;
type Amounts = Pick<Report, "splits">;

/**
 * What a consent is worth today. A signature to pay is tied to the amount that was put to the
 * signer: it holds under a newer split version only where that version asks the very same of the
 * property. With a report, the amount must also still follow from the facts.
 */
export function consentStanding(
  file: Signed,
  consent: Consent,
  report: Amounts | null = null,
): ConsentStanding {
  if (newestOf(file, consent).id !== consent.id) return "replaced";
  if (consent.state !== "given") return consent.state;
  if (consent.kind !== "pay") return "current";
  return amountHolds(file, consent, report) ? "current" : "superseded-amount";
}

/**
 * What a word that was signed on screen is worth today: where a person of the office decided on its
 * name since, what that decision is worth.
 */
export function signedStanding(
  file: Signed,
  consent: Consent,
  report: Amounts | null = null,
): ConsentStanding {
  const decided = file.consents.findLast(({ restsOnId }) => restsOnId === consent.id);
  return consentStanding(file, decided ?? consent, report);
}

/** The last word of the same kind by the same party on the same property. */
function newestOf(file: Signed, consent: Consent): Consent {
  const words = file.consents
    .filter(
      (each) =>
        each.kind === consent.kind &&
        each.partyId === consent.partyId &&
        each.propertyId === consent.propertyId,
    )
    .toSorted((one, other) => one.stateOn.localeCompare(other.stateOn));
  return words.at(-1) ?? consent;
}

function amountHolds(file: Signed, consent: Consent, report: Amounts | null): boolean {
  const latest = latestSplit(file);
  if (latest === null) return consent.splitId === null;
  const asked = amountIn(latest.shares, consent.propertyId);
  const signed = consent.amount ?? signedAmount(file, consent);
  if (signed === null || signed !== asked) return false;
  return report === null || stillFollows(report, latest, consent);
}

function signedAmount(file: Signed, consent: Consent): Cents | null {
  const version = file.splits.find((each) => each.id === consent.splitId);
  return version === undefined ? null : amountIn(version.shares, consent.propertyId);
}

function stillFollows(report: Amounts, latest: SplitVersion, consent: Consent): boolean {
  const outcome = report.splits.find((each) => each.choice.rule === latest.rule);
  if (outcome === undefined) return true;
  if (outcome.refusal !== null) return false;
  return (
    amountIn(outcome.shares, consent.propertyId) === amountIn(latest.shares, consent.propertyId)
  );
}

function amountIn(
  shares: readonly { readonly propertyId: string | null; readonly amount: Cents }[],
  propertyId: string,
): Cents | null {
  return shares.find((share) => share.propertyId === propertyId)?.amount ?? null;
}
