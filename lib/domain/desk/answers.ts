import type { LineFile, Office } from "../facts/line-file.ts";
import type { Report } from "../findings/report.ts";
import { QUESTIONS, type Question, type QuestionAnswer } from "./answer.ts";
import { authorityAnswer } from "./authority-answer.ts";
import { cameraAnswer } from "./camera-answer.ts";
import { costAnswer } from "./cost-answer.ts";
import { historyAnswer } from "./history-answer.ts";
import { noticesAnswer } from "./notices-answer.ts";
import { reconcileAnswer } from "./reconcile-answer.ts";
import { recordAnswer } from "./record-answer.ts";
import type { Reply } from "./reply.ts";
import { responsibilityAnswer } from "./responsibility-answer.ts";
import { scheduleAnswer } from "./schedule-answer.ts";
import { whoAnswer } from "./who-answer.ts";

/** The questions as they stand on the screen. */
const ASKED: Record<Question, string> = {
  who: "Who is on it?",
  record: "What is on record?",
  camera: "What did the camera see?",
  reconcile: "Does the record match the camera?",
  responsibility: "Who is responsible for what?",
  cost: "What does it cost, and who pays?",
  notices: "Who has been notified?",
  authority: "What does the authority need?",
  schedule: "What happens next?",
  history: "What happened?",
};

const ANSWERED: Record<Question, (file: LineFile, report: Report, office: Office | null) => Reply> =
  {
    who: whoAnswer,
    record: recordAnswer,
    camera: cameraAnswer,
    reconcile: reconcileAnswer,
    responsibility: responsibilityAnswer,
    cost: costAnswer,
    notices: noticesAnswer,
    authority: authorityAnswer,
    schedule: scheduleAnswer,
    history: historyAnswer,
  };

/**
 * The ten questions of a line's file, in their order, each with its answer so far and what would
 * close it. On a closed line nothing presses any more; what was left open still shows. The
 * office decides which day a moment falls on and whether its own papers are in force; without it
 * days are those of UTC and its papers are not counted.
 */
export function answersOn(
  file: LineFile,
  report: Report,
  office: Office | null = null,
): QuestionAnswer[] {
  const isClosed = file.line.closedOn !== null;
  return QUESTIONS.map((question) => {
    const reply = ANSWERED[question](file, report, office);
    const pressing = isClosed ? 0 : reply.pressing;
    return { question, asked: ASKED[question], ...reply, pressing };
  });
}
