"use server";

import { z } from "zod";
import { formAction, onLine } from "#app/action.ts";
import { checked, numberOrNull, oneIn, text, textOrNull } from "#app/fields.ts";
import { TEST_RESULTS } from "#lib/domain/facts/test.ts";
import type { TestStop } from "#lib/domain/facts/test-day.ts";
import { dropTestDay, planTestDay } from "#lib/operations/plan-test-day.ts";
import { recordTestResult } from "#lib/operations/record-test-result.ts";
import { err } from "#lib/result.ts";
import { pathOnForm, stopFrom, stopPlaces, time } from "./stop-fields.ts";

/** Plans a test day, or changes its plan; stops without an address are left out. */
export const planDayAction = formAction(onLine, {
  may: "record-the-field",
  typed: z.object({
    dayId: textOrNull,
    seen: textOrNull,
    on: text,
    controlPropertyId: textOrNull,
    plantToldOn: textOrNull,
    plantTold: text,
    note: text,
  }),
  does: (act, plan, form) => {
    const places = stopPlaces(form);
    const stops: TestStop[] = [];
    for (const at of places) {
      const stop = stopFrom(form, at);
      if (!stop.ok) return stop;
      stops.push(stop.value);
    }
    const planned = planTestDay(act, { ...plan, stops });
    if (planned.ok) return planned;
    return err({ ...planned.error, path: pathOnForm(planned.error.path, places) });
  },
  says: "The plan is saved.",
  leadsTo: (planned, { lineId, dayId }) =>
    dayId === null ? addressOf(lineId, planned.dayId) : null,
});

/** Drops the plan of a day without results. */
export const dropDayAction = formAction(onLine, {
  may: "record-the-field",
  typed: z.object({ dayId: text }),
  does: dropTestDay,
  says: "",
  leadsTo: (_value, { lineId }) => `/lines/${lineId}/reconcile/test-day`,
});

/** Records what was seen at one stop. */
export const recordResultAction = formAction(onLine, {
  may: "record-the-field",
  typed: z.object({
    result: oneIn(TEST_RESULTS, "Choose what was seen."),
    dayId: text,
    stop: text,
    tieInId: text,
    startedAt: time,
    minutes: numberOrNull,
    quantity: text,
    dosedBy: text,
    watchedBy: text,
    filmed: text,
    otherWaterBarred: checked,
    note: text,
    seen: text,
  }),
  does: recordTestResult,
  says: "Saved.",
  theirs: "above these buttons",
});

function addressOf(lineId: string, dayId: string): string {
  return `/lines/${lineId}/reconcile/test-day?day=${encodeURIComponent(dayId)}`;
}
