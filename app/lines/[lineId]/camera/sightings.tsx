import { ActionForm } from "#app/_components/action-form.client.tsx";
import { SubmitButton } from "#app/_components/button.tsx";
import { Choice } from "#app/_components/choice.tsx";
import { Heads } from "#app/_components/heads.tsx";
import { onPage, Pages, pageFrom } from "#app/_components/pages.tsx";
import { SelectableRow } from "#app/_components/row-select.client.tsx";
import { Scroll } from "#app/_components/scroll.tsx";
import { Section } from "#app/_components/section.tsx";
import { FITTING_WORDS, MATERIAL_WORDS } from "#lib/domain/facts/line-words.ts";
import type { StationedObservation, TieInFinding } from "#lib/domain/findings/report.ts";
import { feetWithin, plainFeet } from "#lib/domain/length/station.ts";
import { sideWords } from "#lib/domain/plan/side-words.ts";
import { undoableMove } from "#lib/domain/run/sighting-moves.ts";
import { upTheLine } from "#lib/domain/tiein/up-the-line.ts";
import type { LinePart } from "../part.ts";
import { RowsGrid } from "../rows-grid.tsx";
import stacked from "../stacked.module.css";
import { mergeTieInsAction, moveSightingAction, undoSightingsAction } from "./actions.ts";
import styles from "./camera.module.css";
import { tieInColumns } from "./columns.ts";
import { facesOf } from "./faces.ts";

/** So many tie-ins, each with its sightings to move, stand on a page. */
const AT_ONCE = 10;

/** The tie-ins that the runs add up to, and which reading became which. */
export function Sightings({
  asked,
  ...part
}: LinePart & { readonly asked: string | string[] | undefined }) {
  const { report, lineId } = part;
  const from = pageFrom(asked, AT_ONCE);
  return (
    <div className="stack">
      <p className="section-note">
        Sightings that match within their uncertainty and are on the same side are treated as one
        tie-in. Correct it here if that is wrong; later calculations won’t override you.
      </p>
      <JustMoved {...part} />
      <Scroll>
        <table className={`plain ${stacked["stacked"]}`}>
          <Heads of={["Tie-in", { num: "Station, ft" }, "Side", "Seen as", "Sightings"]} />
          <tbody>
            {onPage(upTheLine(report.tieIns), from, AT_ONCE).map((finding) => (
              <SelectableRow key={finding.tieIn.id} id={finding.tieIn.id}>
                <TieInCells finding={finding} {...part} />
              </SelectableRow>
            ))}
          </tbody>
        </table>
      </Scroll>
      <Pages
        from={from}
        most={AT_ONCE}
        of={report.tieIns.length}
        what="tie-ins"
        href={(page) => `/lines/${lineId}/camera/tie-ins?page=${page}`}
      />
    </div>
  );
}

/** What was moved last, to be undone with one press. */
function JustMoved({ lineId, file, mayRecord }: LinePart) {
  const last = undoableMove(file);
  if (last === null || !mayRecord) return null;
  return (
    <ActionForm
      action={undoSightingsAction.bind(null, lineId)}
      className={`screen-only ${styles["undo"]}`}
      label="Undo last move"
    >
      <input type="hidden" name="historyId" value={last.id} />
      <p>{last.sentence}</p>
      <SubmitButton quiet pendingWord="Undoing …">
        Undo
      </SubmitButton>
    </ActionForm>
  );
}

function TieInCells({ finding, ...part }: LinePart & { readonly finding: TieInFinding }) {
  const { tieIn, station, uncertainty, side, compass, sightings } = finding;
  return (
    <>
      <th scope="row">
        {tieIn.label}
        <SameAs finding={finding} {...part} />
      </th>
      <td className="num nowrap" data-title="Station, ft:">
        {station === null ? "no station" : feetWithin(station, uncertainty)}
      </td>
      <td data-title="Side:">{sideWords(side, compass)}</td>
      <td>{seenAs(finding)}</td>
      <td>
        {sightings.length === 0 ? (
          <span className="muted">none; entered by hand</span>
        ) : (
          <ul className={styles["sightings"]}>
            {sightings.map((sighting) => (
              <li key={sighting.observationId}>
                <Sighting sighting={sighting} tieInId={tieIn.id} {...part} />
              </li>
            ))}
          </ul>
        )}
      </td>
    </>
  );
}

