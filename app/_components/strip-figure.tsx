import type { ReactNode } from "react";
import { plainFeet } from "#lib/domain/line/station.ts";
import type { StripDrawing, StripMark } from "#lib/domain/strip/drawing.ts";
import {
  type BandRow,
  type Flag,
  MAIN_REACH,
  type StripLayout,
  type StripSize,
  WYE_REACH,
  xOf,
} from "#lib/domain/strip/layout.ts";
import styles from "./strip.module.css";
import { HatchDefs, hatchOf } from "./strip-hatches.tsx";

interface FigureProps {
  readonly drawing: StripDrawing;
  readonly layout: StripLayout;
  readonly size: StripSize;
  /** Unique on the page, for the names of patterns. */
  readonly id: string;
  readonly selected: string | null;
  readonly onSelect: (id: string) => void;
}

/** The drawing itself, as laid out. */
export function StripFigure(props: FigureProps) {
  const { drawing, layout, id } = props;
  return (
    <svg
      className={styles["drawing"]}
      width={layout.width}
      height={layout.height}
      viewBox={`0 0 ${layout.width} ${layout.height}`}
      aria-label={drawing.title}
    >
      <HatchDefs prefix={id} />
      <Bands {...props} />
      <Ruler {...props} />
      <PublicMain {...props} />
      <Pipe {...props} />
      <Joins {...props} />
      {layout.points.map((flag) => (
        <PointFlag key={flag.mark.id} flag={flag} {...props} />
      ))}
      {layout.above.map((flag) => (
        <EntryFlag key={flag.mark.id} flag={flag} {...props} />
      ))}
      {layout.below.map((flag) => (
        <BelowFlag key={flag.mark.id} flag={flag} {...props} />
      ))}
    </svg>
  );
}

/** The public main, seen across: two walls with breaks, as it runs on beyond the sheet. */
function PublicMain({ layout, size, drawing, selected, onSelect }: FigureProps) {
  const mark = drawing.onPipe.find((one) => one.kind === "main");
  const large = size === "large";
  const half = large ? 15 : 9;
  const middle = layout.left - half;
  const reach = MAIN_REACH[size];
  const top = layout.pipeTop - reach;
  const bottom = layout.pipeBottom + reach;
  const wall = (x: number) => `M${x} ${top}V${bottom}`;
  const broken = (y: number) =>
    `M${middle - half - 5} ${y}q${half / 2 + 2.5} -5 ${half + 5} 0t${half + 5} 0`;
  const shape = (
    <>
      <rect
        className={styles["ground"]}
        x={middle - half}
        y={top}
        width={half * 2}
        height={bottom - top}
      />
      <path
        className={styles["wall"]}
        d={`${wall(middle - half)}M${middle + half} ${top}V${layout.pipeTop}M${middle + half} ${layout.pipeBottom}V${bottom}`}
      />
      <path className={styles["fine"]} d={broken(top)} />
      <path className={styles["fine"]} d={broken(bottom)} />
      <text
        className={styles["small"]}
        transform={`translate(${middle - half - 8} ${(top + bottom) / 2}) rotate(-90)`}
        textAnchor="middle"
      >
        {large ? "public main" : "main"}
      </text>
    </>
  );
  if (mark === undefined) return shape;
  return (
    <Chosen mark={mark} selected={selected} onSelect={onSelect}>
      {shape}
    </Chosen>
  );
}

