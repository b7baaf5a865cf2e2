import type { Consent } from "../facts/consent.ts";
import type { LineFile } from "../facts/line-file.ts";
import type { Report } from "../findings/report.ts";
import { workBegun } from "../permit/steps.ts";
import type { Day } from "../time/day.ts";
import { signedStanding } from "./standing.ts";
import { consentTable } from "./table.ts";

/** From when a promise to pay can no longer be taken back at will, and by what fact. */
export interface Binding {
  readonly why: "all-signed" | "work-begun";
  readonly since: Day;
}

/**
 * What makes a consent to pay binding: everybody who is asked to pay under the version in force has
 * signed, or a person of the office recorded at the permit that the work goes on; the first of the
 * two. Null while it can be taken back at will, and for every other consent: leave to enter or to dig
 * stays revocable. A promise that could be taken back for ever would be none, and one that binds
 * before the others have signed would be a trap.
 */
export function bindingOf(
  file: LineFile,
  consent: Consent,
  report: Pick<Report, "splits" | "tieIns">,
): Binding | null {
  if (consent.kind !== "pay" || signedStanding(file, consent, report) !== "current") return null;
  const signed = allSigned(file, report);
  const begun = workBegun(file);
  const facts: Binding[] = [
    ...(signed === null ? [] : [{ why: "all-signed" as const, since: signed }]),
    ...(begun === null ? [] : [{ why: "work-begun" as const, since: begun.on }]),
  ];
  return facts.toSorted((one, other) => one.since.localeCompare(other.since))[0] ?? null;
}

/** The day on which the last of those who are asked to pay signed; null while one is open. */
function allSigned(file: LineFile, report: Pick<Report, "splits" | "tieIns">): Day | null {
  const asked = consentTable(file, report).filter(({ cells }) => cells.pay.needed);
  if (asked.length === 0 || asked.some(({ cells }) => !cells.pay.inHand)) return null;
  const days = file.consents
    .filter((each) => each.kind === "pay" && signedStanding(file, each, report) === "current")
    .map(({ stateOn }) => stateOn);
  return days.toSorted().at(-1) ?? null;
}
