import Link from "next/link";
import type { DueThing } from "#lib/domain/desk/answer.ts";
import { dueThings } from "#lib/domain/desk/due.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import type { Report } from "#lib/domain/findings/report.ts";
import styles from "./schedule.module.css";

const KIND_WORDS: Record<DueThing["kind"], string> = {
  late: "overdue",
  due: "due",
  blocked: "blocked",
  waiting: "waiting",
};

/** What is late, due, blocked and waited for on this line, each with the page that settles it. */
export function DueList({ file, report }: { readonly file: LineFile; readonly report: Report }) {
  const things = dueThings(file, report);
  if (things.length === 0) return <p>Nothing due or blocked.</p>;
  return (
    <ul className={`plain-list ${styles["due"]}`}>
      {things.map((thing) => (
        <li key={`${thing.kind} ${thing.question} ${thing.sentence}`}>
          <span>
            <span className={thing.kind === "late" ? "tag strong" : "tag"}>
              {KIND_WORDS[thing.kind]}
            </span>
          </span>
          <Link href={`/lines/${file.line.id}/${thing.where ?? thing.question}`}>
            {thing.sentence}
          </Link>
        </li>
      ))}
    </ul>
  );
}