/** The trunk: hatched by material, its walls broken where no camera looked. */
function Pipe({ drawing, layout, id }: FigureProps) {
  const { pipeTop, pipeBottom } = layout;
  const x = (station: number) => xOf(layout, drawing.extent, station);
  const end = Math.max(...drawing.pipes.map((pipe) => pipe.to), 0);
  const unseen = (drawing.bands.find((band) => band.title === "Camera")?.cells ?? []).filter(
    (cell) => cell.words !== "seen",
  );
  const walls = (from: number, to: number) =>
    `M${x(from)} ${pipeTop}H${x(to)}M${x(from)} ${pipeBottom}H${x(to)}`;
  return (
    <g>
      {drawing.pipes.map((pipe) => (
        <g key={pipe.from}>
          <rect
            className={styles["ground"]}
            x={x(pipe.from)}
            y={pipeTop}
            width={x(pipe.to) - x(pipe.from)}
            height={pipeBottom - pipeTop}
          />
          <rect
            className={styles["hatch"]}
            x={x(pipe.from)}
            y={pipeTop}
            width={x(pipe.to) - x(pipe.from)}
            height={pipeBottom - pipeTop}
            fill={`url(#${id}-${hatchOf(pipe.material)})`}
          />
          {pipe.from === 0 ? null : (
            <path className={styles["wall"]} d={`M${x(pipe.from)} ${pipeTop}V${pipeBottom}`} />
          )}
        </g>
      ))}
      <path className={styles["wall"]} d={walls(0, end)} />
      {unseen.map((cell) => (
        <path key={cell.from} className={styles["unseen"]} d={walls(cell.from, cell.to)} />
      ))}
      <UpperEnd drawing={drawing} layout={layout} x={x(end)} />
    </g>
  );
}

/** A straight end where it is known, a break where the pipe goes on unseen. */
function UpperEnd({
  drawing,
  layout,
  x,
}: {
  readonly drawing: StripDrawing;
  readonly layout: StripLayout;
  readonly x: number;
}) {
  const { pipeTop, pipeBottom } = layout;
  const known = drawing.onPipe.some((mark) => mark.kind === "upper-end");
  const middle = (pipeTop + pipeBottom) / 2;
  const half = (pipeBottom - pipeTop) / 2;
  const path = known
    ? `M${x} ${pipeTop}V${pipeBottom}`
    : `M${x} ${pipeTop - 3}q4 ${half / 2 + 1.5} 0 ${half + 3}t0 ${half + 3}`;
  return <path className={known ? styles["wall"] : styles["fine"]} d={path} data-y={middle} />;
}

/** Lines across the pipe from a record entry to the tie-in that it is paired with. */
function Joins({ drawing, layout, size }: FigureProps) {
  const x = (station: number) => xOf(layout, drawing.extent, station);
  return (
    <g>
      {drawing.joins.map((join) => {
        const entry = drawing.above.find((mark) => mark.id === join.entryId);
        const tieIn = drawing.below.find((mark) => mark.id === join.tieInId);
        if (entry === undefined || tieIn === undefined) return null;
        const from = `${x(entry.station)} ${layout.pipeTop - 4}`;
        const to = `${x(tieIn.station) + WYE_REACH[size] / 4} ${layout.pipeBottom + 4}`;
        return (
          <g key={`${join.entryId}-${join.tieInId}`}>
            <path className={styles["halo"]} d={`M${from}L${to}`} />
            <path className={styles[join.state]} d={`M${from}L${to}`} />
          </g>
        );
      })}
    </g>
  );
}

/** A boundary: chain line through the whole drawing. A cleanout or manhole: a riser to the surface. */
function PointFlag({ flag, ...props }: FigureProps & { readonly flag: Flag }) {
  const { layout, selected, onSelect } = props;
  const { x, mark } = flag;
  const textY = 6 + flag.far - 5;
  const riser = mark.label === "cleanout" || mark.label === "manhole";
  const half = mark.label === "manhole" ? 6 : 3;
  return (
    <Chosen mark={mark} selected={selected} onSelect={onSelect}>
      {mark.kind === "upper-end" ? (
        <path className={styles["fine"]} d={`M${x} ${textY + 3}V${layout.pipeTop}`} />
      ) : null}
      {mark.kind === "point" && riser ? (
        <path
          className={styles["fine"]}
          d={`M${x - half} ${layout.pipeTop}V${textY + 5}M${x + half} ${layout.pipeTop}V${textY + 5}M${x - half - 3} ${textY + 5}H${x + half + 3}`}
        />
      ) : null}
      {mark.kind === "point" && !riser ? (
        <path className={styles["chain"]} d={`M${x} ${textY + 3}V${layout.rulerY}`} />
      ) : null}
      <Words x={x + (riser ? half + 5 : 5)} y={textY} flag={{ ...flag, detail: "" }} quiet />
    </Chosen>
  );
}

