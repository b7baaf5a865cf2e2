import Link from "next/link";
import type { LetterDue } from "#lib/domain/desk/letters-due.ts";
import { counted } from "../names.ts";
import { LETTER_WORDS } from "../terms.ts";
import styles from "./due-letters.module.css";

/** The letters that the file calls for now, each with the way to write it. */
export function DueLetters({
  lineId,
  due,
}: {
  readonly lineId: string;
  readonly due: readonly LetterDue[];
}) {
  return (
    <ul className={`plain-list screen-only ${styles["letters"]}`} aria-label="Letters due now">
      {due.map(({ kind, because, recipients }) => (
        <li key={kind}>
          <span className="tag">due now</span>{" "}
          <Link href={`/lines/${lineId}/notices/write?kind=${kind}`} className="strong">
            {LETTER_WORDS[kind]} to {counted(recipients.length, "recipient")}
          </Link>{" "}
          <span className="muted">{because}.</span>
        </li>
      ))}
    </ul>
  );
}
