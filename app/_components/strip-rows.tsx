import { plainFeet } from "#lib/domain/length/station.ts";
import type { BandCell, BandRow, RunRow } from "#lib/domain/strip/band-rows.ts";
import type { MarkRow } from "#lib/domain/strip/layout.ts";
import { wide } from "#lib/domain/strip/measures.ts";
import { xOn } from "#lib/domain/strip/places.ts";
import styles from "./strip.module.css";
import { Chosen, ChosenFlag, Words } from "./strip-chosen.tsx";
import { flagKey, type StripPart } from "./strip-part.ts";

/** Stations along the pipe, in feet. */
export function Ruler({ layout }: StripPart) {
  const { left, right, rulerY, ticks } = layout;
  return (
    <g>
      <path
        className={styles["fine"]}
        d={`M${left} ${rulerY}H${right}${ticks.map(({ x }) => `M${x} ${rulerY - 4}v8`).join("")}`}
      />
      {ticks.map(({ station, x }, index) => (
        <text key={station} x={x} y={rulerY + 17} textAnchor="middle" className={styles["small"]}>
          {plainFeet(station).replace(/\.0$/, "")}
          {index === ticks.length - 1 ? " ft" : ""}
        </text>
      ))}
    </g>
  );
}

/** Rows of marks with their names: a bar where the thing has a length, a tick where it has none. */
export function MarkRows(part: StripPart) {
  return part.layout.rows.map((row) => <OneMarkRow key={row.title} row={row} {...part} />);
}

function OneMarkRow({ row, layout, pick }: StripPart & { readonly row: MarkRow }) {
  const x = (station: number) => xOn(layout, station);
  return (
    <g>
      <path className={styles["faint"]} d={`M${layout.left} ${row.top}H${layout.right}`} />
      {row.flags.map((flag) => {
        const top = row.top + 2 + flag.near;
        return (
          <ChosenFlag key={flagKey(flag)} flag={flag} pick={pick}>
            <path
              className={styles["fine"]}
              d={`M${flag.x} ${row.top}V${top + 14}${flag.marks
                .map((mark) => `M${x(mark.station)} ${row.top}v4`)
                .join("")}`}
            />
            {flag.marks.map((mark) =>
              mark.toStation === null ? null : (
                <path
                  key={mark.id}
                  className={styles["bar"]}
                  d={`M${x(mark.station)} ${row.top}H${x(mark.toStation)}`}
                />
              ),
            )}
            <Words x={flag.x + 5} y={top + 13} flag={flag} quiet />
          </ChosenFlag>
        );
      })}
    </g>
  );
}

/** Each run by itself: from where it went in to where it ended, boxes where it could not see. */
export function Runs(part: StripPart) {
  return part.layout.runs.map((row) => <OneRun key={row.run.id} row={row} {...part} />);
}

function OneRun({ row, id, pick, layout }: StripPart & { readonly row: RunRow }) {
  const middle = row.top + row.height / 2;
  const chosen = pick.chosen.has(row.run.id);
  return (
    <g data-chosen={chosen} data-tip={row.run.sentence} className={styles["shape"]}>
      <rect
        className={styles["grip"]}
        x={layout.left}
        y={row.top}
        width={layout.right - layout.left}
        height={row.height}
      />
      {row.cells
        .filter((cell) => cell.hatch === "none")
        .map((cell) => (
          <path
            key={cell.x}
            className={styles["run"]}
            d={`M${cell.x} ${middle}H${cell.x + cell.width}`}
          />
        ))}
      {row.cells
        .filter((cell) => cell.hatch !== "none")
        .map((cell) => (
          <BlindCell key={cell.x} cell={cell} row={row} id={id} />
        ))}
      <RunEnds row={row} right={layout.right} />
    </g>
  );
}