function seenAs({ tieIn }: TieInFinding): string {
  const parts = [
    tieIn.diameter === null ? "" : `${tieIn.diameter} in`,
    tieIn.material === "unknown" ? "" : MATERIAL_WORDS[tieIn.material],
    tieIn.fitting === "unknown" ? "" : FITTING_WORDS[tieIn.fitting],
  ].filter((part) => part !== "");
  return parts.length === 0 ? "not recorded" : parts.join(", ");
}

function Sighting({
  sighting,
  tieInId,
  lineId,
  file,
  report,
  mayRecord,
}: LinePart & { readonly sighting: StationedObservation; readonly tieInId: string }) {
  const seen = file.observations.find((each) => each.id === sighting.observationId);
  const run = file.runs.find((each) => each.id === sighting.runId);
  if (seen === undefined || run === undefined) return null;
  const words = `${run.name}, counter ${plainFeet(seen.counter)}`;
  if (!mayRecord) return words;
  const others = otherTieIns(report.tieIns, tieInId);
  const alone = report.tieIns.some(
    (each) => each.tieIn.id === tieInId && each.sightings.length < 2,
  );
  const own = alone ? [] : [{ value: "new", label: "a separate tie-in" }];
  if (others.length + own.length === 0) return words;
  return (
    <details className={styles["move"]}>
      <summary>
        {words}
        <span className="hidden"> (move this sighting)</span>
      </summary>
      <ActionForm
        action={moveSightingAction.bind(null, lineId)}
        className="cluster cluster-end"
        label={`Move ${words}`}
      >
        <input type="hidden" name="observationId" value={sighting.observationId} />
        <Choice label="Actually is" name="tieInId" options={[...own, ...others]} />
        <SubmitButton quiet pendingWord="Moving …">
          Move
        </SubmitButton>
      </ActionForm>
    </details>
  );
}

function otherTieIns(findings: readonly TieInFinding[], tieInId: string) {
  return findings
    .filter((each) => each.tieIn.id !== tieInId)
    .map(({ tieIn, station }) => ({
      value: tieIn.id,
      label: `${tieIn.label}, ${station === null ? "no station" : `${plainFeet(station)} ft`}`,
    }));
}

/** Two tie-ins that are one: all sightings of this one go to the other. */
function SameAs({
  finding,
  lineId,
  report,
  mayRecord,
}: LinePart & { readonly finding: TieInFinding }) {
  const { tieIn, sightings } = finding;
  const others = otherTieIns(report.tieIns, tieIn.id);
  if (!mayRecord || others.length === 0 || sightings.length === 0) return null;
  return (
    <details className={`screen-only ${styles["move"]}`}>
      <summary className="small">
        Merge<span className="hidden"> {tieIn.label} with another tie-in</span>
      </summary>
      <ActionForm
        action={mergeTieInsAction.bind(null, lineId)}
        className="cluster cluster-end"
        label={`Merge ${tieIn.label} with another tie-in`}
      >
        <input type="hidden" name="tieInId" value={tieIn.id} />
        <Choice label={`${tieIn.label} is the same as`} name="intoId" options={others} />
        <SubmitButton quiet pendingWord="Merging …">
          Merge
        </SubmitButton>
      </ActionForm>
    </details>
  );
}

/** For what the sightings got wrong, or could not tell: a branch that joins another branch. */
export function TieInsByHand({ lineId, file, report, revisions, mayFile, mayRecord }: LinePart) {
  return (
    <Section
      title="Edit tie-ins"
      folded="correct one by hand, or set which branch it joins"
      id="by-hand"
    >
      <RowsGrid
        lineId={lineId}
        table="tieIns"
        base={revisions.tieIns}
        rows={file.tieIns}
        columns={tieInColumns(file, facesOf(file, report.tieIns))}
        addWord="tie-in"
        emptyWords="No tie-ins yet. They come from the observations."
        readOnly={!(mayFile || mayRecord)}
      />
    </Section>
  );
}
