"use server";

import { revalidatePath } from "next/cache";
import { done, type FormState, oneOf, refused, textOf, textOrNull } from "#app/form.ts";
import { stateOf } from "#app/messages.ts";
import { requireAct } from "#app/session.ts";
import { MATERIALS } from "#lib/domain/facts/line.ts";
import { DIRECTIONS, FOOTAGE_FROM, SELF_LEVELING } from "#lib/domain/facts/run.ts";
import { parseFeet } from "#lib/domain/length/station.ts";
import { parseBearing } from "#lib/domain/plan/compass.ts";
import { mergeTieIns } from "#lib/operations/merge-tie-ins.ts";
import { moveSighting } from "#lib/operations/move-sighting.ts";
import { saveLine } from "#lib/operations/save-line.ts";
import { undoSightings } from "#lib/operations/undo-sightings.ts";
import { appendRows, changeRows } from "../append-rows.ts";
import { rowFromForm } from "../row-form.ts";
import { OBSERVATION_BLANK, OBSERVATION_COLUMNS, RUN_BLANK, RUN_COLUMNS } from "./columns.ts";

/** Saves what is known of the shared pipe itself. */
export async function savePipeAction(
  lineId: string,
  _state: FormState,
  form: FormData,
): Promise<FormState> {
  const act = await requireAct("work-the-file");
  const upperEnd = feetOf(form, "upperEnd");
  if (upperEnd === "wrong") return refused("Enter feet, e.g. 96.0.", form, "upperEnd");
  const mainStation = feetOf(form, "mainStation");
  if (mainStation === "wrong") return refused("Enter feet, e.g. 156.0.", form, "mainStation");
  const diameter = inchesOf(form);
  if (diameter === "wrong") return refused("Enter inches, e.g. 6.", form, "diameter");
  const material = oneOf(MATERIALS, textOf(form, "material"));
  if (material === null) return refused("Select a material.", form, "material");
  const mainNote = textOf(form, "mainNote");
  const bearing = bearingOf(form);
  if (bearing === "wrong")
    return refused("Enter degrees from north, e.g. 35, or N 35 E, or NE.", form, "bearing");
  const bearingFrom = textOf(form, "bearingFrom");
  const saved = saveLine(act, {
    lineId,
    facts: { upperEnd, mainStation, diameter, material, mainNote, bearing, bearingFrom },
  });
  if (saved.ok) revalidatePath(`/lines/${lineId}`, "layout");
  return stateOf(saved, { words: "Pipe saved.", form });
}

/** Says that an observation is a sighting of another tie-in than was thought. */
export async function moveSightingAction(
  lineId: string,
  _state: FormState,
  form: FormData,
): Promise<FormState> {
  const act = await requireAct("record-the-field");
  const observationId = textOf(form, "observationId");
  const to = textOrNull(form, "tieInId");
  const moved = moveSighting(act, { lineId, observationId, tieInId: to === "new" ? null : to });
  if (!moved.ok) return stateOf(moved, { words: "", form });
  revalidatePath(`/lines/${lineId}`, "layout");
  return done("Sighting moved.");
}

/** Says that two tie-ins are one. */
export async function mergeTieInsAction(
  lineId: string,
  _state: FormState,
  form: FormData,
): Promise<FormState> {
  const act = await requireAct("record-the-field");
  const tieInId = textOf(form, "tieInId");
  const merged = mergeTieIns(act, { lineId, tieInId, intoId: textOf(form, "intoId") });
  if (merged.ok) revalidatePath(`/lines/${lineId}`, "layout");
  return stateOf(merged, { words: "Merged into one tie-in.", form });
}

/** Puts sightings back as they were before the last move or merge. */
export async function undoSightingsAction(
  lineId: string,
  _state: FormState,
  form: FormData,
): Promise<FormState> {
  const act = await requireAct("record-the-field");
  const undone = undoSightings(act, { lineId, historyId: textOf(form, "historyId") });
  if (undone.ok) revalidatePath(`/lines/${lineId}`, "layout");
  return stateOf(undone, { words: "Undone.", form });
}

/** Adds one thing seen to a run. */
export async function addObservationAction(
  lineId: string,
  runId: string,
  _state: FormState,
  form: FormData,
): Promise<FormState> {
  const act = await requireAct("record-the-field");
  const read = rowFromForm(OBSERVATION_COLUMNS, form, OBSERVATION_BLANK);
  if (!read.ok) return refused(read.error.message, form, read.error.path);
  const row = { ...read.value, id: act.newId(), runId };
  return appendRows(act, { lineId, table: "observations", rows: [row] }, { form, words: "Added." });
}

/** What the form for a new run asks; all else of a run is typed in its table. */
const ASKED = [
  ...["name", "ranOn", "operator", "accessPoint", "toCounter"],
  ...["looks", "measuredFrom", "selfLeveling"],
];
const ASKED_COLUMNS = RUN_COLUMNS.filter(({ key }) => ASKED.includes(key));

/** Adds one pass of the camera, as its technician tells it. */
export async function addRunAction(
  lineId: string,
  _state: FormState,
  form: FormData,
): Promise<FormState> {
  const act = await requireAct("record-the-field");
  const read = rowFromForm(ASKED_COLUMNS, form, RUN_BLANK);
  if (!read.ok) return refused(read.error.message, form, read.error.path);
  const row = { ...read.value, id: act.newId() };
  return appendRows(act, { lineId, table: "runs", rows: [row] }, { form, words: "Added." });
}

/** Says how a run was made: which way it looked, where its counter was zeroed, and its head. */
export async function saveRunWayAction(
  lineId: string,
  runId: string,
  _state: FormState,
  form: FormData,
): Promise<FormState> {
  const act = await requireAct("record-the-field");
  const looks = oneOf(DIRECTIONS, textOf(form, "looks"));
  if (looks === null) return refused("Select which way the camera was looking.", form, "looks");
  const measuredFrom = oneOf(FOOTAGE_FROM, textOf(form, "measuredFrom"));
  if (measuredFrom === null)
    return refused("Select where the counter was zeroed.", form, "measuredFrom");
  const selfLeveling = oneOf(SELF_LEVELING, textOf(form, "selfLeveling"));
  if (selfLeveling === null)
    return refused("Select whether the head levels itself, or unknown.", form, "selfLeveling");
  return changeRows(
    act,
    {
      lineId,
      table: "runs",
      change: (runs) =>
        runs.map((run) => (run.id === runId ? { ...run, looks, measuredFrom, selfLeveling } : run)),
    },
    { form, words: "Saved. Stations and sides are updated." },
  );
}

function feetOf(form: FormData, name: string): number | null | "wrong" {
  const text = textOf(form, name);
  return text === "" ? null : (parseFeet(text) ?? "wrong");
}

function bearingOf(form: FormData): number | null | "wrong" {
  const text = textOf(form, "bearing");
  return text === "" ? null : (parseBearing(text) ?? "wrong");
}

function inchesOf(form: FormData): number | null | "wrong" {
  const text = textOf(form, "diameter").replace(/\s*(in|inches|")\.?$/i, "");
  if (text === "") return null;
  const inches = Number(text);
  return Number.isFinite(inches) && inches > 0 ? inches : "wrong";
}
