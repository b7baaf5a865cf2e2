import { describe, expect, test } from "vitest";
import { typedAnswers } from "#app/lines/[lineId]/authority/forms/[formId]/typed-answers.ts";
import {
  typedBox,
  typedMappings,
} from "#app/office/authorities/[authorityId]/forms/[formId]/typed-form.ts";
import { aField, aForm, aMapping } from "../../support/form.ts";

function sent(fields: Readonly<Record<string, string | readonly string[]>>): FormData {
  const form = new FormData();
  for (const [name, value] of Object.entries(fields))
    for (const each of [value].flat()) form.append(name, each);
  return form;
}

describe("typedMappings()", () => {
  const form = aForm({
    fields: [
      aField("Name"),
      aField("Owner"),
      aField("Repair", { kind: "check" }),
      aField("Pipe", { kind: "choice", options: ["Vitrified clay", "PVC"] }),
      aField("Elsewhere"),
    ],
    mappings: [aMapping("Name", "line.name"), aMapping("Elsewhere", "line.town")],
  });

  test("reads each row that was shown and keeps the others", () => {
    const typed = typedMappings(
      form,
      sent({
        at: ["0", "1", "2", "3"],
        "from.0": "words",
        "words.0": " Us ",
        "from.1": "fact:owner.name",
        "row.1": "2",
        "from.2": "fact:work.kind",
        "value.2": ["spot-repair", "no such kind"],
        "from.3": "fact:pipe.material",
        "says.3.0": "clay",
      }),
    );
    expect(typed).toEqual({
      ok: true,
      value: [
        aMapping("Name", "", { source: "words", words: "Us" }),
        aMapping("Owner", "owner.name", { row: 2 }),
        aMapping("Repair", "work.kind", { when: [{ value: "spot-repair", option: "" }] }),
        aMapping("Pipe", "pipe.material", { when: [{ value: "clay", option: "Vitrified clay" }] }),
        aMapping("Elsewhere", "line.town"),
      ],
    });
  });

  test("a row that is not decided any more has no mapping", () => {
    expect(typedMappings(form, sent({ at: "0", "from.0": "" }))).toMatchObject({
      value: [{ field: "Elsewhere" }],
    });
  });

  test.each([
    [{ at: "0", "from.0": "words", "words.0": " " }, "words.0"],
    [{ at: "0", "from.0": "fact:no.such" }, "from.0"],
    [{ at: "1", "from.1": "fact:owner.name", "row.1": "two" }, "row.1"],
  ])("%o is told beside its field", (fields, path) => {
    expect(typedMappings(form, sent(fields))).toMatchObject({ ok: false, error: { path } });
  });
});

describe("typedBox()", () => {
  const box = { name: "Parcel", page: "1", left: "2.5", top: ".75", width: "3", height: "0.25" };

  test("is inches from the upper left", () => {
    expect(typedBox({ ...box, kind: "many" })).toMatchObject({
      value: {
        ...{ kind: "text", lines: "many", placed: true },
        places: [{ page: 1, left: 180, top: 54, width: 216, height: 18 }],
      },
    });
  });

  test.each([
    [{ name: "" }, "name"],
    [{ page: "0" }, "page"],
    [{ left: "two" }, "left"],
    [{ height: "-1" }, "height"],
  ])("%o is told beside its field", (wrong, path) => {
    expect(typedBox({ ...box, kind: "one", ...wrong })).toMatchObject({ error: { path } });
  });
});

test("typedAnswers() tells typed, empty on purpose and not typed apart", () => {
  const fields = ["Lot", "Block", "Date", "Not shown", "Sign"].map((name) => aField(name));
  const [lot, block, date, hidden, sign] = fields;
  if (!lot || !block || !date || !hidden || !sign) throw new Error("Five fields");
  const form = { fields: [lot, block, date, hidden, { ...sign, kind: "signature" as const }] };
  expect(
    typedAnswers(
      form,
      sent({ at: ["0", "1", "2", "4"], "typed.0": "7", "empty.1": "yes", "typed.1": "x" }),
    ),
  ).toEqual({ Lot: "7", Block: "", Date: null });
});
