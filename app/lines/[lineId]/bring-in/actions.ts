"use server";

import { revalidatePath } from "next/cache";
import { oneOf } from "#app/form.ts";
import { sentenceOf } from "#app/messages.ts";
import { requireAct } from "#app/session.ts";
import { readTableApart } from "#lib/exchange/table-file/read-table-apart.ts";
import type { TableFile } from "#lib/exchange/table-file/sheet.ts";
import { bringInPeople } from "#lib/operations/bring-in-people.ts";
import {
  BRINGABLE,
  type Bringable,
  type BroughtIn,
  bringInRows,
} from "#lib/operations/bring-in-rows.ts";
import { err, ok, type Result } from "#lib/result.ts";

/** The rows of a file that a person chose; nothing is stored. */
export async function readTableAction(form: FormData): Promise<Result<TableFile, string>> {
  await requireAct("record-the-field");
  const file = form.get("file");
  if (!(file instanceof File)) return err("Choose a file first.");
  return readTableApart(new Uint8Array(await file.arrayBuffer()));
}

/** Brings a list of owners into the properties and people of a line. */
export async function bringInPeopleAction(
  lineId: string,
  rows: readonly object[],
): Promise<Result<BroughtIn, string>> {
  const act = await requireAct("work-the-file");
  const brought = bringInPeople(act, { lineId, rows });
  if (!brought.ok) return err(sentenceOf(brought.error));
  revalidatePath(`/lines/${lineId}`, "layout");
  return ok(brought.value);
}

/** Brings rows into a record or a run: what came in, and what is to be mended. */
export async function bringInAction(
  lineId: string,
  input: { table: Bringable; to: string; rows: readonly object[]; doubles: boolean },
): Promise<Result<BroughtIn, string>> {
  const act = await requireAct("record-the-field");
  const table = oneOf(BRINGABLE, input.table);
  if (table === null) return err("Open this page again from a record or a run.");
  const brought = bringInRows(act, { ...input, table, lineId });
  if (!brought.ok) return err(sentenceOf(brought.error));
  revalidatePath(`/lines/${lineId}`, "layout");
  return ok(brought.value);
}
