import Link from "next/link";
import { Heads } from "#app/_components/heads.tsx";
import { SelectableRow } from "#app/_components/row-select.client.tsx";
import { Scroll } from "#app/_components/scroll.tsx";
import { Section } from "#app/_components/section.tsx";
import type { EntryFinding, TieInFinding } from "#lib/domain/findings/report.ts";
import { isOwnerOpen, isUnsettled } from "#lib/domain/tiein/open-question.ts";
import { upTheLine } from "#lib/domain/tiein/up-the-line.ts";
import { Beneath } from "../beneath.tsx";
import { STANDING_WORDS } from "../field-terms.ts";
import { propertyName } from "../names.ts";
import type { LinePart } from "../part.ts";
import stacked from "../stacked.module.css";
import { TakeOut } from "../tables/take-out.tsx";
import { entryWords, sideOf, stationOf } from "./place-words.ts";
import styles from "./reconcile.module.css";

type Language = "en" | "es";

/** Every tie-in, and every entry that has none, each with its status in one sentence. */
export function Statuses({
  lineId,
  file,
  report,
  language,
}: LinePart & { readonly language: Language }) {
  const alone = report.entries.filter((each) => each.tieInId === null);
  if (report.tieIns.length + alone.length === 0) return null;
  return (
    <Section
      title="Status of each tie-in"
      id="standings"
      actions={
        <>
          <TakeOut lineId={lineId} table="connections" what="Schedule of connections" />
          <LanguageSwitch language={language} />
        </>
      }
    >
      <Scroll>
        <table className={`plain ${stacked["stacked"]} ${styles["statuses"]}`}>
          <Heads of={["Tie-in", "Location", "Owner", "Status", "Summary"]} />
          <tbody>
            {upTheLine(report.tieIns).map((finding) => (
              <SelectableRow key={finding.tieIn.id} id={finding.tieIn.id}>
                <th scope="row">{finding.tieIn.label}</th>
                <td className="nowrap">
                  {stationOf(finding)}
                  <Beneath>{sideOf(finding)}</Beneath>
                </td>
                <td className="nowrap" data-title="Owner:">
                  {finding.propertyId === null ? (
                    <span className="muted">unknown</span>
                  ) : (
                    propertyName(file, finding.propertyId)
                  )}
                </td>
                <td>
                  <StandingTag finding={finding} />
                </td>
                <Sentence finding={finding} language={language} />
              </SelectableRow>
            ))}
            {alone.map((finding) => (
              <SelectableRow key={finding.entryId} id={finding.entryId}>
                <EntryCells
                  finding={finding}
                  words={entryWords(file, finding.entryId, finding.compass)}
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

/** The sentences as they are told to a neighbor who reads Spanish, or in English again. */
function LanguageSwitch({ language }: { readonly language: Language }) {
  return language === "en" ? (
    <Link href="?in=es#standings" scroll={false}>
      Summaries in Spanish
    </Link>
  ) : (
    <Link href="?#standings" scroll={false}>
      Summaries in English
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
  return language === "es" ? (
    <td className="small" lang="es">
      {finding.sentenceEs}
    </td>
  ) : (
    <td className="small">{finding.sentence}</td>
  );
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
      <th scope="row">{words.label}</th>
      <td>{words.place}</td>
      <td className="muted nowrap">no tie-in</td>
      <td>
        <span className="tag">{STANDING_WORDS[finding.standing]}</span>
      </td>
      <Sentence finding={finding} language={language} />
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
      {shown ? <span className="muted small"> shown by tests, not settled</span> : null}
      {finding.decided ? null : <span className="muted small"> proposed</span>}
    </>
  );
}
