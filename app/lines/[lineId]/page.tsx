import type { Metadata } from "next";
import Link from "next/link";
import { Section } from "#app/_components/section.tsx";
import { db } from "#app/db.ts";
import { keeperOf } from "#db/queries/summary.ts";
import { listUsers } from "#db/queries/user.ts";
import type { QuestionAnswer } from "#lib/domain/desk/answer.ts";
import { mayDo } from "#lib/domain/facts/user.ts";
import { formatDay } from "#lib/domain/time/format-day.ts";
import { AboutLine, pipeWords } from "./about-line.tsx";
import { Closes } from "./closes.tsx";
import { lineFileOf } from "./file.ts";
import styles from "./overview.module.css";
import { isBegun, StartHere } from "./start-here.tsx";

interface Props {
  readonly params: Promise<{ lineId: string }>;
}

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  const { file } = await lineFileOf((await params).lineId);
  return { title: file.line.name };
}

export default async function OverviewPage({ params }: Props) {
  const { lineId } = await params;
  const { file, report, answers, user } = await lineFileOf(lineId);
  const open = answers.filter((answer) => answer.pressing > 0).length;
  return (
    <>
      <div className="page-head">
        <h1 className="page-asked">All ten questions</h1>
        <p className="display">{standing(open, answers.length)}</p>
        <p className="muted">
          Opened {formatDay(file.line.openedOn, report.today)}
          {file.authority === null ? "" : `, ${file.authority.name}`}
          {file.line.closedOn === null
            ? ""
            : `, closed ${formatDay(file.line.closedOn, report.today)}`}
        </p>
      </div>
      {isBegun(file) ? null : <StartHere lineId={lineId} file={file} />}
      <nav aria-label="Questions on this line">
        <ol className={styles["questions"]}>
          {answers.map((answer) => (
            <Answer key={answer.question} lineId={lineId} answer={answer} />
          ))}
        </ol>
      </nav>
      <Section title="Line details" id="about" folded={pipeWords(file)}>
        <AboutLine
          file={file}
          today={report.today}
          may={mayDo(user.role, "work-the-file")}
          keeper={keeperOf(db(), lineId)}
          users={listUsers(db())}
        />
      </Section>
    </>
  );
}

function standing(open: number, of: number): string {
  if (open === 0) return "All ten questions are answered";
  return `${open} of ${of} questions ${open === 1 ? "is" : "are"} open`;
}

function Answer({ lineId, answer }: { readonly lineId: string; readonly answer: QuestionAnswer }) {
  return (
    <li data-open={answer.pressing > 0}>
      <h2 className={styles["asked"]}>
        <Link href={`/lines/${lineId}/${answer.question}`}>{answer.asked}</Link>
      </h2>
      <div>
        <p className={styles["answer"]}>{answer.sentence}</p>
        {answer.closes === null ? null : (
          <p className={styles["closes"]}>
            <span className={styles["todo"]}>To do</span> <Closes lineId={lineId} answer={answer} />
          </p>
        )}
      </div>
    </li>
  );
}
