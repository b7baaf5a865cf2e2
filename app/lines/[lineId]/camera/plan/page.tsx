import type { Metadata } from "next";
import Link from "next/link";
import { Empty } from "#app/_components/empty.tsx";
import { Heads } from "#app/_components/heads.tsx";
import { NoticeBox } from "#app/_components/notice-box.tsx";
import { PageHead } from "#app/_components/page-head.tsx";
import { PlanFigure } from "#app/_components/plan-figure.tsx";
import { Scroll } from "#app/_components/scroll.tsx";
import { Section } from "#app/_components/section.tsx";
import { feetWithin, plainFeet } from "#lib/domain/length/station.ts";
import { courseOf, pathBetween } from "#lib/domain/plan/course.ts";
import { sideWords } from "#lib/domain/plan/side-words.ts";
import { drawPlan, drawPlans, type PlanView, planTiling } from "#lib/domain/strip/draw-plan.ts";
import { allowedScales, PLAN_FRAME, scaleWords } from "#lib/domain/strip/plan-scale.ts";
import { planAnswer } from "#lib/domain/strip/plan-words.ts";
import { upTheLine } from "#lib/domain/tiein/up-the-line.ts";
import { LineGrid } from "../../line-grid.tsx";
import { linePartOf } from "../../line-part.ts";
import { counted } from "../../names.ts";
import type { LinePart } from "../../part.ts";
import { propertyChoices } from "../../who/columns.ts";
import {
  BEND_BLANK,
  BEND_COLUMNS,
  FIXED_COLUMNS,
  SHAPE_BLANK,
  shapeColumns,
  tieColumns,
} from "./columns.ts";
import styles from "./plan.module.css";
import { Trace } from "./trace.client.tsx";

export const metadata: Metadata = { title: "Plan view" };

/** Narrower rooms for a phone. */
const NARROW = [270, 350, 430, 530, 620];

export default async function PlanPage({
  params,
}: {
  readonly params: Promise<{ lineId: string }>;
}) {
  const { lineId } = await params;
  const part = await linePartOf(lineId);
  const { file, report } = part;
  const allowed = allowedScales(file.authority);
  const prints = drawPlans(file, report, { frame: PLAN_FRAME, allowed });
  const [first] = prints;
  const plan = prints.length === 1 ? first : drawPlan(file, report, PLAN_FRAME);
  return (
    <>
      <PageHead asked="Where does the line run?" answer={planAnswer(file, report)} />
      {plan == null ? (
        <Empty
          title="Start with the bearing of the line at the main."
          example="N 76 E, from the plat: then the left side is the north side, and a bend of 22.5° to the left at 64.0 ft turns the drawing with the pipe."
        >
          <p>
            Stand over the main, look up the line and read a compass, or take it off a plat. Enter
            it with <Link href={`/lines/${lineId}/camera/pipe`}>the shared pipe</Link>.
          </p>
        </Empty>
      ) : (
        <PlanFigure plan={plan} narrow={narrowPlan(part, plan)} note={printNote(prints, allowed)} />
      )}
      <Places {...part} />
      <div className="screen-only">
        <Grids {...part} />
      </div>
    </>
  );
}

/** To what scale the packet prints it, where the authority has a say in that. */
function printNote(prints: readonly PlanView[], allowed: readonly number[]): string {
  const [first] = prints;
  if (first === undefined || allowed.length === 0) return "";
  const sheets = prints.length === 1 ? "" : ` on ${prints.length} sheets`;
  const drawn = `Printed at 1 in = ${first.feetPerInch} ft${sheets}`;
  return first.isAllowed
    ? `${drawn}; the authority allows ${scaleWords(allowed)}.`
    : `${drawn}. The authority allows only ${scaleWords(allowed)}, and that does not fit.`;
}

/** The narrowest drawing at the same scale, so that names have the same room and little has to be scrolled. */
function narrowPlan({ file, report }: LinePart, { feetPerInch }: PlanView): PlanView | null {
  const width = NARROW.find((each) => {
    const frame = { ...PLAN_FRAME, width: each };
    return planTiling(file, report, { frame, allowed: [] })?.feetPerInch === feetPerInch;
  });
  return width === undefined ? null : drawPlan(file, report, { ...PLAN_FRAME, width });
}

