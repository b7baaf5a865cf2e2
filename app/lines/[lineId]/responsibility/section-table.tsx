import { Empty } from "#app/_components/empty.tsx";
import { Heads } from "#app/_components/heads.tsx";
import { SelectableRow } from "#app/_components/row-select.client.tsx";
import { Scroll } from "#app/_components/scroll.tsx";
import stacks from "#app/_components/stacks.module.css";
import { WORK_KINDS } from "#lib/domain/facts/authority.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import type { Holder } from "#lib/domain/findings/reach-finding.ts";
import { formatFeet, plainFeet } from "#lib/domain/length/station.ts";
import type { Section } from "#lib/domain/responsibility/sections.ts";
import { Beneath } from "../beneath.tsx";
import { listed, propertyName, tieInName } from "../names.ts";
import { HOLDER_WORDS, MATERIAL_WORDS, WORK_WORDS } from "../terms.ts";

/** Every section with who is served, who owns, who repairs and who of the owners is responsible. */
export function SectionTable({
  file,
  sections,
  oneSource,
}: {
  readonly file: LineFile;
  readonly sections: readonly Section[];
  /** All rest on one source, which is told above. */
  readonly oneSource: boolean;
}) {
  if (sections.length === 0) {
    return (
      <Empty title="No sections yet.">
        <p>
          Sections are created automatically once the line has a length or a tie-in with a station:
          enter a camera run with one known point, or a record entry.
        </p>
      </Empty>
    );
  }
  return (
    <Scroll>
      <table className={`plain ${stacks["stacks"]}`}>
        <Heads of={["Section", "Serves", "Owner", "Repaired by", "Responsible", "Pipe"]} />
        <tbody>
          {sections.map((section) => (
            <SelectableRow
              key={section.from}
              id={`reach:${section.from}`}
              also={section.starts.map((from) => `reach:${from}`)}
            >
              <th scope="row" className="nowrap">
                {plainFeet(section.from)}–{formatFeet(section.to)}
              </th>
              <td data-label="Serves">{servedWords(file, section)}</td>
              <td data-label="Owner">
                <HolderWord holder={section.holder} />
              </td>
              <td data-label="Repaired by">
                <Menders section={section} />
              </td>
              <td data-label="Responsible">
                {responsibleWords(file, section)}
                {section.own === "" && (oneSource || section.citation === "") ? null : (
                  <Beneath>
                    {section.own}
                    {oneSource || section.citation === "" ? null : ` (${section.citation})`}
                  </Beneath>
                )}
              </td>
              <td data-label="Pipe">{pipeWords(section)}</td>
            </SelectableRow>
          ))}
        </tbody>
      </table>
    </Scroll>
  );
}

/** One word where all kinds of work are alike, else a line for each kind. */
function Menders({ section: { holder, mender, menders } }: { readonly section: Section }) {
  const [first] = WORK_KINDS.map((kind) => menders[kind]);
  if (WORK_KINDS.every((kind) => menders[kind] === first))
    return mender === holder ? <>the same</> : <HolderWord holder={mender} />;
  return WORK_KINDS.map((kind) => (
    <div key={kind}>
      {WORK_WORDS[kind]}: <HolderWord holder={menders[kind]} />
    </div>
  ));
}

function HolderWord({ holder }: { readonly holder: Holder }) {
  if (holder === "unclear") return <span className="tag tag-loud">unclear</span>;
  return <>{HOLDER_WORDS[holder]}</>;
}

function pipeWords({ pipes }: Section): string {
  const words = pipes.map(({ diameter, material }) => {
    const size = diameter === null ? "" : `${diameter} in `;
    return `${size}${MATERIAL_WORDS[material]}`;
  });
  return [...new Set(words)].join(", ");
}

function servedWords(file: LineFile, { servedBy, unknownTieIns }: Section): string {
  const known = servedBy.map((id) => propertyName(file, id));
  const unknown = unknownTieIns.map((id) => `${tieInName(file, id)} (owner unknown)`);
  const all = [...known, ...unknown];
  return all.length === 0 ? "no one known" : listed(all);
}

function responsibleWords(file: LineFile, section: Section): string {
  const { holder, mender, answerable, servedBy, unknownTieIns } = section;
  if (holder === "authority" && mender === "authority") return "the authority";
  if (sameNames(answerable, servedBy))
    return servedBy.length + unknownTieIns.length === 1
      ? "the property it serves"
      : "all properties it serves";
  if (answerable.length === 0) return holder === "owners" ? "not determined" : "–";
  return listed(answerable.map((id) => propertyName(file, id)));
}

function sameNames(some: readonly string[], others: readonly string[]): boolean {
  return (
    some.length > 0 && some.length === others.length && some.every((id) => others.includes(id))
  );
}
