"use server";

import { z } from "zod";
import { formAction, onLine, onLineAt } from "#app/action.ts";
import { feetOrNull, id, oneIn, orNull, text, textOrNull } from "#app/fields.ts";
import { MATERIALS } from "#lib/domain/facts/line.ts";
import { DIRECTIONS, FOOTAGE_FROM, SELF_LEVELING } from "#lib/domain/facts/run.ts";
import { parseBearing } from "#lib/domain/plan/compass.ts";
import { addRun } from "#lib/operations/add-run.ts";
import { mergeTieIns } from "#lib/operations/merge-tie-ins.ts";
import { moveSighting } from "#lib/operations/move-sighting.ts";
import { saveLine } from "#lib/operations/save-line.ts";
import { changedOnLine } from "#lib/operations/seen.ts";
import { undoSightings } from "#lib/operations/undo-sightings.ts";
import { ok } from "#lib/result.ts";
import { appendRows, changeRows } from "../append-rows.ts";
import { rowFromForm } from "../row-form.ts";
import { RUN_BLANK, RUN_COLUMNS } from "./columns.ts";
import { OBSERVATION_BLANK, OBSERVATION_COLUMNS } from "./observation-columns.ts";
import { runWaySeen } from "./run-way-seen.ts";

/** Saves what is known of the shared pipe itself. */
export const savePipeAction = formAction(onLine, {
  may: "work-the-file",
  typed: z.object({
    upperEnd: feetOrNull("Enter feet, e.g. 96.0."),
    mainStation: feetOrNull("Enter feet, e.g. 156.0."),
    diameter: orNull(inchesIn, "Enter inches, e.g. 6."),
    material: oneIn(MATERIALS, "Select a material."),
    mainNote: text,
    bearing: orNull(parseBearing, "Enter degrees from north, e.g. 35, or N 35 E, or NE."),
    bearingFrom: text,
    seen: text,
  }),
  does: (act, { lineId, seen, ...facts }) => saveLine(act, { lineId, facts, seen }),
  says: "Pipe saved.",
  theirs: "under “What happened?”",
});

function inchesIn(typed: string): number | null {
  const inches = Number(typed.replace(/\s*(in|inches|")\.?$/i, ""));
  return Number.isFinite(inches) && inches > 0 ? inches : null;
}

/** Says that an observation is a sighting of another tie-in than was thought. */
export const moveSightingAction = formAction(onLine, {
  may: "record-the-field",
  typed: z.object({ observationId: text, tieInId: textOrNull }),
  does: (act, { tieInId, ...seen }) =>
    moveSighting(act, { ...seen, tieInId: tieInId === "new" ? null : tieInId }),
  says: "Sighting moved.",
});

/** Says that two tie-ins are one. */
export const mergeTieInsAction = formAction(onLine, {
  may: "record-the-field",
  typed: z.object({ tieInId: text, intoId: text }),
  does: mergeTieIns,
  says: "Merged into one tie-in.",
});

/** Puts sightings back as they were before the last move or merge. */
export const undoSightingsAction = formAction(onLine, {
  may: "record-the-field",
  typed: z.object({ historyId: text }),
  does: undoSightings,
  says: "Undone.",
});

/** Adds one thing seen to a run. */
export const addObservationAction = formAction(onLineAt({ runId: id }), {
  may: "record-the-field",
  typed: z.object({}),
  does: (act, { lineId, runId }, form) =>
    appendRows(act, { lineId, table: "observations" }, () => {
      const row = rowFromForm(OBSERVATION_COLUMNS, form, OBSERVATION_BLANK);
      return row.ok ? ok([{ ...row.value, id: act.newId(), runId }]) : row;
    }),
  says: "Added.",
});

/** What the form for a new run asks; all else of a run is typed in its table. */
const ASKED = [
  ...["name", "ranOn", "operator", "accessPoint", "toCounter", "ended"],
  ...["looks", "measuredFrom", "selfLeveling"],
];
const ASKED_COLUMNS = RUN_COLUMNS.filter(({ key }) => ASKED.includes(key));

/** Adds one pass of the camera, as its technician tells it. */
export const addRunAction = formAction(onLine, {
  may: "record-the-field",
  typed: z.object({}),
  does: (act, { lineId }, form) => {
    const run = rowFromForm(ASKED_COLUMNS, form, RUN_BLANK);
    return run.ok ? addRun(act, { lineId, run: run.value }) : run;
  },
  says: "Added.",
});

/** Says how a run was made: which way it looked, where its counter was zeroed, and its head. */
export const saveRunWayAction = formAction(onLineAt({ runId: id }), {
  may: "record-the-field",
  typed: z.object({
    looks: oneIn(DIRECTIONS, "Select which way the camera was looking."),
    measuredFrom: oneIn(FOOTAGE_FROM, "Select where the counter was zeroed."),
    selfLeveling: oneIn(SELF_LEVELING, "Select whether the head levels itself, or unknown."),
    seen: text,
  }),
  does: (act, { lineId, runId, seen, ...way }) =>
    changeRows(act, { lineId, table: "runs" }, (runs, file) => {
      const run = file.runs.find(({ id }) => id === runId);
      const now = run === undefined ? null : runWaySeen(run);
      const changed = changedOnLine(file, seen, { now, about: [runId] });
      return changed ?? ok(runs.map((run) => (run.id === runId ? { ...run, ...way } : run)));
    }),
  says: "Saved. Stations and sides are updated.",
  theirs: "in the line that opens this form",
});
