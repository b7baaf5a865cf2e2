import { formatFeet, plainFeet } from "#lib/domain/length/station.ts";
import type { FileDrawing, StripBand, StripMark } from "#lib/domain/strip/drawing.ts";
import { Heads } from "./heads.tsx";

/** The drawing in words: everything that it shows, in tables. */
export function StripTable({ drawing }: { readonly drawing: FileDrawing }) {
  const { above, below, onPipe, holds, work, runs, beside, choices } = drawing;
  const marks = [...onPipe, ...above, ...below, ...work].toSorted(
    (one, other) => one.station - other.station,
  );
  const bands = [{ title: "Pipe", cells: drawing.pipes }, ...drawing.bands];
  return (
    <div className="scroll stack">
      <MarkTable drawing={drawing} marks={marks} title={drawing.title} />
      {drawing.north == null ? null : <p>{drawing.north.sentence}</p>}
      {holds.length === 0 ? null : <MarkTable drawing={drawing} marks={holds} title="Holds" />}
      {runs.length === 0 ? null : (
        <table className="plain">
          <caption>What each run saw</caption>
          <Heads of={["Run", "Sections", "Result"]} />
          <tbody>
            {runs.map((run) => (
              <tr key={run.id}>
                <th scope="row">{run.name}</th>
                <td>{cellWords(run.cells)}</td>
                <td>{run.sentence}</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
      <table className="plain">
        <caption>Along the pipe</caption>
        <tbody>
          {bands.map((band) => (
            <tr key={band.title}>
              <th scope="row">{band.title}</th>
              <td>{cellWords(band.cells)}</td>
            </tr>
          ))}
        </tbody>
      </table>
      {beside.length + choices.length === 0 ? null : (
        <ul>
          {beside.map((one) => (
            <li key={one.id}>{one.sentence}</li>
          ))}
          {choices.map((one) => (
            <li key={one.key}>Another possible pairing: {one.sentence}</li>
          ))}
        </ul>
      )}
    </div>
  );
}

function MarkTable({
  drawing,
  marks,
  title,
}: {
  readonly drawing: FileDrawing;
  readonly marks: readonly StripMark[];
  readonly title: string;
}) {
  return (
    <table className="plain">
      <caption>{title}</caption>
      <Heads
        of={[
          { num: "Station, ft" },
          { num: "Uncertainty, ± ft" },
          "Mark",
          "Paired with",
          "What it is",
        ]}
      />
      <tbody>
        {marks.map((mark) => (
          <tr key={mark.id}>
            <td className="num">
              {plainFeet(mark.station)}
              {mark.toStation === null ? "" : `–${plainFeet(mark.toStation)}`}
            </td>
            <td className="num">{mark.whisker === 0 ? "" : plainFeet(mark.whisker)}</td>
            <th scope="row">{mark.label}</th>
            <td>{pairedWords(drawing, mark)}</td>
            <td>{mark.sentence}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

const STATES = {
  accepted: "",
  proposed: ", proposed",
  alternative: ", close alternative",
} as const;

function pairedWords(drawing: FileDrawing, mark: StripMark): string {
  const names = new Map([...drawing.above, ...drawing.below].map((one) => [one.id, one.label]));
  return drawing.joins
    .filter((join) => join.entryId === mark.id || join.tieInId === mark.id)
    .map((join) => {
      const other = names.get(join.entryId === mark.id ? join.tieInId : join.entryId) ?? "";
      const apart =
        join.distance === undefined ? "" : `, ${formatFeet(Math.abs(join.distance))} difference`;
      return `${other}${apart}${STATES[join.state]}`;
    })
    .join("; ");
}

function cellWords(cells: readonly Pick<StripBand["cells"][number], "from" | "to" | "words">[]) {
  return cells
    .map((cell) => `${plainFeet(cell.from)} to ${formatFeet(cell.to)} ${cell.words}`)
    .join("; ");
}
