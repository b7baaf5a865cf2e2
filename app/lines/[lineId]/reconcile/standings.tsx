import Link from "next/link";
import { SelectableRow } from "#app/_components/row-select.client.tsx";
import { Scroll } from "#app/_components/scroll.tsx";
import { Section } from "#app/_components/section.tsx";
import type { EntryFinding, TieInFinding } from "#lib/domain/findings/report.ts";
import { isOwnerOpen, isUnsettled } from "#lib/domain/tiein/open-question.ts";
import { STANDING_WORDS } from "../field-terms.ts";
import { propertyName } from "../names.ts";
import type { LinePart } from "../part.ts";
import stacked from "../stacked.module.css";
import { entryWords, placeWords } from "./pairings-view.ts";

type Language = "en" | "es";

/** Every tie-in, and every entry that has none, each with its standing in one sentence. */
export function Standings({ file, report, language }: LinePart & { readonly language: Language }) {
  const alone = report.entries.filter((each) => each.tieInId === null);
  if (report.tieIns.length + alone.length === 0) return null;
  return (
    <Section
      title="Where each one stands"
      id="standings"
      note="From the main upwards."
      actions={<LanguageSwitch language={language} />}
    >
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
                <Sentence finding={finding} language={language} />
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
                <EntryCells
                  finding={finding}
                  words={entryWords(file, finding.entryId)}
                  language={language}
                />
              </SelectableRow>
            ))}
          </tbody>
        </table>
      </Scroll>
    </Section>
  );
}

/** The sentences as they are told to a neighbour who reads Spanish, or in English again. */
function LanguageSwitch({ language }: { readonly language: Language }) {
  return language === "en" ? (
    <Link href="?in=es#standings" scroll={false}>
      The sentences in Spanish
    </Link>
  ) : (
    <Link href="?#standings" scroll={false}>
      The sentences in English
    </Link>
  );
}

function Sentence({
  finding,
  language,
}: {
  readonly finding: TieInFinding | EntryFinding;
  readonly language: Language;
}) {
  return language === "es" ? <td lang="es">{finding.sentenceEs}</td> : <td>{finding.sentence}</td>;
}

function EntryCells({
  finding,
  words,
  language,
}: {
  readonly finding: EntryFinding;
  readonly words: { readonly label: string; readonly place: string };
  readonly language: Language;
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
      <Sentence finding={finding} language={language} />
      <td className="muted">none seen</td>
    </>
  );
}

function StandingTag({ finding }: { readonly finding: TieInFinding }) {
  const loud = isOwnerOpen(finding);
  const shown = isUnsettled(finding);
  const settled = finding.standing === "undocumented" && !loud && !shown;
  return (
    <>
      <span className={loud ? "tag tag-loud" : "tag"}>{STANDING_WORDS[finding.standing]}</span>
      {settled ? <span className="muted small"> settled</span> : null}
      {shown ? <span className="muted small"> shown by tests, to be settled</span> : null}
      {finding.decided ? null : <span className="muted small"> proposed</span>}
    </>
  );
}

/** By station; those without one last. */
function inOrder(findings: readonly TieInFinding[]): TieInFinding[] {
  const last = Number.MAX_SAFE_INTEGER;
  return findings.toSorted((a, b) => (a.station ?? last) - (b.station ?? last));
}
