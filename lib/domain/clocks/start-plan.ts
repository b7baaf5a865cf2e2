import { dayOfRule, latestEventFor } from "../calendar/rule-day.ts";
import type { ClockRule } from "../facts/clock-rule.ts";
import type { LineFile } from "../facts/line-file.ts";
import type { Day } from "../time/day.ts";
import { whiteLineRule } from "./white-line.ts";

/** What has to be done by when, for the work to begin on a wished day. */
export interface PlannedStep {
  readonly title: string;
  /** Null: what comes before an event and is none itself, as its title says. */
  readonly event: ClockRule["event"] | null;
  /** The last day for it; null: no day of the year before would do. */
  readonly by: Day | null;
  /** How it was counted, in the rule's own words. */
  readonly sentence: string;
  readonly citation: string;
  /** Its last day has passed already. */
  readonly late: boolean;
}

/**
 * Worked backwards from a wished start: the last day on which each thing may happen that the
 * authority's rules put before the work. Takes the rules that open a window (`not-before`) and those
 * that ask for something so long before the work begins; the others say nothing about a start.
 */
export function planStart(
  file: Pick<LineFile, "authority">,
  start: Day,
  today: Day,
): PlannedStep[] {
  const rules = file.authority?.clockRules ?? [];
  const steps = rules
    .filter((rule) => leadsToStart(rule))
    .map((rule) => stepOf(file, rule, { start, today }));
  return [...whiteLineSteps(file, steps), ...steps].toSorted((one, other) =>
    (one.by ?? "").localeCompare(other.by ?? ""),
  );
}

/** Where the dig area is marked in white before the call, it is marked by the day of the call at the latest. */
function whiteLineSteps(
  file: Pick<LineFile, "authority">,
  steps: readonly PlannedStep[],
): PlannedStep[] {
  const rule = whiteLineRule(file);
  const [call] = steps
    .filter(({ event }) => event === "locate-called")
    .toSorted((one, other) => (one.by ?? "").localeCompare(other.by ?? ""));
  if (rule === null || call === undefined) return [];
  const sentence = "Marked in white before 811 is called.";
  return [{ ...call, event: null, title: WHITE_LINE_STEP, sentence, citation: rule.citation }];
}

const WHITE_LINE_STEP = "White-line the dig area";

function leadsToStart(rule: ClockRule): boolean {
  if (rule.way === "before") return rule.event === "work-begins";
  return rule.meaning === "not-before";
}

function stepOf(
  file: Pick<LineFile, "authority">,
  rule: ClockRule,
  { start, today }: { readonly start: Day; readonly today: Day },
): PlannedStep {
  const holidays = file.authority?.holidays ?? [];
  const by =
    rule.way === "before"
      ? dayOfRule(rule, start, holidays, { mailed: false }).on
      : latestEventFor(rule, start, holidays);
  const counted =
    by === null
      ? null
      : dayOfRule(rule, rule.way === "before" ? start : by, holidays, { mailed: false });
  return {
    title: rule.title,
    event: rule.event,
    by,
    sentence: counted?.sentence ?? "No day within the year before would work.",
    citation: rule.citation,
    late: by === null || by < today,
  };
}
