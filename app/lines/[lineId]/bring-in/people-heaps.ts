import { listed } from "#lib/domain/party/listed.ts";
import { type ListedFields, type ListPlace, SAME_AS } from "#lib/domain/party/listed-row.ts";
import type { Work } from "./kept.ts";
import { type Heaps, isWrong, type SheetRow } from "./sort-rows.ts";

/** The rows of a list of owners in three heaps, each with what it comes to. */
export function peopleHeaps(work: Work, rows: readonly SheetRow[], place: ListPlace): Heaps {
  const kept = new Set(work.mend);
  const readable = rows
    .filter((row) => !isWrong(row))
    .map((row) => ({ ...row, fields: fieldsOf(row, work) }));
  let made = 0;
  const read = listed(
    place,
    readable.map(({ fields }) => fields),
    () => {
      made += 1;
      return `new-${made}`;
    },
  );
  const known = new Map(
    readable.map((row, at): [number, SheetRow] => {
      const own = read.rows[at];
      const wrong = own?.problems.map(({ column, message }) => [column, message]) ?? [];
      const problems = { ...row.problems, ...Object.fromEntries(wrong) };
      return [row.number, { ...row, problems, ...(own === undefined ? {} : { listed: own }) }];
    }),
  );
  const heaps: { [H in keyof Heaps]: SheetRow[] } = { ready: [], mend: [], doubles: [] };
  for (const { number, ...rest } of rows) {
    const row = known.get(number) ?? { number, ...rest };
    if (!isWrong(row) && row.listed?.there === true) heaps.doubles.push(row);
    else if (isWrong(row) || kept.has(number)) heaps.mend.push(row);
    else heaps.ready.push(row);
  }
  return heaps;
}

/** The row as it is sent, with who on file a person said its owners are. */
function fieldsOf({ number, fields }: SheetRow, work: Work): ListedFields & SheetRow["fields"] {
  const typed = work.edits[number] ?? {};
  const said = SAME_AS.flatMap((key) => {
    const text = typed[key] ?? "";
    return text === "" ? [] : [[key, text] as const];
  });
  return { ...fields, ...Object.fromEntries(said) };
}
