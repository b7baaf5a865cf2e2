import { describe, expect, test } from "vitest";
import {
  OBSERVATION_BLANK,
  OBSERVATION_COLUMNS,
} from "#app/lines/[lineId]/camera/observation-columns.ts";
import { rowFromForm } from "#app/lines/[lineId]/row-form.ts";

function formOf(fields: Record<string, string>): FormData {
  const form = new FormData();
  for (const [name, value] of Object.entries(fields)) form.set(name, value);
  return form;
}

describe("rowFromForm()", () => {
  test("rowFromForm() reads lengths, clock, size and video time as the table's cells do", () => {
    const form = formOf({
      counter: "24.1",
      kind: "tie-in",
      clock: "9:30",
      diameter: "4 in",
      videoSecond: "2:58",
      material: "vitrified-clay",
      fitting: "break-in",
    });
    expect(rowFromForm(OBSERVATION_COLUMNS, form, OBSERVATION_BLANK)).toEqual({
      ok: true,
      value: {
        ...OBSERVATION_BLANK,
        counter: 2_410,
        clock: 9.5,
        diameter: 4,
        videoSecond: 178,
        material: "vitrified-clay",
        fitting: "break-in",
        note: "",
      },
    });
  });

  test("rowFromForm() names the field that is missing and what goes there", () => {
    expect(rowFromForm(OBSERVATION_COLUMNS, formOf({ kind: "fault" }), {})).toEqual({
      ok: false,
      error: { path: "counter", message: "Counter: needed." },
    });
  });

  test("rowFromForm() takes a box that is not ticked for no", () => {
    const columns = [{ key: "otherWaterBarred", title: "Other water off", kind: "yesno" }] as const;
    expect(rowFromForm(columns, formOf({}), {})).toEqual({
      ok: true,
      value: { otherWaterBarred: false },
    });
    expect(rowFromForm(columns, formOf({ otherWaterBarred: "yes" }), {})).toEqual({
      ok: true,
      value: { otherWaterBarred: true },
    });
  });
});
