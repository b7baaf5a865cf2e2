"use server";

import { z } from "zod";
import { formAction, onLine } from "#app/action.ts";
import { rowsToStart, tallyOf } from "#lib/domain/reconnection/tally.ts";
import { reportOn } from "#lib/domain/report/report-on.ts";
import { scopeInForce } from "#lib/domain/sharing/scope-in-force.ts";
import { ok } from "#lib/result.ts";
import { appendRows } from "../../append-rows.ts";

/** Puts every branch that the work closes into the tally, for the crew to measure. */
export const startTallyAction = formAction(onLine, {
  may: "record-the-field",
  typed: z.object({}),
  does: (act, { lineId }) =>
    appendRows(act, { lineId, table: "reconnections" }, (file) => {
      const tally = tallyOf(file, scopeInForce(file), reportOn(file, act.today).tieIns);
      return ok(rowsToStart(tally, file, act.newId));
    }),
  says: ({ count }) => (count === 0 ? "Every branch is already in the tally." : "Tally started."),
});
