import type { LineFile } from "../facts/line-file.ts";
import type { ScopeItem } from "../facts/scope.ts";
import type { TieInFinding } from "../findings/report.ts";
import { mustChooseOption, workInForce } from "../sharing/scope-in-force.ts";
import { kindsOf } from "../split/work-deeds.ts";

/** What is known of a condition; what nobody said is unknown, never no. */
export interface Answer {
  readonly answer: "yes" | "no" | "unknown";
  /** Completes “because”: `“Spot repair” is dug from 0.0 to 12.0 ft`. */
  readonly because: string;
}

/** What a condition is answered from. */
export interface ConditionSite {
  readonly file: ConditionFile;
  readonly tieIns: readonly TieInFinding[];
}

export type ConditionFile = Pick<
  LineFile,
  | "authority"
  | "land"
  | "crossings"
  | "properties"
  | "points"
  | "levels"
  | "scope"
  | "options"
  | "changeOrders"
  | "surfaceCuts"
> & { readonly line: Pick<LineFile["line"], "optionId" | "upperEnd"> };

export function yes(because: string): Answer {
  return { answer: "yes", because };
}

export function no(because: string): Answer {
  return { answer: "no", because };
}

export function unknown(because: string): Answer {
  return { answer: "unknown", because };
}

/** Any of several is enough; one that is unknown leaves the whole unknown. */
export function anyOf(answers: readonly Answer[], none: Answer): Answer {
  const found =
    answers.find(({ answer }) => answer === "yes") ??
    answers.find(({ answer }) => answer === "unknown");
  return found ?? none;
}

/** What is to be done, and whether it is sure that it will be. */
interface Work {
  readonly item: ScopeItem;
  readonly sure: boolean;
}

/** The work to come: unsure where nobody said its kind, or where it is of an option that nobody chose. */
export function workOf({ file }: ConditionSite): readonly Work[] {
  const open = mustChooseOption(file);
  return workInForce(file).map((item) => ({
    item,
    sure: item.kind !== "unknown" && (!open || item.optionId === null),
  }));
}

export const NO_WORK = unknown("no work is entered yet");

/** Whether some work passes a test on what it may be; `isSo` and `isNone` complete “because”. */
export function workIs(
  site: ConditionSite,
  test: (item: ScopeItem) => boolean,
  { isSo, isNone }: { readonly isSo: (title: string) => string; readonly isNone: string },
): Answer {
  const work = workOf(site);
  if (work.length === 0) return NO_WORK;
  return anyOf(
    work
      .filter(({ item }) => test(item))
      .map(({ item, sure }) => (sure ? yes(isSo(item.title)) : unknown(unsureWords(item)))),
    no(isNone),
  );
}

/** Why it is not sure what a piece of work comes to. */
export function unsureWords(item: ScopeItem): string {
  return item.kind === "unknown"
    ? `the work type of “${item.title}” is not set`
    : `no repair option is selected, and “${item.title}” is part of one`;
}

/** Whether a piece of work may be of a kind. */
export function mayBe(item: ScopeItem, kind: ScopeItem["kind"], { file }: ConditionSite): boolean {
  return kindsOf(item, file).includes(kind);
}