/** The drawing in words, and every tie with its check. */
function Places({ report }: LinePart) {
  const open = report.ties.filter(({ state }) => state === "short" || state === "long");
  return (
    <>
      {open.length === 0 ? null : (
        <div className={`stack ${styles["checks"]}`}>
          {open.map(({ tieId, subject, sentence }) => (
            <NoticeBox key={tieId} kind="caution" title={`Tie of ${subject}`}>
              <p>{sentence}</p>
            </NoticeBox>
          ))}
        </div>
      )}
      {report.tieIns.length === 0 ? null : (
        <Section title="Sides by compass" foldedOnPhone={counted(report.tieIns.length, "tie-in")}>
          <Scroll>
            <table className="plain">
              <Heads of={["Tie-in", { num: "Station, ft" }, "Side", "Ties from fixed points"]} />
              <tbody>
                {upTheLine(report.tieIns).map(({ tieIn, station, uncertainty, side, compass }) => (
                  <tr key={tieIn.id}>
                    <th scope="row">{tieIn.label}</th>
                    <td className="num nowrap">
                      {station === null ? "no station" : feetWithin(station, uncertainty)}
                    </td>
                    <td className="nowrap">{sideWords(side, compass)}</td>
                    <td>{tieWords(report, tieIn.label)}</td>
                  </tr>
                ))}
                {report.ties
                  .filter(
                    ({ subject }) => !report.tieIns.some(({ tieIn }) => tieIn.label === subject),
                  )
                  .map(({ tieId, subject, station, words, sentence }) => (
                    <tr key={tieId}>
                      <th scope="row">{subject}</th>
                      <td className="num">{station === null ? "–" : plainFeet(station)}</td>
                      <td>–</td>
                      <td>
                        {words}. <span className="muted">{sentence}</span>
                      </td>
                    </tr>
                  ))}
              </tbody>
            </table>
          </Scroll>
        </Section>
      )}
    </>
  );
}

function tieWords({ ties }: LinePart["report"], label: string) {
  const own = ties.filter(({ subject }) => subject === label);
  if (own.length === 0) return <span className="muted">none</span>;
  return own.map(({ tieId, words, sentence }) => (
    <span key={tieId}>
      {words}. <span className="muted">{sentence}</span>{" "}
    </span>
  ));
}

/** Corners pressed over the picture of a plan: they become rows of the table of shapes. */
function TraceSection({ lineId, file, report, revisions }: LinePart) {
  const course = courseOf(file);
  return (
    <Section
      title="Trace over a plan"
      id="trace"
      folded={folded(file.planPictures.length, "picture")}
      note="Click the corners of streets, lot lines and buildings on a plat or site plan. The picture is only a drawing aid: the packet shows the shapes, not the picture."
    >
      <Trace
        lineId={lineId}
        pictures={file.planPictures}
        picturesBase={revisions.planPictures}
        shapes={file.planShapes}
        shapesBase={revisions.planShapes}
        uploads={file.uploads
          .filter(({ type }) => type === "image/png" || type === "image/jpeg")
          .map(({ id, name }) => ({ id, name }))}
        properties={propertyChoices(file)}
        line={course === null ? null : pathBetween(course, 0, report.extent)}
      />
    </Section>
  );
}

/** What a part that is closed holds. */
function folded(count: number, noun: string): string {
  return count === 0 ? "none yet" : counted(count, noun);
}

function Grids(part: LinePart) {
  const { lineId, file, mayFile } = part;
  return (
    <>
      <Section
        title="Bends"
        folded={folded(file.bends.length, "bend")}
        note="Where the shared line turns, and by how much: a fitting’s 22.5, 45 or 90 degrees, or as the camera showed it."
      >
        <LineGrid
          lineId={lineId}
          table="bends"
          columns={BEND_COLUMNS}
          blank={BEND_BLANK}
          addWord="bend"
          emptyWords="No bends entered: the line is drawn straight."
        />
      </Section>
      <Section
        title="Fixed points"
        folded={folded(file.fixedPoints.length, "point")}
        note="Permanent things: a house corner, a hydrant, a manhole cover. With their positions in feet from the main, ties locate points on the plan."
      >
        <LineGrid
          lineId={lineId}
          table="fixedPoints"
          columns={FIXED_COLUMNS}
          addWord="fixed point"
          emptyWords="No fixed points yet."
        />
      </Section>
      <Section
        title="Ties"
        id="ties"
        folded={folded(file.ties.length, "tie")}
        note="Two taped distances to a point of the line, from two fixed points. The triangle is checked, and the position is compared with bearing and footage."
      >
        <LineGrid
          lineId={lineId}
          table="ties"
          columns={tieColumns(file)}
          addWord="tie"
          emptyWords={
            file.fixedPoints.length < 2
              ? "Enter and save two fixed points first."
              : "No ties yet. An as-built usually asks for the main connection and each branch."
          }
        />
      </Section>
      {mayFile ? <TraceSection {...part} /> : null}
      <Section
        title="Buildings, lot lines, streets"
        id="shapes"
        folded={folded(file.planShapes.length, "shape")}
        note="Simple shapes, by their corners in feet east and north of the main connection."
      >
        <LineGrid
          lineId={lineId}
          table="planShapes"
          columns={shapeColumns(file)}
          blank={SHAPE_BLANK}
          addWord="shape"
          emptyWords="Nothing drawn yet."
        />
      </Section>
    </>
  );
}
