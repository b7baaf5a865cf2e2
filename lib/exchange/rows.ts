import type { z } from "zod";
import type { LineFile } from "#lib/domain/file/line-file.ts";
import type { RowTable } from "#lib/domain/file/row-table.ts";
import { rowShapes } from "./shape.ts";

export type { RowTable } from "#lib/domain/file/row-table.ts";

/** The shape of one row of each table as the program holds it: lengths in hundredths of a foot. */
export const ROW_SHAPES: { readonly [T in RowTable]: z.ZodType<LineFile[T][number]> } =
  rowShapes("memory");
