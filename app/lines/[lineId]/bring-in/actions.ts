"use server";

import { z } from "zod";
import { askAction } from "#app/action.ts";
import { id } from "#app/fields.ts";
import { requireAct } from "#app/session.ts";
import { readTableApart } from "#lib/exchange/table-file/read-table-apart.ts";
import type { TableFile } from "#lib/exchange/table-file/sheet.ts";
import { bringInPeople } from "#lib/operations/bring-in-people.ts";
import { BRINGABLE, bringInRows } from "#lib/operations/bring-in-rows.ts";
import { err, type Result } from "#lib/result.ts";

/** The rows of a file that a person chose; nothing is stored. */
export async function readTableAction(form: FormData): Promise<Result<TableFile, string>> {
  await requireAct("record-the-field");
  const file = form.get("file");
  if (!(file instanceof File)) return err("Choose a file first.");
  return readTableApart(new Uint8Array(await file.arrayBuffer()));
}

/** Rows as read from a file; the operation looks at each. */
const rows = z.custom<object>((row) => typeof row === "object" && row !== null).array();

/** Brings a list of owners into the properties and people of a line. */
export const bringInPeopleAction = askAction({
  may: "work-the-file",
  takes: z.tuple([id, rows]),
  does: (act, [lineId, listed]) => bringInPeople(act, { lineId, rows: listed }),
});

const target = z.object({ table: z.enum(BRINGABLE), to: id, rows, doubles: z.boolean() });

/** Brings rows into a record or a run: what came in, and what is to be fixed. */
export const bringInAction = askAction({
  may: "record-the-field",
  takes: z.tuple([id, target]),
  does: (act, [lineId, input]) => bringInRows(act, { ...input, lineId }),
});
