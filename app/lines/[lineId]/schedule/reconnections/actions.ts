"use server";

import { done, type FormState, refused } from "#app/form.ts";
import { sentenceOf } from "#app/messages.ts";
import { requireAct } from "#app/session.ts";
import { getLineFile } from "#db/queries/line-file.ts";
import { rowsToStart, tallyOf } from "#lib/domain/reconnection/tally.ts";
import { reportOn } from "#lib/domain/report/report-on.ts";
import { scopeInForce } from "#lib/domain/sharing/scope-in-force.ts";
import { appendRows } from "../../append-rows.ts";

/** Puts every branch that the work closes into the tally, for the crew to measure. */
export async function startTallyAction(
  lineId: string,
  _state: FormState,
  form: FormData,
): Promise<FormState> {
  const act = await requireAct("record-the-field");
  const file = getLineFile(act.db, lineId);
  if (file === null) return refused(sentenceOf({ reason: "not-found", detail: "" }), form);
  const tally = tallyOf(file, scopeInForce(file), reportOn(file, act.today).tieIns);
  const rows = rowsToStart(tally, file, act.newId);
  if (rows.length === 0) return done("Every branch is already in the tally.");
  return appendRows(
    act,
    { lineId, table: "reconnections", rows },
    { form, words: "Tally started." },
  );
}
