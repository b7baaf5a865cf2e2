"use server";

import { z } from "zod";
import { formAction, jobAction, onLine } from "#app/action.ts";
import { piecesToStart } from "#lib/domain/closing/built-parts.ts";
import { reportOn } from "#lib/domain/report/report-on.ts";
import { ok } from "#lib/result.ts";
import { appendRows } from "../../append-rows.ts";

/** Makes the as-built one PDF. */
export const buildAsBuiltAction = jobAction("as-built", "work-the-file");

/** A row to measure for each piece of work that is recorded as done. */
export const startMeasuringAction = formAction(onLine, {
  may: "record-the-field",
  typed: z.object({}),
  does: (act, { lineId }) =>
    appendRows(act, { lineId, table: "builtPieces" }, (file) =>
      ok(piecesToStart(file, reportOn(file, act.today), act.newId)),
    ),
  says: ({ count }) =>
    count === 0 ? "Everything recorded as done has a row." : "Rows added. Enter what was measured.",
});
