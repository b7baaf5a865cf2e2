import type { z } from "zod";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import { ROW_TABLES, type RowTable } from "#lib/domain/facts/row-table.ts";
import { rowShapes } from "./shape.ts";

export type { RowTable } from "#lib/domain/facts/row-table.ts";

const SHAPES = rowShapes("memory");

/**
 * The shape of one row of each table as the program holds it: lengths in hundredths of a foot. Of the
 * tables that people save whole, and of no other list of a line's file.
 */
export const ROW_SHAPES = Object.fromEntries(
  ROW_TABLES.map((table) => [table, SHAPES[table]]),
) as unknown as { readonly [T in RowTable]: z.ZodType<LineFile[T][number]> };
