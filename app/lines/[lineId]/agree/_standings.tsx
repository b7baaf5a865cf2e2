import { SelectableRow } from "#app/_components/row-select.client.tsx";
import { Scroll } from "#app/_components/scroll.tsx";
import { Section } from "#app/_components/section.tsx";
import type { EntryFinding, TieInFinding } from "#lib/domain/file/report.ts";
import { STANDING_WORDS } from "../_field-terms.ts";
import { propertyName } from "../_names.ts";
import type { LinePart } from "../_part.ts";
import stacked from "../stacked.module.css";
import { entryWords, placeWords } from "./_pairings-view.ts";

/** Every tie-in, and every entry that has none, each with its standing in one sentence. */
export function Standings({ file, report }: LinePart) {
  const alone = report.entries.filter((each) => each.tieInId === null);
  if (report.tieIns.length + alone.length === 0) return null;
  return (
    <Section title="Where each one stands" note="From the main upwards.">
      <Scroll>
        <table className={`plain ${stacked["stacked"]}`}>
          <thead>
            <tr>
              <th scope="col">Tie-in</th>
              <th scope="col">Where</th>
              <th scope="col">Stands as</th>
              <th scope="col">In a sentence</th>
              <th scope="col">Whose</th>
            </tr>
          </thead>
          <tbody>
            {inOrder(report.tieIns).map((finding) => (
              <SelectableRow key={finding.tieIn.id} id={finding.tieIn.id}>
                <th scope="row">{finding.tieIn.label}</th>
                <td className="nowrap">{placeWords(finding)}</td>
                <td>
                  <StandingTag finding={finding} />
                </td>
                <td>{finding.sentence}</td>
                <td data-title="Whose:">
                  {finding.propertyId === null ? (
                    <span className="muted">unknown</span>
                  ) : (
                    propertyName(file, finding.propertyId)
                  )}
                </td>
              </SelectableRow>
            ))}
            {alone.map((finding) => (
              <SelectableRow key={finding.entryId} id={finding.entryId}>
                <EntryCells finding={finding} words={entryWords(file, finding.entryId)} />
              </SelectableRow>
            ))}
          </tbody>
        </table>
      </Scroll>
    </Section>
  );
}

function EntryCells({
  finding,
  words,
}: {
  readonly finding: EntryFinding;
  readonly words: { readonly label: string; readonly place: string };
}) {
  return (
    <>
      <th scope="row">
        {words.label} <span className="muted small">on record</span>
      </th>
      <td className="nowrap">{words.place}</td>
      <td>
        <span className="tag">{STANDING_WORDS[finding.standing]}</span>
      </td>
      <td>{finding.sentence}</td>
      <td className="muted">none seen</td>
    </>
  );
}

function StandingTag({ finding }: { readonly finding: TieInFinding }) {
  const loud = finding.standing === "undocumented" && finding.propertyId === null;
  return (
    <>
      <span className={loud ? "tag tag-loud" : "tag"}>{STANDING_WORDS[finding.standing]}</span>
      {finding.decided ? null : <span className="muted small"> proposed</span>}
    </>
  );
}

/** By station; those without one last. */
function inOrder(findings: readonly TieInFinding[]): TieInFinding[] {
  const last = Number.MAX_SAFE_INTEGER;
  return findings.toSorted((a, b) => (a.station ?? last) - (b.station ?? last));
}
