"use client";

import Link from "next/link";
import { useSelectedLayoutSegments } from "next/navigation";
import { useState } from "react";
import type { Question } from "#lib/domain/desk/answer.ts";
import styles from "./line-nav.module.css";

interface NavAnswer {
  readonly question: Question;
  readonly asked: string;
  readonly open: boolean;
  readonly parts: readonly NavPart[];
}

interface NavPart {
  readonly slug: string;
  readonly name: string;
  readonly open: boolean;
}

/** The ten questions, compact, each told open where work is left; under the one shown, its pages. */
export function LineNav({
  lineId,
  answers,
}: {
  readonly lineId: string;
  readonly answers: readonly NavAnswer[];
}) {
  const [segment = null, slug = ""] = useSelectedLayoutSegments();
  const [unfolded, setUnfolded] = useState(false);
  // The page of all ten questions is the list itself.
  if (!answers.some((answer) => answer.question === segment)) return null;
  return (
    <nav aria-label="Questions on this line" className={styles["nav"]}>
      <button
        type="button"
        className={styles["fold"]}
        aria-expanded={unfolded}
        aria-controls="line-questions"
        onClick={() => setUnfolded(!unfolded)}
      >
        {unfolded ? "Hide the questions" : "All questions"}
      </button>
      <ol id="line-questions" className={styles["list"]} data-unfolded={unfolded}>
        <li>
          <Link href={`/lines/${lineId}`}>All ten questions</Link>
        </li>
        {answers.map((answer) => (
          <li key={answer.question}>
            <Link
              href={`/lines/${lineId}/${answer.question}`}
              aria-current={currentOf(segment === answer.question, answer.parts.length > 0)}
              onClick={() => setUnfolded(false)}
            >
              <span>{answer.asked}</span>
              {answer.open ? <span className={styles["open"]}>open</span> : null}
            </Link>
            {segment === answer.question && answer.parts.length > 0 ? (
              <Parts
                at={`/lines/${lineId}/${answer.question}`}
                here={slug}
                parts={answer.parts}
                onChosen={() => setUnfolded(false)}
              />
            ) : null}
          </li>
        ))}
      </ol>
    </nav>
  );
}

/** The question itself is the page shown only where it has no pages of its own under it. */
function currentOf(isHere: boolean, hasParts: boolean) {
  if (!isHere) return undefined;
  return hasParts ? "true" : "page";
}

function Parts({
  at,
  here,
  parts,
  onChosen,
}: {
  readonly at: string;
  readonly here: string;
  readonly parts: readonly NavPart[];
  readonly onChosen: () => void;
}) {
  return (
    <ol className={styles["parts"]}>
      {parts.map((part) => (
        <li key={part.slug}>
          <Link
            href={part.slug === "" ? at : `${at}/${part.slug}`}
            aria-current={part.slug === here ? "page" : undefined}
            onClick={onChosen}
          >
            <span>{part.name}</span>
            {part.open ? <span className={styles["open"]}>open</span> : null}
          </Link>
        </li>
      ))}
    </ol>
  );
}
