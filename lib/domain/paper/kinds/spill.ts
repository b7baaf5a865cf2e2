import type { LineFile } from "../../facts/line-file.ts";
import type { SpillStep, SpillStepKind } from "../../facts/spill-step.ts";
import type { Report } from "../../findings/report.ts";
import { formatDay } from "../../time/format-day.ts";
import { aboutProperty, atEvery, EVERYBODY, publicBodies } from "../addressed.ts";
import { heading, list, paragraph, table } from "../common.ts";
import type { LetterFacts } from "../facts.ts";
import { phoneRows } from "../hours.ts";
import type { LetterBlock } from "../letter.ts";
import type { LetterPlan } from "../letter-plan.ts";

/** Everybody on the line is told to keep away; authorities get figures and no advice. */
export const SPILL: LetterPlan = {
  title: {
    en: "Sewage spill, please keep away",
    es: "Derrame de aguas negras, manténgase lejos",
  },
  // A report to an authority asks nobody to keep away.
  titleFor: (facts) => (isAuthority(facts) ? facts.words.spill.reportTitle : null),
  recipients: (file) => [
    ...atEvery(file, file.properties.map(aboutProperty), EVERYBODY),
    ...publicBodies(file),
  ],
  body: spillBody,
  choices: (facts) => (isAuthority(facts) ? [] : facts.words.spill.choices),
  cautions: ["sewage", "gas"],
  gaps: [hasSpill],
  due: spilled,
};

function hasSpill(facts: LetterFacts): string | null {
  const steps = spillSteps(facts);
  const known = steps.find(({ kind }) => kind === "known");
  if (known === undefined || known.place === "")
    return "When and where the spill was first noticed is not entered.";
  if (!isAuthority(facts)) return null;
  const lacks = [
    ...(known.at === "" ? ["the hour at which it was noticed"] : []),
    ...(known.gallons === null ? ["the estimated volume"] : []),
    ...(known.reached === "" ? ["what it reached"] : []),
    ...(steps.some(({ kind }) => kind === "flow-stopped") ? [] : ["whether the flow was stopped"]),
    ...(steps.some(({ kind }) => kind === "reported") ? [] : ["who was told, and when"]),
  ];
  return lacks.length === 0 ? null : `For the report, ${lacks.join(", ")} is not entered.`;
}

function spilled({ spillSteps }: LineFile, { today }: Report) {
  const known = spillSteps.findLast(({ kind }) => kind === "known");
  return known === undefined
    ? null
    : { because: `A spill is on file, ${formatDay(known.on, today)}`, since: known.on };
}

/** The steps of the spill that is known last, in their order. */
function spillSteps({ file }: LetterFacts): SpillStep[] {
  const steps = file.spillSteps.toSorted(
    (one, other) => one.on.localeCompare(other.on) || one.at.localeCompare(other.at),
  );
  const known = steps.findLastIndex(({ kind }) => kind === "known");
  return steps.slice(Math.max(known, 0));
}

/** Whether the reader is an authority, which gets figures and no advice. */
function isAuthority({ party }: LetterFacts): boolean {
  return party.kind === "public-body";
}

/** What happened, as it was entered and no more; to a resident, what to do. */
function spillBody(facts: LetterFacts): LetterBlock[] {
  const { words, place } = facts;
  const { spill } = words;
  const steps = spillSteps(facts);
  const known = steps.find(({ kind }) => kind === "known");
  const where = known === undefined || known.place === "" ? place : words.typed(known.place);
  const lines = steps.map((step) => stepLine(facts, step));
  const happened = isAuthority(facts) ? [...lines, ...figures(facts, known, steps)] : lines;
  return [
    paragraph(spill.opening(where)),
    ...(isAuthority(facts) ? [] : [heading(spill.do), ...list(spill.doLines)]),
    ...(happened.length === 0 ? [] : [heading(spill.happened), ...list(happened)]),
    ...table(words.visit.head, phoneRows(facts)),
  ];
}

function stepLine({ words, office }: LetterFacts, step: SpillStep): string {
  const { spill } = words;
  const moment = words.moment(step.on, step.at);
  const lines: Record<SpillStepKind, () => string> = {
    known: () => spill.known(moment),
    "office-called": () => spill.called(office.name, moment),
    "crew-on-site": () => spill.onSite(moment),
    "flow-stopped": () => spill.stopped(moment),
    reported: () => spill.reported(step.place, moment, step.number),
    "cleaned-up": () => spill.cleaned(moment),
  };
  return lines[step.kind]();
}

function figures(
  { words }: LetterFacts,
  known: SpillStep | undefined,
  steps: readonly SpillStep[],
): string[] {
  const { spill } = words;
  const reached = known?.reached ?? "";
  const stopped = steps.some(({ kind }) => kind === "flow-stopped");
  return [
    spill.volume(known?.gallons ?? null),
    spill.reached(reached === "" ? "" : words.typed(reached)),
    ...(stopped ? [] : [spill.notStopped]),
    ...(steps.some(({ kind }) => kind === "reported") ? [] : [spill.notReported]),
  ];
}
