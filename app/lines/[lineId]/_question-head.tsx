import { PageHead } from "#app/_components/page-head.tsx";
import type { Question } from "#lib/domain/desk/answer.ts";
import { answersOn } from "#lib/domain/desk/answers.ts";
import type { LineFile } from "#lib/domain/file/line-file.ts";
import type { Report } from "#lib/domain/file/report.ts";

/** The head of a question's page: what is asked, the answer so far, what would close it. */
export function QuestionHead({
  file,
  report,
  question,
}: {
  readonly file: LineFile;
  readonly report: Report;
  readonly question: Question;
}) {
  const answer = answersOn(file, report).find((each) => each.question === question);
  if (answer === undefined) throw new Error(`No answer to the question ${question}`);
  return <PageHead asked={answer.asked} answer={answer.sentence} closes={answer.closes} />;
}
