import type { LineFile, Office } from "../file/line-file.ts";
import type { Report } from "../file/report.ts";
import type { DueThing, Question } from "./answer.ts";
import { answersOn } from "./answers.ts";
import { dueThings } from "./due.ts";
import { PRESSING } from "./reply.ts";

/** One line of the desk. */
export interface DeskLine {
  readonly lineId: string;
  readonly name: string;
  readonly sentence: string;
  /** The page that settles what presses most; null where nothing does. */
  readonly question: Question | null;
  /** Higher is more pressing; 0: closed, or nothing left to do. */
  readonly pressing: number;
  readonly things: readonly DueThing[];
}

const KIND_PRESSES: Record<DueThing["kind"], number> = {
  late: PRESSING.late,
  due: PRESSING.soon,
  blocked: PRESSING.holds,
  waiting: PRESSING.someTime,
};

/** A line's most pressing things in one sentence, for the desk and for lists of lines. */
export function deskLine(file: LineFile, report: Report, office: Office | null = null): DeskLine {
  const { id: lineId, name, closedOn } = file.line;
  const things = dueThings(file, report);
  const open = answersOn(file, report, office).filter(({ pressing }) => pressing > 0);
  const [openFirst] = open.toSorted((one, other) => other.pressing - one.pressing);
  const [first, second] = things;
  const said = [first, second].flatMap((thing) => thing?.sentence ?? []);
  const rest = closedOn === null ? "Nothing is due" : "Closed";
  return {
    lineId,
    name,
    sentence: said.length > 0 ? said.join(". ") : (openFirst?.closes ?? rest),
    question: first?.question ?? openFirst?.question ?? null,
    pressing: Math.max(
      0,
      openFirst?.pressing ?? 0,
      ...things.map(({ kind }) => KIND_PRESSES[kind]),
    ),
    things,
  };
}

/** The lines in the order in which they press; equal ones by name. */
export function inDeskOrder(lines: readonly DeskLine[]): DeskLine[] {
  return lines.toSorted(
    (one, other) => other.pressing - one.pressing || one.name.localeCompare(other.name),
  );
}
