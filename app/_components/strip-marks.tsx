import { idsOf } from "#lib/domain/strip/crowds.ts";
import type { StripMark } from "#lib/domain/strip/drawing.ts";
import { depthOf, type Flag } from "#lib/domain/strip/flags.ts";
import { MEASURES } from "#lib/domain/strip/measures.ts";
import { xOn } from "#lib/domain/strip/places.ts";
import styles from "./strip.module.css";
import { ChosenFlag, ChosenMark, Words, wordsOf } from "./strip-chosen.tsx";
import { bareMarks, flagKey, type StripPart } from "./strip-part.ts";

/** Everything that has a name on the drawing. */
export function Flags(props: StripPart) {
  const { layout } = props;
  return (
    <>
      {layout.points.map((flag) => (
        <PointFlag key={flagKey(flag)} flag={flag} {...props} />
      ))}
      {layout.holds.map((flag) => (
        <HoldFlag key={flagKey(flag)} flag={flag} {...props} />
      ))}
      {layout.above.map((flag) => (
        <EntryFlag key={flagKey(flag)} flag={flag} {...props} />
      ))}
      {layout.below.map((flag) => (
        <TieInFlag key={flagKey(flag)} flag={flag} {...props} />
      ))}
    </>
  );
}

type FlagPart = StripPart & { readonly flag: Flag };

/** Lines from a record entry down to the tie-in that it is paired with, with the distance. */
export function Joins({ layout, pick }: StripPart) {
  const top = layout.recordY + 4;
  const bottom = layout.pipeTop;
  return (
    <g>
      {layout.joins.map(({ join, fromX, toX, words, wordsX }) => {
        const chosen = pick.chosen.has(join.entryId) || pick.chosen.has(join.tieInId);
        return (
          <g
            key={`${join.entryId}-${join.tieInId}-${join.state}`}
            data-chosen={chosen}
            data-differs={join.differs === true}
            className={styles["join"]}
          >
            <path className={styles[join.state]} d={`M${fromX} ${top}L${toX} ${bottom}`} />
            <path className={styles["through"]} d={`M${toX} ${bottom}V${layout.pipeBottom}`} />
            {words === "" ? null : (
              <text x={wordsX} y={(top + bottom) / 2 + 4} className={styles["distance"]}>
                {words}
              </text>
            )}
          </g>
        );
      })}
    </g>
  );
}

/** Points that come up to the surface, and half of how wide they are drawn. */
const RISER_HALVES: Readonly<Record<string, number>> = { cleanout: 3, manhole: 6 };

/** A boundary: chain line through the whole drawing. A cleanout or manhole: a riser to the surface. */
function PointFlag({ flag, layout, pick }: FlagPart) {
  const top = layout.pointsY + depthOf(layout.points) - flag.far;
  const x = (mark: StripMark) => xOn(layout, mark.station);
  const indent = (RISER_HALVES[flag.mark.label] ?? 0) + 5;
  return (
    <ChosenFlag flag={flag} pick={pick}>
      {flag.marks.map((mark) => (
        <PointShape key={mark.id} mark={mark} x={x(mark)} top={top + 16} layout={layout} />
      ))}
      {layout.size === "slim" ? null : <Words x={flag.x + indent} y={top + 13} flag={flag} quiet />}
    </ChosenFlag>
  );
}

function PointShape({
  mark,
  x,
  top,
  layout,
}: {
  readonly mark: StripMark;
  readonly x: number;
  readonly top: number;
  readonly layout: StripPart["layout"];
}) {
  if (mark.kind === "upper-end") {
    return <path className={styles["fine"]} d={`M${x} ${top - 8}V${layout.pipeTop}`} />;
  }
  const half = RISER_HALVES[mark.label];
  if (half === undefined) {
    return <path className={styles["chain"]} d={`M${x} ${top - 12}V${layout.rulerY}`} />;
  }
  return (
    <path
      className={styles["fine"]}
      d={`M${x - half} ${layout.pipeTop}V${top - 6}M${x + half} ${layout.pipeTop}V${top - 6}M${x - half - 3} ${top - 6}H${x + half + 3}`}
    />
  );
}

/** A bracket over the place where work stops. */
function HoldFlag({ flag, layout, pick }: FlagPart) {
  const y = layout.holdsY + depthOf(layout.holds) + 2;
  const x = (station: number) => xOn(layout, station);
  return (
    <ChosenFlag flag={flag} pick={pick}>
      {flag.marks.map((mark) => {
        const from = x(mark.station);
        const to = Math.max(x(mark.toStation ?? mark.station), from + 3);
        return (
          <path
            key={mark.id}
            className={mark.loud ? styles["loudLine"] : styles["fine"]}
            d={`M${from} ${y + 6}V${y}H${to}V${y + 6}`}
          />
        );
      })}
      <Words x={flag.x} y={layout.holdsY + 13} flag={flag} />
    </ChosenFlag>
  );
}