function BlindCell({
  cell,
  row,
  id,
}: {
  readonly cell: BandCell;
  readonly row: RunRow;
  readonly id: string;
}) {
  const top = row.top + 2;
  const height = row.height - 4;
  return (
    <g>
      <rect
        className={styles["blind"]}
        x={cell.x}
        y={top}
        width={cell.width}
        height={height}
        fill={`url(#${id}-${cell.hatch})`}
      />
      {cell.outside === true ? (
        <rect
          className={styles["ground"]}
          x={cell.x + cell.width + 1}
          y={top}
          width={wide(cell.words, 13) + 8}
          height={height}
        />
      ) : null}
      {cell.lines.map((line) => (
        <text
          key={line}
          x={cell.outside === true ? cell.x + cell.width + 5 : cell.x + cell.width / 2}
          y={top + height / 2 + 4}
          textAnchor={cell.outside === true ? "start" : "middle"}
          className={styles["small"]}
        >
          {line}
        </text>
      ))}
    </g>
  );
}

/** A ring where the camera went in; an arrow where it ended, a bar where it was stopped. */
function RunEnds({ row, right }: { readonly row: RunRow; readonly right: number }) {
  const { fromX, toX } = row;
  const middle = row.top + row.height / 2;
  return (
    <>
      {toX === null ? null : <RunEnd row={row} toX={toX} right={right} />}
      {fromX === null ? null : <circle className={styles["open"]} cx={fromX} cy={middle} r={3.5} />}
    </>
  );
}

function RunEnd({
  row,
  toX,
  right,
}: {
  readonly row: RunRow;
  readonly toX: number;
  readonly right: number;
}) {
  const { run, fromX } = row;
  const middle = row.top + row.height / 2;
  const way = fromX === null || toX >= fromX ? 1 : -1;
  const stopped = run.ending === "blocked" || run.ending === "under water";
  const back = toX - way * 6;
  const room = way > 0 ? right - toX > 70 : toX > 170;
  return (
    <>
      <path
        className={styles["wallOnly"]}
        d={
          stopped
            ? `M${toX} ${middle - 6}v12`
            : `M${back} ${middle - 4}L${toX} ${middle}L${back} ${middle + 4}`
        }
      />
      <text
        x={toX + way * (room ? 7 : -12)}
        y={middle + (room ? 4 : -3)}
        textAnchor={way > 0 === room ? "start" : "end"}
        className={styles["small"]}
      >
        {run.ending}
      </text>
    </>
  );
}

/** The bands under the ruler. */
export function Bands(part: StripPart) {
  return part.layout.bands.map((band) => <OneBand key={band.title} band={band} {...part} />);
}

function OneBand({ band, layout, id, pick }: StripPart & { readonly band: BandRow }) {
  const bottom = band.top + band.height;
  return (
    <g>
      <path className={styles["faint"]} d={`M${layout.left} ${bottom}H${layout.right}`} />
      {band.cells.map((cell) => {
        const drawn = <CellShape cell={cell} band={band} id={id} />;
        if (cell.id === null)
          return (
            <g key={cell.x} data-tip={`${band.title}: ${cell.words}`}>
              {drawn}
            </g>
          );
        const subject = cell.id;
        return (
          <Chosen
            key={cell.x}
            stop={`${band.title}:${subject}`}
            words={`${band.title}: ${cell.words}`}
            ids={[subject]}
            pick={pick}
            onChoose={() => pick.onSelect(subject)}
          >
            {drawn}
          </Chosen>
        );
      })}
    </g>
  );
}

function CellShape({
  cell,
  band,
  id,
}: {
  readonly cell: BandCell;
  readonly band: BandRow;
  readonly id: string;
}) {
  const bottom = band.top + band.height;
  const box = { x: cell.x, y: band.top, width: Math.max(cell.width, 0), height: band.height };
  return (
    <g className={cell.loud ? `${styles["words"]} ${styles["loud"]}` : styles["words"]}>
      <rect className={styles["cellGround"]} {...box} />
      {cell.lot === true ? <rect className={styles["lot"]} {...box} /> : null}
      {cell.hatch === "none" ? null : <rect {...box} fill={`url(#${id}-${cell.hatch})`} />}
      <path
        className={styles["faint"]}
        d={`M${cell.x} ${band.top + 3}V${bottom}M${cell.x + cell.width} ${band.top + 3}V${bottom}`}
      />
      {cell.lines.map((line, index) => (
        <text
          key={line}
          x={cell.x + cell.width / 2}
          y={band.top + 17 + index * 16}
          textAnchor="middle"
          className={styles["cell"]}
        >
          {cell.loud && index === 0 ? `◆ ${line}` : line}
        </text>
      ))}
    </g>
  );
}
