import Link from "next/link";
import type { Clock } from "#lib/domain/findings/clock.ts";
import { formatNearDay } from "#lib/domain/time/format-day.ts";
import styles from "./due-list.module.css";

/** License, bond and insurance that ran out or will, each leading to where its new date is entered. */
export function CompanyPapers({
  papers,
  day,
}: {
  readonly papers: readonly Clock[];
  readonly day: string;
}) {
  if (papers.length === 0) return null;
  return (
    <div className={styles["papers"]}>
      <h3>Company papers</h3>
      <ul className="plain-list">
        {papers.map(({ key, title, on }) => (
          <li key={key}>
            <Link href="/office">
              {title}: {on < day ? "expired" : "expires"} {formatNearDay(on, day)}
            </Link>
          </li>
        ))}
      </ul>
    </div>
  );
}