function EntryFlag({ flag, ...props }: FigureProps & { readonly flag: Flag }) {
  const { layout, selected, onSelect } = props;
  const { x, mark } = flag;
  const top = layout.pipeTop - layout.pole - flag.far + 3;
  return (
    <Chosen mark={mark} selected={selected} onSelect={onSelect}>
      <path
        className={mark.loud ? styles["loudLine"] : styles["fine"]}
        d={`M${x} ${top}V${layout.pipeTop - 7}`}
      />
      <rect
        className={mark.loud ? styles["loudOpen"] : styles["open"]}
        x={x - 3.5}
        y={layout.pipeTop - 8}
        width={7}
        height={7}
      />
      <Words x={x + 5} y={top + 11} flag={flag} />
    </Chosen>
  );
}

function BelowFlag({ flag, ...props }: FigureProps & { readonly flag: Flag }) {
  const { mark } = flag;
  if (mark.kind === "tie-in") return <TieInFlag flag={flag} {...props} />;
  return <SeenFlag flag={flag} {...props} />;
}

/** A branch leaves the pipe towards upstream, as a wye does, and ends in its words. */
function TieInFlag({ flag, ...props }: FigureProps & { readonly flag: Flag }) {
  const { layout, drawing, size, selected, onSelect } = props;
  const { x, poleX, mark } = flag;
  const large = size === "large";
  const bottom = layout.pipeBottom;
  const reach = WYE_REACH[size];
  const thick = large ? 8 : 6;
  const end = bottom + reach;
  const textTop = bottom + layout.pole + flag.near;
  const loud = mark.loud;
  const spread = (mark.whisker / drawing.extent) * (layout.right - layout.left);
  return (
    <Chosen mark={mark} selected={selected} onSelect={onSelect}>
      <path
        className={styles["ground"]}
        d={`M${x - thick / 2} ${bottom - 1}L${poleX - thick / 2} ${end}h${thick}L${x + thick / 2} ${bottom - 1}Z`}
      />
      <path
        className={loud ? styles["loudWall"] : styles["wall"]}
        d={`M${x - thick / 2} ${bottom}L${poleX - thick / 2} ${end}M${x + thick / 2} ${bottom}L${poleX + thick / 2} ${end}`}
      />
      <path
        className={loud ? styles["loudLine"] : styles["fine"]}
        d={`M${poleX} ${end + 1}V${textTop + (flag.detail === "" ? 13 : 29)}`}
      />
      {large && spread > 3 ? (
        <path
          className={styles["whisker"]}
          d={`M${x - spread} ${bottom + 4}v5m0 -2.5H${x + spread}m0 -2.5v5`}
        />
      ) : null}
      <Words x={poleX + 5} y={textTop + 12} flag={flag} />
    </Chosen>
  );
}

/** A fault cracks through the pipe; a stretch of one runs along its floor. */
function SeenFlag({ flag, ...props }: FigureProps & { readonly flag: Flag }) {
  const { layout, drawing, selected, onSelect } = props;
  const { x, poleX, mark } = flag;
  const { pipeTop, pipeBottom } = layout;
  const to = mark.toStation === null ? null : xOf(layout, drawing.extent, mark.toStation);
  const height = pipeBottom - pipeTop;
  const textTop = pipeBottom + layout.pole + flag.near;
  return (
    <Chosen mark={mark} selected={selected} onSelect={onSelect}>
      {to === null ? (
        <path
          className={styles["crack"]}
          d={`M${x - 2} ${pipeTop - 2}l4 ${height * 0.35}l-5 ${height * 0.15}l5 ${height * 0.25}l-4 ${height * 0.25 + 4}`}
        />
      ) : (
        <path
          className={mark.kind === "water" ? styles["water"] : styles["crack"]}
          d={wave(x, to, pipeBottom - 4)}
        />
      )}
      {flag.lane < 0 ? null : (
        <>
          <path className={styles["faint"]} d={`M${poleX} ${pipeBottom + 3}V${textTop + 13}`} />
          <Words x={poleX + 5} y={textTop + 12} flag={flag} quiet />
        </>
      )}
    </Chosen>
  );
}

