import { depthOf } from "#lib/domain/strip/flags.ts";
import type { StripLayout } from "#lib/domain/strip/layout.ts";
import styles from "./strip.module.css";

/** What each row of the drawing is, at its left. */
export function Titles({ layout }: { readonly layout: StripLayout }) {
  return titlesOf(layout).map(({ words, y }) => (
    <text key={`${words}${y}`} x={0} y={y} className={styles["rowTitle"]}>
      {words}
    </text>
  ));
}

function titlesOf(layout: StripLayout): { words: string; y: number }[] {
  const { above, below, holds } = layout;
  return [
    ...(holds.length === 0 ? [] : [{ words: "Holds", y: layout.holdsY + 13 }]),
    ...(above.length === 0 ? [] : [{ words: "Record", y: layout.recordY + 4 }]),
    ...(below.length === 0
      ? []
      : [{ words: "Camera", y: layout.belowY + Math.min(depthOf(below), 16) - 2 }]),
    { words: "← flow", y: layout.rulerY + 4 },
    ...layout.rows.map((row) => ({ words: row.title, y: row.top + 16 })),
    ...layout.runs.map((row) => ({ words: short(row.run.name), y: row.top + row.height / 2 + 4 })),
    ...layout.bands.map((band) => ({ words: band.title, y: band.top + 17 })),
  ];
}

/** A name of a run that fits the margin. */
function short(name: string): string {
  return name.length <= 9 ? name : `${name.slice(0, 8)}…`;
}
