import type { Happening } from "../calendar/happenings.ts";
import type { RuleDay } from "../calendar/rule-day.ts";
import type { ClockRule } from "../facts/clock-rule.ts";
import type { LineFile } from "../facts/line-file.ts";
import type { Permit } from "../facts/permit.ts";
import type { Clock } from "../findings/clock.ts";
import { permitName } from "../permit/say.ts";
import { isDoneWith, isInForce, permitStateOf, stepsOf } from "../permit/steps.ts";
import { formatFullDay } from "../time/format-day.ts";

/**
 * The day of a permit's expiry as it counts: the one printed on the permit outranks the one that
 * the rule gives. After an extension without a printed day the old day stays, since how long an
 * extension runs is nowhere but on its paper. Anything but an expiry is given back as counted.
 */
export function withPrintedDay(
  file: LineFile,
  rule: Pick<ClockRule, "event" | "meaning">,
  { happening, counted }: { readonly happening: Happening; readonly counted: RuleDay },
): RuleDay {
  if (rule.event !== "permit-issued" || rule.meaning !== "expires") return counted;
  const permit = file.permits.find((each) => each.id === happening.subjectId);
  if (permit === undefined) return counted;
  if (permit.expiresOn === null)
    return { ...counted, sentence: `${counted.sentence}${extensionCaution(file, permit)}` };
  return { on: permit.expiresOn, at: "", sentence: printedSentence(permit.expiresOn, counted) };
}

function printedSentence(printed: string, counted: RuleDay): string {
  const reading = `The expiration date printed on the permit (${formatFullDay(printed)}) controls.`;
  if (printed === counted.on) return `${reading} The rule gives the same date.`;
  return `${reading} Under the rule: ${counted.sentence}`;
}

function extensionCaution(file: LineFile, permit: Permit): string {
  const extended = stepsOf(file, permit).findLast((step) => step.state === "extended");
  if (extended === undefined) return "";
  return ` It was extended on ${formatFullDay(extended.on)}: enter the date printed on the extension.`;
}

/** The clock of a printed day for which no rule made one; null where there is none to make. */
export function printedExpiry(
  file: LineFile,
  permit: Permit,
  { ruled }: { readonly ruled: boolean },
): Clock | null {
  if (permit.expiresOn === null) return null;
  const issued = stepsOf(file, permit).findLast((step) => step.state === "issued");
  if (ruled && issued !== undefined) return null;
  const state = permitStateOf(file, permit);
  if (!isInForce(state) && !isDoneWith(state)) return null;
  return {
    key: `permit-expiry:${permit.id}`,
    title: `Permit expires (${permitName(permit)})`,
    meaning: "expires",
    startedOn: issued?.on ?? permit.expiresOn,
    on: permit.expiresOn,
    at: "",
    sentence: `Expiration date printed on the permit: ${formatFullDay(permit.expiresOn)}.`,
    citation: "",
    asOf: null,
    subjectId: permit.id,
    settled: isDoneWith(state) || file.line.closedOn !== null,
    telling: null,
  };
}
