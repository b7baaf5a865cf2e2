import type { LineFile } from "#lib/domain/facts/line-file.ts";
import type { RowTable } from "#lib/domain/facts/row-table.ts";
import { withStateWritten } from "#lib/domain/party/address.ts";
import { addressProblems } from "#lib/domain/party/address-check.ts";
import { phoneProblem } from "#lib/domain/party/phone.ts";

/**
 * States, ZIP codes and phone numbers that were typed as none, each with how to write it. Rows that
 * stood in the file before are left alone while these fields stay as they were.
 */
export function oddlyTyped({
  table,
  before,
  after,
}: {
  readonly table: RowTable;
  readonly before: LineFile;
  readonly after: LineFile;
}): { row: number; column: string; message: string }[] {
  if (table === "properties") {
    const was = new Map(before.properties.map(({ id, address }) => [id, address]));
    return after.properties.flatMap(({ id, address }, row) =>
      addressProblems(address)
        .filter(({ field }) => was.get(id)?.[field] !== address[field])
        .map(({ field, message }) => ({ row, column: `address.${field}`, message })),
    );
  }
  if (table !== "digAreas") return [];
  const was = new Map(before.digAreas.map(({ id, contactPhone }) => [id, contactPhone]));
  return after.digAreas.flatMap(({ id, contactPhone }, row) => {
    const message = phoneProblem(contactPhone);
    if (message === null || was.get(id) === contactPhone) return [];
    return [{ row, column: "contactPhone", message }];
  });
}

/** States as they were typed now, in their two letters; those that stood in the file are left alone. */
export function statesWritten(
  after: LineFile,
  { table, before }: { readonly table: RowTable; readonly before: LineFile },
): LineFile {
  if (table !== "properties") return after;
  const was = new Map(before.properties.map(({ id, address }) => [id, address.state]));
  const properties = after.properties.map((property) => {
    const { id, address } = property;
    if (was.get(id) === address.state) return property;
    const written = withStateWritten(address);
    return written === address ? property : { ...property, address: written };
  });
  return { ...after, properties };
}
