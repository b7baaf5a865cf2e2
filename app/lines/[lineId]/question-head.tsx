import Link from "next/link";
import { PageHead } from "#app/_components/page-head.tsx";
import type { Question } from "#lib/domain/desk/answer.ts";
import { Closes } from "./closes.tsx";
import { lineFileOf } from "./file.ts";
import { nextStep } from "./start-here.tsx";

/** The head of a question's page: what is asked, the answer so far, what would close it. */
export async function QuestionHead({
  lineId,
  question,
  toldBelow = null,
}: {
  readonly lineId: string;
  readonly question: Question;
  /** What is done there stands in a box of its own under this head, and is not said twice. */
  readonly toldBelow?: string | null;
}) {
  const { answers, file } = await lineFileOf(lineId);
  const answer = answers.find((each) => each.question === question);
  if (answer === undefined) throw new Error(`No answer to the question ${question}`);
  const { closes, where } = answer;
  const told = where !== undefined && where === toldBelow;
  const next = closes === null ? nextStep(file) : null;
  return (
    <PageHead
      asked={answer.asked}
      answer={answer.sentence}
      closes={closes === null || told ? null : <Closes lineId={lineId} answer={answer} />}
    >
      {next === null || next.where === question ? null : (
        <p className="page-closes screen-only">
          <span className="muted">Next: </span>
          <Link href={`/lines/${lineId}/${next.where}`}>{next.what}</Link>
        </p>
      )}
    </PageHead>
  );
}