function EntryFlag({ flag, layout, pick }: FlagPart) {
  const top = layout.recordY - 8 - flag.far;
  const line = flag.loud ? styles["loudLine"] : styles["fine"];
  const one = flag.marks.length === 1;
  return (
    <ChosenFlag flag={flag} pick={pick}>
      <path className={line} d={`M${flag.x} ${top + 3}V${layout.recordY - 4}`} />
      {one ? null : (
        <path
          className={line}
          d={`M${flag.x} ${layout.recordY - 8}H${flag.endX}V${layout.recordY - 4}`}
        />
      )}
      {flag.marks.map((mark) => (
        <rect
          key={mark.id}
          className={mark.loud ? styles["loudOpen"] : styles["open"]}
          data-shape={mark.id}
          x={xOn(layout, mark.station) - 3.5}
          y={layout.recordY - 3.5}
          width={7}
          height={7}
        />
      ))}
      <Words x={flag.x + 5} y={top + 12} flag={flag} />
    </ChosenFlag>
  );
}

/** A branch leaves the pipe toward upstream, as a wye does, and ends in its words. */
function TieInFlag({ flag, ...part }: FlagPart) {
  const { layout, pick } = part;
  const end = layout.pipeBottom + MEASURES[layout.size].wye;
  const textTop = layout.belowY + flag.near;
  const line = flag.loud ? styles["loudLine"] : styles["fine"];
  const one = flag.marks.length === 1;
  return (
    <ChosenFlag flag={flag} pick={pick}>
      {flag.marks.map((mark) => (
        <Branch key={mark.id} mark={mark} {...part} />
      ))}
      {one ? null : <path className={line} d={`M${flag.poleX} ${end + 3}H${flag.endX}`} />}
      <path
        className={line}
        d={`M${flag.poleX} ${end + 1}V${textTop + (flag.detail === "" ? 15 : 31)}`}
      />
      <Words x={flag.poleX + 5} y={textTop + 13} flag={flag} />
    </ChosenFlag>
  );
}

/** The branch itself, with a whisker as long as its place is uncertain. */
function Branch({ mark, layout }: Pick<StripPart, "layout"> & { readonly mark: StripMark }) {
  const x = xOn(layout, mark.station);
  const { wye } = MEASURES[layout.size];
  const half = layout.size === "large" ? 4 : 2.5;
  const bottom = layout.pipeBottom;
  const end = bottom + wye;
  const spread = mark.whisker * layout.perHundredth;
  return (
    <g data-shape={mark.id}>
      {spread < 2 ? null : (
        <path
          className={mark.loud ? styles["loudWhisker"] : styles["whisker"]}
          d={`M${x - spread} ${bottom + 2.5}v6M${x - spread} ${bottom + 5.5}H${x + spread}M${x + spread} ${bottom + 2.5}v6`}
        />
      )}
      <path
        className={styles["ground"]}
        d={`M${x - half} ${bottom - 1}L${x + wye - half} ${end}h${half * 2}L${x + half} ${bottom - 1}Z`}
      />
      <path
        className={mark.loud ? styles["loudWall"] : styles["wall"]}
        d={`M${x - half} ${bottom}L${x + wye - half} ${end}M${x + half} ${bottom}L${x + wye + half} ${end}`}
      />
    </g>
  );
}

/** Defects and water on the pipe; those that no row names are chosen here. */
export function PipeMarks({ drawing, layout, pick, id: _id }: StripPart) {
  const bare = bareMarks(drawing, layout);
  return drawing.onPipe
    .filter((mark) => mark.kind === "fault" || mark.kind === "water")
    .map((mark) => {
      const shape = <Fault mark={mark} layout={layout} />;
      if (bare.includes(mark)) {
        return (
          <ChosenMark key={mark.id} mark={mark} pick={pick}>
            {shape}
          </ChosenMark>
        );
      }
      return (
        <g
          key={mark.id}
          data-chosen={idsOf(mark).some((id) => pick.chosen.has(id))}
          data-tip={wordsOf(mark)}
          className={styles["shape"]}
        >
          {shape}
        </g>
      );
    });
}

/** A defect cracks through the pipe; a stretch of one runs along its floor. */
function Fault({ mark, layout }: Pick<StripPart, "layout"> & { readonly mark: StripMark }) {
  const { pipeTop, pipeBottom } = layout;
  const x = xOn(layout, mark.station);
  const height = pipeBottom - pipeTop;
  const end = mark.toStation === null ? x : xOn(layout, mark.toStation);
  const drawn =
    mark.toStation === null
      ? `M${x - 2} ${pipeTop - 2}l4 ${height * 0.35}l-5 ${height * 0.15}l5 ${height * 0.25}l-4 ${height * 0.25 + 4}`
      : wave(x, end, pipeBottom - 4);
  return (
    <>
      <rect
        className={styles["grip"]}
        x={x - 5}
        y={pipeTop - 3}
        width={end - x + 10}
        height={height + 6}
      />
      <path className={mark.kind === "water" ? styles["water"] : styles["crack"]} d={drawn} />
    </>
  );
}

function wave(from: number, to: number, y: number): string {
  const count = Math.max(1, Math.round((to - from) / 8));
  const step = (to - from) / count;
  return `M${from} ${y}q${step / 4} -4 ${step / 2} 0t${step / 2} 0${`t${step / 2} 0t${step / 2} 0`.repeat(count - 1)}`;
}
