import type { LineFile } from "../../facts/line-file.ts";
import type { Report } from "../../findings/report.ts";
import { permitStateOf } from "../../permit/steps.ts";
import type { Day } from "../../time/day.ts";
import { formatDay } from "../../time/format-day.ts";
import { publicBodies } from "../addressed.ts";
import { heading, list, paragraph, workBegins, workLines } from "../common.ts";
import type { LetterFacts } from "../facts.ts";
import type { LetterBlock } from "../letter.ts";
import type { LetterPlan } from "../letter-plan.ts";
import { letterStrip } from "../letter-strip.ts";

/** Authorities are answered what they ordered or asked to correct: the case, the plan, the dates. */
export const AUTHORITY_RESPONSE: LetterPlan = {
  title: {
    en: "Response regarding the shared private sewer",
    es: "Respuesta sobre el desagüe privado compartido",
  },
  recipients: publicBodies,
  ownProse: true,
  body: responseBody,
  choices: () => [],
  cautions: ["records", "official"],
  gaps: [],
  due: authorityAsked,
};

const ASKS = ["returned-incomplete", "corrections", "denied"] as const;

function authorityAsked(file: LineFile, { today }: Report) {
  const asking = file.permits.find((permit) =>
    ASKS.some((state) => state === permitStateOf(file, permit)),
  );
  if (asking !== undefined) {
    const step = file.permitSteps.findLast(({ permitId }) => permitId === asking.id);
    return { because: "The authority sent the permit back", since: step?.on ?? "" };
  }
  const order = file.events.findLast(({ event }) => event === "authority-order");
  return order === undefined
    ? null
    : { because: `The authority gave an order ${formatDay(order.on, today)}`, since: order.on };
}

/** To the authority: what its order or corrections are answered with. Counts only, no names. */
function responseBody(facts: LetterFacts): LetterBlock[] {
  const { file, words } = facts;
  const { response } = words;
  const begins = workBegins(facts);
  return [
    paragraph(response.opening(file.line.name)),
    heading(response.about),
    ...list(orderLines(facts)),
    heading(response.state),
    ...list(stateLines(facts)),
    heading(response.dates),
    paragraph(startLine(facts, begins)),
    heading(response.plan),
    ...list(workLines(facts)),
    letterStrip(facts, "work"),
  ];
}

/** A day that is past is not planned any more; whether work began on it is another fact. */
function startLine({ words, report }: LetterFacts, begins: Day | null): string {
  const { response } = words;
  if (begins === null) return response.noStart;
  const say = begins < report.today ? response.begun : response.start;
  return say(words.weekday(begins));
}

function orderLines({ file, words }: LetterFacts): string[] {
  const lines = file.events.flatMap(({ event, on, reference }) => {
    if (event === "authority-order") return [words.response.order(words.day(on), reference)];
    if (event === "corrections-asked")
      return [words.response.corrections(words.day(on), reference)];
    return [];
  });
  return lines.length === 0 ? [words.response.noOrder] : lines;
}

function stateLines({ file, report, words }: LetterFacts): string[] {
  const undocumented = report.tieIns.filter(({ standing }) => standing === "undocumented").length;
  const open = report.holds.filter(
    ({ waiver, cause }) => waiver === null && cause !== "household-need",
  ).length;
  const numbers = file.permits.map(({ number }) => number).filter((number) => number !== "");
  return [
    words.response.owners(file.properties.length),
    words.response.connections(report.tieIns.length, undocumented),
    words.response.holds(open),
    numbers.length === 0
      ? words.response.noPermit
      : words.response.permits(words.list(numbers.map(words.start.permit))),
  ];
}