function wave(from: number, to: number, y: number): string {
  const count = Math.max(1, Math.round((to - from) / 8));
  const step = (to - from) / count;
  return `M${from} ${y}q${step / 4} -4 ${step / 2} 0t${step / 2} 0${`t${step / 2} 0t${step / 2} 0`.repeat(count - 1)}`;
}

function Words({
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
  const { mark, label, detail } = flag;
  const indent = mark.loud ? 13 : 0;
  return (
    <g className={mark.loud ? `${styles["words"]} ${styles["loud"]}` : styles["words"]}>
      <rect
        className={styles["ground"]}
        x={x - 1}
        y={y - 13}
        width={Math.max(flag.width - 6, 0)}
        height={detail === "" ? 17 : 32}
      />
      {mark.loud ? (
        <path d={`M${x + 5} ${y - 10}l5 5-5 5-5-5Z`} className={styles["lozenge"]} />
      ) : null}
      <text x={x + indent} y={y} className={quiet ? styles["quiet"] : styles["label"]}>
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

/** A mark that can be chosen. */
function Chosen({
  mark,
  selected,
  onSelect,
  children,
}: {
  readonly mark: StripMark;
  readonly selected: string | null;
  readonly onSelect: (id: string) => void;
  readonly children: ReactNode;
}) {
  const chosen = selected === mark.id;
  const first = selected === null && mark.kind === "main";
  return (
    // biome-ignore lint/a11y/useSemanticElements: a button element cannot stand inside a drawing
    <g
      role="button"
      tabIndex={chosen || first ? 0 : -1}
      aria-pressed={chosen}
      aria-label={mark.sentence}
      data-mark={mark.id}
      className={styles["mark"]}
      onClick={() => onSelect(mark.id)}
      onKeyDown={(event) => {
        if (event.key !== "Enter" && event.key !== " ") return;
        event.preventDefault();
        onSelect(mark.id);
      }}
    >
      {children}
    </g>
  );
}

function Ruler({ layout, size }: FigureProps) {
  const { rulerY, ticks, left, right } = layout;
  const last = ticks.at(-1);
  return (
    <g>
      <path
        className={styles["fine"]}
        d={`M${left} ${rulerY}H${right}${ticks.map((tick) => `M${tick.x} ${rulerY - 4}v8`).join("")}`}
      />
      {ticks.map((tick) => (
        <text
          key={tick.station}
          x={tick.x}
          y={rulerY + 17}
          className={styles["small"]}
          textAnchor="middle"
        >
          {plainFeet(tick.station).replace(/\.0$/, "")}
          {tick === last ? " ft" : ""}
        </text>
      ))}
      {size === "large" ? (
        <text x={left - 12} y={rulerY + 5} className={styles["small"]} textAnchor="end">
          ← flow
        </text>
      ) : null}
    </g>
  );
}

function Bands({ layout, id, size }: FigureProps) {
  return (
    <g>
      {layout.bands.map((band) => (
        <Band key={band.title} band={band} layout={layout} id={id} small={size === "small"} />
      ))}
    </g>
  );
}

function Band({
  band,
  layout,
  id,
  small,
}: {
  readonly band: BandRow;
  readonly layout: StripLayout;
  readonly id: string;
  readonly small: boolean;
}) {
  const bottom = band.top + band.height;
  return (
    <g>
      {small ? null : (
        <text
          x={layout.left - 12}
          y={band.top + 16}
          className={styles["bandTitle"]}
          textAnchor="end"
        >
          {band.title}
        </text>
      )}
      <path className={styles["faint"]} d={`M${layout.left} ${bottom}H${layout.right}`} />
      {band.cells.map((cell) => (
        <g key={cell.x} className={cell.loud ? styles["loud"] : undefined}>
          {cell.hatch === "none" ? null : (
            <rect
              x={cell.x}
              y={band.top}
              width={cell.width}
              height={band.height}
              fill={`url(#${id}-${cell.hatch})`}
            />
          )}
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
          <title>{cell.words}</title>
        </g>
      ))}
    </g>
  );
}
