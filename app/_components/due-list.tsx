import Link from "next/link";
import type { NamedThing } from "#app/desk.ts";
import type { DueKind } from "#lib/domain/desk/answer.ts";
import { formatBriefDay } from "#lib/domain/time/format-day.ts";
import styles from "./due-list.module.css";

export const DUE_TITLES: Readonly<Record<DueKind, string>> = {
  late: "Overdue",
  due: "Due",
  blocked: "Blocked",
  waiting: "Waiting on others",
};

/** Things that are due, each with its day and its line. */
export function DueList({
  things,
  day,
}: {
  readonly things: readonly NamedThing[];
  readonly day: string;
}) {
  return (
    <ul className={styles["things"]}>
      {things.map((thing) => (
        <li key={`${thing.lineId} ${thing.question} ${thing.sentence}`}>
          <span className={styles["when"]}>
            {thing.on === null ? "" : formatBriefDay(thing.on, day)}
          </span>
          <Link href={`/lines/${thing.lineId}/${thing.where ?? thing.question}`}>
            {thing.sentence}
          </Link>
          <span className="muted">{thing.lineName}</span>
        </li>
      ))}
    </ul>
  );
}
