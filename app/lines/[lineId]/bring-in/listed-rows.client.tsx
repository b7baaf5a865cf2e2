"use client";

import { Heads } from "#app/_components/heads.tsx";
import { Scroll } from "#app/_components/scroll.tsx";
import type { CellChange } from "#app/_components/typed-cell.ts";
import { ROLE_WORDS } from "#lib/domain/facts/party.ts";
import { type ListedPerson, SAME_AS } from "#lib/domain/party/listed-row.ts";
import type { SheetRow } from "./sort-rows.ts";

type OnSame = (changes: readonly CellChange[]) => void;

/** What rows of a list of owners come to: property, people, where their mail goes, how it was read. */
export function ListedRows({
  title,
  rows,
  onSame,
}: {
  readonly title: string;
  readonly rows: readonly SheetRow[];
  /** Where a person may say that somebody is on file already. */
  readonly onSame?: OnSame;
}) {
  if (rows.length === 0) return null;
  return (
    <div className="stack-tight">
      <h3>{title}</h3>
      <Scroll>
        <table className="plain" aria-label={`${title}: properties and people`}>
          <Heads of={["Row", "Property", "People", "Mail goes to", "How it was read"]} />
          <tbody>
            {rows.map((row) => (
              <ListedLine key={row.number} row={row} {...(onSame ? { onSame } : {})} />
            ))}
          </tbody>
        </table>
      </Scroll>
    </div>
  );
}

function ListedLine({ row, onSame }: { readonly row: SheetRow; readonly onSame?: OnSame }) {
  const { listed, number } = row;
  if (listed === undefined) return null;
  const { property, people, said } = listed;
  return (
    <tr>
      <th scope="row">{number}</th>
      <td>
        {property?.words}
        {property?.isNew === true ? <span className="muted"> (new)</span> : null}
      </td>
      <td>
        {people.map((person, index) => (
          <div key={person.name}>
            {person.name}, {ROLE_WORDS[person.role]}
            {person.there ? <span className="muted"> (on file)</span> : null}
            {onSame === undefined ? null : (
              <SameChoice row={row} person={person} index={index} onSame={onSame} />
            )}
          </div>
        ))}
      </td>
      <td>{[...new Set(people.map(({ mail }) => mail))].join("; ")}</td>
      <td className="muted">{said.join(" ")}</td>
    </tr>
  );
}

/** Somebody on file with nearly this name: whether it is them is for a person to say. */
function SameChoice({
  row,
  person,
  index,
  onSame,
}: {
  readonly row: SheetRow;
  readonly person: ListedPerson;
  readonly index: number;
  readonly onSame: OnSame;
}) {
  const column = SAME_AS[index];
  const chosen = column === undefined ? "" : String(row.fields[column] ?? "");
  if (column === undefined || (person.likely.length === 0 && chosen === "")) return null;
  const say = (text: string) => onSame([{ key: String(row.number), column, text }]);
  if (chosen !== "")
    return (
      <button type="button" className="link-button" onClick={() => say("")}>
        Not the person on file
      </button>
    );
  return person.likely.map(({ partyId, name, because }) => (
    <div key={partyId} className="small">
      {because.join(" ")}{" "}
      <button type="button" className="link-button" onClick={() => say(partyId)}>
        Same person as {name}
      </button>
    </div>
  ));
}
