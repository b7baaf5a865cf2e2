import { Heads } from "#app/_components/heads.tsx";
import { Scroll } from "#app/_components/scroll.tsx";
import stacks from "#app/_components/stacks.module.css";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import { videoTime } from "#lib/domain/facts/video.ts";
import { formatFeet, plainFeet } from "#lib/domain/length/station.ts";
import { streetOf } from "#lib/domain/party/stakeholders.ts";
import { sideWords } from "#lib/domain/plan/side-words.ts";
import type { Measured, TallyRow, TallyState } from "#lib/domain/reconnection/tally.ts";
import styles from "./reconnections.module.css";

/** What stands open, beside a sign that tells it without its color. */
const STATE_WORDS: Record<TallyState, string> = {
  unproven: "Stop: owner not proven",
  unmeasured: "Stop: measure both ends",
  apart: "Stop: ends do not match",
  ready: "Measured; OK to close",
  "open-again": "Open again",
};

/** The tally for the crew: on a screen, and on a sheet of paper with room to write. */
export function TallyTable({
  tally,
  file,
}: {
  readonly tally: readonly TallyRow[];
  readonly file: LineFile;
}) {
  return (
    <Scroll>
      <table className={`plain ${stacks["stacks"]} ${stacks["read"]}`}>
        <Heads
          of={[
            "Branch",
            { num: "By the lower end, ft" },
            { num: "By the upper end, ft" },
            { num: "Difference, ft" },
            "Before the work",
            "Seen open after",
          ]}
        />
        <tbody>
          {tally.map((row) => (
            <Row key={row.tieInId} row={row} file={file} />
          ))}
        </tbody>
      </table>
    </Scroll>
  );
}

function Row({ row, file }: { readonly row: TallyRow; readonly file: LineFile }) {
  const { finding, difference, state, allowed } = row;
  const property = file.properties.find(({ id }) => id === finding.propertyId);
  const isOpen = state !== "ready" && state !== "open-again";
  return (
    <tr>
      <th scope="row">
        {row.label}
        <span className={`muted small ${styles["beneath"]}`}>
          {sideWords(finding.side, finding.compass)},{" "}
          {property === undefined ? "owner unknown" : streetOf(property.address)}
        </span>
      </th>
      <Place measured={row.lower} label="By the lower end, ft" />
      <Place measured={row.upper} label="By the upper end, ft" />
      <td className="num" data-label="Difference, ft">
        {difference === null ? "–" : plainFeet(Math.abs(difference))}
        <span className={`muted small ${styles["beneath"]}`}>at most {plainFeet(allowed)}</span>
      </td>
      <td data-label="Before the work">
        {isOpen ? <span className="tag tag-loud">{STATE_WORDS[state]}</span> : STATE_WORDS[state]}
      </td>
      <td className="nowrap" data-label="Seen open after">
        {openWords(row, file)}
      </td>
    </tr>
  );
}

function Place({
  measured,
  label,
}: {
  readonly measured: Measured | null;
  readonly label: string;
}) {
  return (
    <td className="num" data-label={label}>
      {measured === null ? (
        <span className={styles["blank"]}>not measured</span>
      ) : (
        <>
          {plainFeet(measured.station)}
          <span className={`muted small ${styles["beneath"]}`}>{measured.by}</span>
        </>
      )}
    </td>
  );
}

function openWords({ row, state }: TallyRow, { runs }: LineFile): string {
  if (row === null || state !== "open-again") return "☐ at ____ : ____";
  const run = runs.find(({ id }) => id === row.openedRunId)?.name || "the second video";
  return `☑ ${run} at ${videoTime(row.openedSecond ?? 0)}, by ${row.openedBy}`;
}

/** Where the crew may go in, for the head of the sheet. */
export function accessWords({ points, line }: Pick<LineFile, "points" | "line">): string {
  const ways = points
    .filter(({ kind }) => kind === "cleanout" || kind === "manhole")
    .map(
      ({ kind, station, note }) =>
        `${kind} at ${formatFeet(station)}${note === "" ? "" : ` (${note})`}`,
    );
  const end = line.upperEnd === null ? [] : [`upper end at ${formatFeet(line.upperEnd)}`];
  return ["main connection at 0.0 ft", ...ways, ...end].join(", ");
}
