import type { KeyboardEvent, ReactNode } from "react";
import { idsOf } from "#lib/domain/strip/crowds.ts";
import type { StripMark } from "#lib/domain/strip/drawing.ts";
import type { Flag } from "#lib/domain/strip/flags.ts";
import styles from "./strip.module.css";
import { flagKey, type StripPick } from "./strip-part.ts";

/** Something on the drawing that can be chosen. */
export function Chosen({
  stop,
  words,
  ids,
  pick,
  onChoose,
  children,
}: {
  readonly stop: string;
  readonly words: string;
  readonly ids: readonly string[];
  readonly pick: StripPick;
  readonly onChoose: () => void;
  readonly children: ReactNode;
}) {
  const press = (event: KeyboardEvent) => {
    if (event.key !== " ") return;
    event.preventDefault();
    onChoose();
  };
  return (
    // biome-ignore lint/a11y/useSemanticElements: a button element cannot stand inside an SVG
    <g
      role="button"
      tabIndex={pick.tabKey === stop ? 0 : -1}
      aria-pressed={ids.some((id) => pick.chosen.has(id))}
      aria-label={words}
      className={styles["mark"]}
      data-mark={stop}
      onClick={onChoose}
      onKeyDown={press}
    >
      {children}
    </g>
  );
}

/** A single mark that can be chosen. */
export function ChosenMark({
  mark,
  pick,
  children,
}: {
  readonly mark: StripMark;
  readonly pick: StripPick;
  readonly children: ReactNode;
}) {
  return (
    <Chosen
      stop={mark.id}
      words={wordsOf(mark)}
      ids={idsOf(mark)}
      pick={pick}
      onChoose={() => (mark.crowd === undefined ? pick.onSelect(mark.id) : pick.onOpen([mark]))}
    >
      {children}
    </Chosen>
  );
}

/** A mark in a sentence, or by its name and place where that is all that is known yet. */
export function wordsOf({ sentence, label, detail }: StripMark): string {
  if (sentence !== "") return sentence;
  return detail === "" ? label : `${label}, ${detail}`;
}

/** So many of a group are named to whoever does not see it. */
const NAMED = 12;

function namesOf(marks: readonly StripMark[]): string {
  const names = marks.slice(0, NAMED).map((each) => each.label);
  const more = marks.length - names.length;
  return more > 0 ? `${names.join(", ")} and ${more} more` : names.join(", ");
}

/** A flag: one mark to choose, or several to look at closer. */
export function ChosenFlag({
  flag,
  pick,
  children,
}: {
  readonly flag: Flag;
  readonly pick: StripPick;
  readonly children: ReactNode;
}) {
  const { marks, mark } = flag;
  if (marks.length === 1) {
    return (
      <ChosenMark mark={mark} pick={pick}>
        {children}
      </ChosenMark>
    );
  }
  return (
    <Chosen
      stop={flagKey(flag)}
      words={`${flag.label}: ${namesOf(marks)}. Zoom in.`}
      ids={marks.flatMap(idsOf)}
      pick={pick}
      onChoose={() => pick.onOpen(marks)}
    >
      {children}
    </Chosen>
  );
}

/** The words of a flag, on a patch of paper. */
export function Words({
  x,
  y,
  flag,
  quiet = false,
}: {
  readonly x: number;
  readonly y: number;
  readonly flag: Flag;
  readonly quiet?: boolean;
}) {
  const { label, detail, loud } = flag;
  return (
    <g className={loud ? `${styles["words"]} ${styles["loud"]}` : styles["words"]}>
      <rect
        className={styles["patch"]}
        x={x - 1}
        y={y - 13}
        width={Math.max(flag.width - 5, 0)}
        height={detail === "" ? 17 : 32}
      />
      {loud ? <path d={`M${x + 5} ${y - 10}l5 5-5 5-5-5Z`} className={styles["lozenge"]} /> : null}
      <text x={x + (loud ? 13 : 0)} y={y} className={quiet ? styles["quiet"] : styles["label"]}>
        {label}
      </text>
      {detail === "" ? null : (
        <text x={x} y={y + 15} className={styles["detail"]}>
          {detail}
        </text>
      )}
    </g>
  );
}
