import type { KeyboardEvent, ReactNode } from "react";
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
      words={mark.sentence === "" ? mark.label : mark.sentence}
      ids={[mark.id]}
      pick={pick}
      onChoose={() => pick.onSelect(mark.id)}
    >
      {children}
    </Chosen>
  );
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
      words={`${flag.label}: ${marks.map((each) => each.label).join(", ")}. Zoom in.`}
      ids={marks.map((each) => each.id)}
      pick={pick}
      onChoose={() => pick.onOpen(flag)}
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
