import { Empty } from "#app/_components/empty.tsx";
import { SelectableRow } from "#app/_components/row-select.client.tsx";
import { Scroll } from "#app/_components/scroll.tsx";
import stacks from "#app/_components/stacks.module.css";
import { WORK_KINDS } from "#lib/domain/facts/authority.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import type { Holder, ReachFinding } from "#lib/domain/findings/reach-finding.ts";
import type { Report } from "#lib/domain/findings/report.ts";
import { formatFeet, plainFeet } from "#lib/domain/length/station.ts";
import { listed, propertyName, tieInName } from "../names.ts";
import { HOLDER_WORDS, MATERIAL_WORDS, WORK_WORDS } from "../terms.ts";

/** Every reach with who is served, who holds, who mends and who of the owners answers, and why. */
export function ReachTable({ file, report }: { readonly file: LineFile; readonly report: Report }) {
  if (report.reaches.length === 0) {
    return (
      <Empty title="There are no reaches yet.">
        <p>
          Reaches come of themselves once the line has a length or a tie-in with a station: enter a
          camera run with one known point, or a record entry.
        </p>
      </Empty>
    );
  }
  return (
    <Scroll>
      <table className={`plain ${stacks["stacks"]}`}>
        <thead>
          <tr>
            <th scope="col">Reach</th>
            <th scope="col">Pipe</th>
            <th scope="col">Serves</th>
            <th scope="col">Held by</th>
            <th scope="col">Mended by</th>
            <th scope="col">Who answers</th>
            <th scope="col">Because</th>
          </tr>
        </thead>
        <tbody>
          {report.reaches.map((reach) => (
            <SelectableRow key={reach.from} id={`reach:${reach.from}`}>
              <th scope="row" className="nowrap">
                {plainFeet(reach.from)}–{formatFeet(reach.to)}
              </th>
              <td data-label="Pipe">{pipeWords(reach)}</td>
              <td data-label="Serves">{servedWords(file, reach)}</td>
              <td data-label="Held by">
                <HolderWord holder={reach.holder} />
              </td>
              <td data-label="Mended by">
                <Menders reach={reach} />
              </td>
              <td data-label="Who answers">{answerableWords(file, reach)}</td>
              <td data-label="Because" className="small">
                {reach.reason}
                {reach.citation === "" ? null : <span className="muted"> ({reach.citation})</span>}
              </td>
            </SelectableRow>
          ))}
        </tbody>
      </table>
    </Scroll>
  );
}

/** One word where all kinds of work are alike, else a line for each kind. */
function Menders({ reach }: { readonly reach: ReachFinding }) {
  const { holder, menders } = reach;
  const [first] = WORK_KINDS.map((kind) => menders[kind]);
  if (WORK_KINDS.every((kind) => menders[kind] === first))
    return reach.mender === holder ? <>the same</> : <HolderWord holder={reach.mender} />;
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

function pipeWords(reach: ReachFinding): string {
  const size = reach.diameter === null ? "" : `${reach.diameter} in `;
  return `${size}${MATERIAL_WORDS[reach.material]}`;
}

function servedWords(file: LineFile, reach: ReachFinding): string {
  const known = reach.servedBy.map((id) => propertyName(file, id));
  const unknown = reach.unknownTieIns.map((id) => `unknown owner at ${tieInName(file, id)}`);
  const all = [...known, ...unknown];
  return all.length === 0 ? "nobody known" : listed(all);
}

function answerableWords(file: LineFile, reach: ReachFinding): string {
  if (reach.holder === "authority" && reach.mender === "authority") return "the authority";
  if (sameNames(reach.answerable, reach.servedBy) && reach.unknownTieIns.length === 0) {
    return reach.servedBy.length === 1 ? "the one whom it serves" : "all whom it serves";
  }
  if (reach.answerable.length === 0) return reach.holder === "owners" ? "not settled" : "–";
  return listed(reach.answerable.map((id) => propertyName(file, id)));
}

function sameNames(some: readonly string[], others: readonly string[]): boolean {
  return (
    some.length > 0 && some.length === others.length && some.every((id) => others.includes(id))
  );
}
