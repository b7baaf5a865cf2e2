import Link from "next/link";
import { ActionForm } from "#app/_components/action-form.client.tsx";
import { SubmitButton } from "#app/_components/button.tsx";
import { SelectableRow } from "#app/_components/row-select.client.tsx";
import { Scroll } from "#app/_components/scroll.tsx";
import { Section } from "#app/_components/section.tsx";
import type { Alternative } from "#lib/domain/findings/report.ts";
import { formatFeet } from "#lib/domain/length/station.ts";
import type { LinePart } from "../../part.ts";
import { acceptAlternativeAction } from "../actions.ts";
import { ReasonField } from "../reason-field.tsx";
import { LINE_UP_REASONS } from "../reasons.ts";
import styles from "../reconcile.module.css";
import { type ComparedRow, comparedRows, wayLetter } from "./alternatives-view.ts";
import { movedWords } from "./line-up-view.ts";

/** Other matches that the numbers allow, beside what is proposed; none where it is clear. */
export function Alternatives(part: LinePart & { readonly look: string | null }) {
  const { file, report } = part;
  const { alternatives } = report;
  if (alternatives.length === 0) return null;
  const rows = comparedRows(file, report);
  return (
    <Section
      title="Other possible matches"
      id="ways"
      note="These are too close to call from the numbers alone. One known point on both, a dye test or a taped measurement will settle it."
    >
      <Scroll>
        <table className={`plain ${styles["ways"]}`}>
          <thead>
            <tr>
              <th scope="col">Tie-in</th>
              <th scope="col">
                Current
                <span className={styles["way-zero"]}>
                  {report.alignment === null ? "" : movedWords(report.alignment)}
                </span>
              </th>
              {alternatives.map((way, at) => (
                <th key={way.key} scope="col" aria-current={way.key === part.look}>
                  {wayLetter(at)}
                  <span className={styles["way-zero"]}>{movedWords(way)}</span>
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {rows.map((row) => (
              <SelectableRow key={row.tieInId} id={row.tieInId}>
                <RowCells row={row} />
              </SelectableRow>
            ))}
          </tbody>
        </table>
      </Scroll>
      <ol className={styles["proposals"]}>
        {alternatives.map((way, at) => (
          <li key={way.key} className={styles["way"]}>
            <Way way={way} letter={wayLetter(at)} {...part} />
          </li>
        ))}
      </ol>
    </Section>
  );
}

function RowCells({ row }: { readonly row: ComparedRow }) {
  return (
    <>
      <th scope="row" className="nowrap">
        {row.label}
      </th>
      {row.cells.map(({ key, entry, distance, differs }) => (
        <td key={key} className={differs ? "strong" : "muted"}>
          {entry === "" ? "none" : entry}
          {distance === null ? null : (
            <span className="nowrap small"> {formatFeet(Math.abs(distance))} difference</span>
          )}
        </td>
      ))}
    </>
  );
}

function Way({
  way,
  letter,
  lineId,
  look,
  mayFile,
}: LinePart & {
  readonly way: Alternative;
  readonly letter: string;
  readonly look: string | null;
}) {
  const chosen = way.key === look;
  return (
    <>
      <p>
        <span className="tag">{letter}</span> {way.sentence}
      </p>
      <div className="cluster screen-only">
        <Link href={chosen ? "?" : `?look=${way.key}`} scroll={false}>
          {chosen ? "Back to the current match" : "Show it on the strip"}
          <span className="hidden"> ({letter})</span>
        </Link>
      </div>
      {mayFile ? (
        <details className="screen-only">
          <summary>
            Use this match instead<span className="hidden">: {letter}</span>
          </summary>
          <ActionForm
            action={acceptAlternativeAction.bind(null, lineId)}
            className={styles["decide"] ?? ""}
            label={`Use match ${letter}`}
          >
            <input type="hidden" name="key" value={way.key} />
            <ReasonField presets={LINE_UP_REASONS} />
            <div>
              <SubmitButton quiet pendingWord="Accepting …">
                Accept {letter}
              </SubmitButton>
            </div>
          </ActionForm>
        </details>
      ) : null}
    </>
  );
}
