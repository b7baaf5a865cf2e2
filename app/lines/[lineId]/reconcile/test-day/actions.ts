"use server";

import { revalidatePath } from "next/cache";
import { redirect } from "next/navigation";
import { z } from "zod";
import { type FormState, oneOf, refused, textOf, textOrNull, textsOf, ticked } from "#app/form.ts";
import { stateOf } from "#app/messages.ts";
import { requireAct } from "#app/session.ts";
import { TEST_RESULTS } from "#lib/domain/facts/test.ts";
import { DRAINS, FLOORS, type TestStop } from "#lib/domain/facts/test-day.ts";
import { parseTime } from "#lib/domain/time/time-of-day.ts";
import { dropTestDay, planTestDay } from "#lib/operations/plan-test-day.ts";
import { recordTestResult } from "#lib/operations/record-test-result.ts";

/** More stops than this are no day's work. */
const MOST_STOPS = 60;

/** Plans a test day, or changes its plan; stops without an address are left out. */
export async function planDayAction(
  lineId: string,
  _state: FormState,
  form: FormData,
): Promise<FormState> {
  const act = await requireAct("record-the-field");
  const dayId = textOrNull(form, "dayId");
  const places = stopPlaces(form);
  const planned = planTestDay(act, {
    lineId,
    dayId,
    seen: textOrNull(form, "seen"),
    on: textOf(form, "on"),
    controlPropertyId: textOrNull(form, "controlPropertyId"),
    stops: places.map((at) => stopFrom(form, at)),
    plantToldOn: textOrNull(form, "plantToldOn"),
    plantTold: textOf(form, "plantTold"),
    note: textOf(form, "note"),
  });
  if (!planned.ok) return atPlace(stateOf(planned, { words: "", form }), places);
  revalidatePath(`/lines/${lineId}`, "layout");
  if (dayId === null) redirect(addressOf(lineId, planned.value.dayId));
  return stateOf(planned, { words: "The plan is saved.", form });
}

/** Drops the plan of a day without results. */
export async function dropDayAction(
  lineId: string,
  _state: FormState,
  form: FormData,
): Promise<FormState> {
  const act = await requireAct("record-the-field");
  const dropped = dropTestDay(act, { lineId, dayId: textOf(form, "dayId") });
  if (!dropped.ok) return stateOf(dropped, { words: "", form });
  revalidatePath(`/lines/${lineId}`, "layout");
  redirect(`/lines/${lineId}/reconcile/test-day`);
}

/** Records what was seen at one stop. */
export async function recordResultAction(
  lineId: string,
  _state: FormState,
  form: FormData,
): Promise<FormState> {
  const act = await requireAct("record-the-field");
  const result = oneOf(TEST_RESULTS, textOf(form, "result"));
  if (result === null) return refused("Choose what was seen.", form);
  const minutes = textOf(form, "minutes");
  const recorded = recordTestResult(act, {
    lineId,
    dayId: textOf(form, "dayId"),
    stop: textOf(form, "stop"),
    tieInId: textOf(form, "tieInId"),
    result,
    startedAt: timeFrom(textOf(form, "startedAt")),
    minutes: minutes === "" ? null : Number(minutes),
    quantity: textOf(form, "quantity"),
    dosedBy: textOf(form, "dosedBy"),
    watchedBy: textOf(form, "watchedBy"),
    filmed: textOf(form, "filmed"),
    otherWaterBarred: ticked(form, "otherWaterBarred"),
    note: textOf(form, "note"),
  });
  if (recorded.ok) revalidatePath(`/lines/${lineId}`, "layout");
  return stateOf(recorded, { words: "Saved.", form });
}

/** Numbers of the stops in the form that have an address. */
function stopPlaces(form: FormData): number[] {
  const count = Math.min(Number(textOf(form, "count")) || 0, MOST_STOPS);
  return Array.from({ length: count }, (_, at) => at).filter(
    (at) => textOf(form, `stops.${at}.place`) !== "",
  );
}

/** The plan counts only stops with an address; the sentence stands beside the form's own field. */
function atPlace(state: FormState, places: readonly number[]): FormState {
  const path = state.path.replace(
    /^stops\.(\d+)\./,
    (_, at: string) => `stops.${places[Number(at)] ?? at}.`,
  );
  return { ...state, path: path.replace(/\.(propertyId|unitId|pointId)$/, ".place") };
}

const Place = z.tuple([z.string().nullable(), z.string().nullable(), z.string().nullable()]);

function stopFrom(form: FormData, at: number): TestStop {
  const name = (field: string) => `stops.${at}.${field}`;
  const [propertyId, unitId, pointId] = Place.parse(JSON.parse(textOf(form, name("place"))));
  const gallons = textOrNull(form, name("flushGallons"));
  return {
    propertyId,
    unitId,
    pointId,
    tieInIds: textsOf(form, name("tieInIds")),
    drains: FLOORS.flatMap((floor) => {
      const drain = oneOf(DRAINS, textOf(form, name(`drain.${floor}`)));
      return drain === null ? [] : [{ floor, drain }];
    }),
    fixture: textOf(form, name("fixture")),
    colour: textOf(form, name("colour")),
    dose: textOf(form, name("dose")),
    flushGallons: gallons === null ? null : Number(gallons),
    startsAt: timeFrom(textOf(form, name("startsAt"))),
    waitMinutes: Number(textOf(form, name("waitMinutes"))),
    rinseMinutes: Number(textOf(form, name("rinseMinutes"))),
    passed: oneOf(TEST_RESULTS, textOf(form, name("passed"))),
  };
}

/** `9:40 am` or `09:40` as it is kept; what is no time is left for the operation to refuse. */
function timeFrom(typed: string): string {
  return parseTime(typed) ?? typed;
}

function addressOf(lineId: string, dayId: string): string {
  return `/lines/${lineId}/reconcile/test-day?day=${encodeURIComponent(dayId)}`;
}
