import type { LineFile, Office } from "../facts/line-file.ts";
import type { Report } from "../findings/report.ts";
import type { DueThing, OpenAnswer, Question } from "./answer.ts";
import { answersOn } from "./answers.ts";
import { dueThings } from "./due.ts";
import { type LineDate, lineDates } from "./line-dates.ts";
import { PRESSING } from "./reply.ts";

/** What the desk and lists of lines say of a line. */
export interface LineSummary {
  readonly lineId: string;
  readonly sentence: string;
  /** The page that settles what presses most; null where nothing does. */
  readonly question: Question | null;
  /** Higher is more pressing; 0: closed, or nothing left to do. */
  readonly pressing: number;
  readonly closed: boolean;
  /** Stands on the desk: open, or a reply waits on it. */
  readonly waiting: boolean;
  /** The most pressing questions that are open, as many as the desk shows. */
  readonly open: readonly OpenAnswer[];
  readonly openCount: number;
  readonly things: readonly DueThing[];
  /** What the office's calendar shows of it. */
  readonly dates: readonly LineDate[];
}

/** So many open questions of a line stand on the desk. */
const SHOWN = 3;

const KIND_PRESSES: Record<DueThing["kind"], number> = {
  late: PRESSING.late,
  due: PRESSING.soon,
  blocked: PRESSING.holds,
  waiting: PRESSING.someTime,
};

/** Sums a line up: its most pressing things in one sentence, its open questions, what is due. */
export function summaryOf(
  file: LineFile,
  report: Report,
  office: Office | null = null,
): LineSummary {
  const { id: lineId, closedOn } = file.line;
  const things = dueThings(file, report);
  const open = answersOn(file, report, office)
    .filter(({ pressing }) => pressing > 0)
    .toSorted((one, other) => other.pressing - one.pressing);
  const [openFirst] = open;
  const [first, second] = things;
  const said = [first, second].flatMap((thing) => thing?.sentence ?? []);
  const closed = closedOn !== null;
  return {
    lineId,
    sentence:
      said.length > 0
        ? said.join(". ")
        : (openFirst?.closes ?? (closed ? "Closed" : "Nothing due")),
    question: first?.question ?? openFirst?.question ?? null,
    pressing: Math.max(
      0,
      openFirst?.pressing ?? 0,
      ...things.map(({ kind }) => KIND_PRESSES[kind]),
    ),
    closed,
    waiting: !closed || things.length > 0,
    open: open.slice(0, SHOWN).map(({ pressing: _pressing, ...answer }) => answer),
    openCount: open.length,
    things,
    dates: lineDates(file, report, things),
  };
}
