import type { FileDrawing, StripChoice } from "#lib/domain/strip/drawing.ts";
import type { StripChosen } from "#lib/domain/strip/gist.ts";
import type { StripLayout } from "#lib/domain/strip/layout.ts";
import styles from "./strip.module.css";
import { wordsOf } from "./strip-chosen.tsx";

/** What is chosen in words, the key to the signs, and what the drawing had no room for. */
export function StripCaption({
  drawing,
  layout,
  selected,
  told,
  choice,
  apart,
  onApart,
}: {
  readonly drawing: FileDrawing;
  readonly layout: StripLayout;
  readonly selected: string | null;
  /** What is chosen, where the drawing itself does not tell it. */
  readonly told: StripChosen | null;
  readonly choice: StripChoice | null;
  readonly apart: boolean;
  readonly onApart: (apart: boolean) => void;
}) {
  const words =
    told?.id === selected && told !== null ? told.sentence : sentenceOf(drawing, selected);
  const loud = [...layout.above, ...layout.below, ...layout.holds].some((flag) => flag.loud);
  return (
    <div className={styles["said"]}>
      {choice === null ? null : (
        <p className={styles["choice"]}>
          <span>
            <strong>Dotted lines: another possible pairing.</strong> {choice.sentence}
          </span>{" "}
          <button type="button" className="link-button" onClick={() => onApart(!apart)}>
            {apart ? "Overlay" : "One above the other"}
          </button>
        </p>
      )}
      {layout.notes.length + drawing.beside.length === 0 ? null : (
        <p className={styles["notes"]}>
          {layout.notes.map((note) => (
            <span key={note.letter}>
              <strong>{note.letter}</strong> {note.words}
            </span>
          ))}
          {drawing.beside.length === 0 ? null : (
            <span>
              Not tied to the main, so not shown:{" "}
              {drawing.beside.map((one) => one.label).join(", ")}
            </span>
          )}
        </p>
      )}
      <p role="status" className={styles["chosen"]}>
        {words === null ? (
          <span className="muted">
            {isBare(drawing) ? (
              "Nothing to show yet. The drawing fills in as you enter records and camera runs."
            ) : (
              <>
                Permit record above the pipe, camera below.
                <span className="screen-only"> Click a mark to find it in the table.</span>
              </>
            )}
            {loud ? (
              <>
                {" "}
                <span className={styles["key"]}>◆</span> undocumented or on hold.
              </>
            ) : null}
          </span>
        ) : (
          words
        )}
      </p>
    </div>
  );
}

function sentenceOf(drawing: FileDrawing, selected: string | null): string | null {
  if (selected === null) return null;
  const { onPipe, above, below, holds, work, spots, beside } = drawing;
  const mark = [...onPipe, ...above, ...below, ...holds, ...work].find(
    (one) => one.id === selected,
  );
  const other = [...spots, ...beside].find((one) => one.id === selected);
  return (mark && wordsOf(mark)) ?? other?.sentence ?? null;
}

function isBare({ above, below, onPipe }: FileDrawing): boolean {
  return above.length + below.length + onPipe.length < 2;
}
