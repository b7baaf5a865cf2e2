import { describe, expect, test } from "vitest";
import type { FormField, FormMapping } from "#lib/domain/facts/form.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import type { FormInput } from "#lib/domain/form/fact.ts";
import { FORM_FACTS } from "#lib/domain/form/form-facts.ts";
import { emptyFields, planForm } from "#lib/domain/form/plan-form.ts";
import { reportOn } from "#lib/domain/report/report-on.ts";
import {
  aFile,
  aLand,
  anAddress,
  anEvent,
  anOffice,
  aParty,
  aPermit,
  aProperty,
  aRole,
  aScopeItem,
} from "../../../support/file.ts";
import { aField, aForm, aMapping } from "../../../support/form.ts";
import { sampleLine } from "../../../support/sample-line.ts";

const HOUSES = ["12", "14", "16"];

function aLine(overrides: Parameters<typeof aFile>[0] = {}): LineFile {
  return aFile({
    properties: HOUSES.map((id) =>
      aProperty(id, { address: anAddress(`${id} Fennel Row`), parcel: `000-${id}` }),
    ),
    parties: HOUSES.map((id) => aParty(`o${id}`, { name: `Owner of ${id}`, phone: "3605550134" })),
    roles: HOUSES.map((id) => aRole(`o${id}`, id)),
    ...overrides,
  });
}

function inputOf(file: LineFile, overrides: Partial<FormInput> = {}): FormInput {
  return {
    file,
    report: reportOn(file, "2026-11-25"),
    office: anOffice(),
    authority: { name: "City of Quillhaven" },
    permitKind: "side-sewer",
    ...overrides,
  };
}

function wordsIn(file: LineFile, fields: readonly FormField[], mappings: readonly FormMapping[]) {
  const { answers } = planForm(aForm({ fields, mappings }), inputOf(file), []);
  return answers.map(({ state, words }) => (state === "filled" ? words : state));
}

describe("what goes into a field", () => {
  test("a fact, fixed words, nothing on purpose, nothing known, nothing said", () => {
    const fields = ["a", "b", "c", "d", "e", "f"].map((name) => aField(name));
    const mappings = [
      aMapping("a", "contractor.name"),
      aMapping("b", "", { source: "words", words: "N/A" }),
      aMapping("c", "", { source: "blank" }),
      aMapping("d", "ticket.number"),
      aMapping("e", ""),
    ];
    const form = aForm({ fields, mappings });
    const plan = planForm(form, inputOf(aLine()), []);
    expect(plan.answers.map(({ state, words, from }) => [state, words, from])).toEqual([
      ["filled", "Bellwether Drain and Sewer", "fact"],
      ["filled", "N/A", "words"],
      ["blank", "", "nothing"],
      ["empty", "", "fact"],
      ["empty", "", "nothing"],
      ["unmapped", "", "nothing"],
    ]);
    expect(emptyFields(plan).map(({ field }) => field.name)).toEqual(["d", "e", "f"]);
    expect(plan.fill.values).toHaveLength(2);
  });

  test("what was typed for this line goes before the fact, and may empty a field", () => {
    const form = aForm({
      fields: [aField("who"), aField("note"), aField("agree", { kind: "check" })],
      mappings: [aMapping("who", "contractor.name"), aMapping("note", "line.name")],
    });
    const typed = (field: string, words: string) => ({
      id: field,
      formId: "form-1",
      field,
      words,
      by: "Mara Quill",
      on: "2026-11-25",
    });
    const entries = [typed("who", "Ida Grove"), typed("note", ""), typed("agree", "yes")];
    const gone = typed("gone", "was here");
    const { answers, strays } = planForm(form, inputOf(aLine()), [
      ...entries,
      gone,
      { ...typed("who", "another form’s"), formId: "form-2" },
    ]);
    expect(answers.map(({ state, words }) => [state, words])).toEqual([
      ["filled", "Ida Grove"],
      ["blank", ""],
      ["filled", "checked"],
    ]);
    expect(strays).toEqual([gone]);
  });

  test("days in the form’s manner, amounts, telephone numbers and feet, each with shorter ways", () => {
    const file = aLine({
      scope: [aScopeItem("s", { quantity: 1_250, rate: 10_000 })],
      events: [anEvent("e", { event: "work-begins", on: "2026-12-07" })],
    });
    const keys = ["work.begins", "work.value", "contractor.phone", "pipe.length"];
    const form = aForm({
      fields: keys.map((key) => aField(key)),
      mappings: keys.map((key) => aMapping(key, key)),
      days: "m/d/yyyy",
    });
    const { fill } = planForm(form, inputOf(file), []);
    expect(fill.values.map((value) => (value.kind === "text" ? value.ways : []))).toEqual([
      ["12/7/2026", "12/7/26", "12072026"],
      ["$1,250.00", "1,250.00", "1250.00", "1,250", "1250"],
      ["(360) 555-0101", "360-555-0101", "3605550101"],
      ["100.0", "100"],
    ]);
  });

  test("a place for a signature waits for who signs", () => {
    expect(wordsIn(aLine(), [aField("sign", { kind: "signature" })], [])).toEqual(["to-sign"]);
  });
});

describe("rows", () => {
  const rows = (count: number) =>
    Array.from({ length: count }, (_, at) => [`name${at + 1}`, `parcel${at + 1}`]).flat();
  const fields = (count: number) => rows(count).map((name) => aField(name));
  const mappings = (count: number) =>
    Array.from({ length: count }, (_, at) => [
      aMapping(`name${at + 1}`, "owner.name", { row: at + 1 }),
      aMapping(`parcel${at + 1}`, "owner.parcel", { row: at + 1 }),
    ]).flat();

  test("owners go row by row; a row too many stays empty and is not called for", () => {
    expect(wordsIn(aLine(), fields(4), mappings(4))).toEqual([
      "Owner of 12",
      "000-12",
      "Owner of 14",
      "000-14",
      "Owner of 16",
      "000-16",
      "blank",
      "blank",
    ]);
  });

  test("owners that the form has no row for go onto the attached sheet", () => {
    const form = aForm({ fields: fields(1), mappings: mappings(1) });
    expect(planForm(form, inputOf(aLine()), []).fill.overflow).toEqual([
      {
        title: "Owners, continued from row 1",
        columns: ["Row", "Owner: name", "Owner: parcel number"],
        rows: [
          ["2", "Owner of 14", "000-14"],
          ["3", "Owner of 16", "000-16"],
        ],
      },
    ]);
  });

  test("parcels go row by row with address and legal description, the rest onto the attached sheet", () => {
    const facts = ["property.full-address", "property.parcel", "property.legal"];
    const named = [1, 2].flatMap((row) =>
      facts.map((fact) => ({ name: `${fact} ${row}`, fact, row })),
    );
    const file = aLine();
    const [first, ...others] = file.properties;
    const known = { ...file, properties: [{ ...first, legalDescription: "Lot 3" }, ...others] };
    const form = aForm({
      fields: named.map(({ name }) => aField(name)),
      mappings: named.map(({ name, fact, row }) => aMapping(name, fact, { row })),
    });
    const plan = planForm(form, inputOf(known as LineFile), []);
    expect(plan.answers.map(({ words, state }) => words || state)).toEqual([
      expect.stringMatching(/^12 Fennel Row, /),
      "000-12",
      "Lot 3",
      expect.stringMatching(/^14 Fennel Row, /),
      "000-14",
      "empty",
    ]);
    expect(plan.fill.overflow).toEqual([
      {
        title: "Properties on the line, continued from row 2",
        columns: [
          "Row",
          "Property: whole address",
          "Property: parcel number",
          "Property: legal description",
        ],
        rows: [["3", expect.stringMatching(/^16 Fennel Row, /), "000-16", "unknown"]],
      },
    ]);
  });

  test("all in one field, each once", () => {
    expect(wordsIn(aLine(), [aField("all")], [aMapping("all", "property.address")])).toEqual([
      "12 Fennel Row; 14 Fennel Row; 16 Fennel Row",
    ]);
  });

  test("with nobody on the line the first row is called for", () => {
    expect(wordsIn(aFile({}), fields(2), mappings(2))).toEqual([
      "empty",
      "empty",
      "blank",
      "blank",
    ]);
  });
});

describe("boxes", () => {
  const box = aField("box", { kind: "check" });
  const checks = (fact: string, value: string) =>
    aMapping("box", fact, { when: [{ value, option: "" }] });

  test("a box is checked by one kind of work and not by another; unknown checks nothing", () => {
    const file = aLine({ scope: [aScopeItem("s", { kind: "line" })] });
    expect(wordsIn(file, [box], [checks("work.kind", "line")])).toEqual(["checked"]);
    expect(wordsIn(file, [box], [checks("work.kind", "burst")])).toEqual(["not checked"]);
    const unsaid = aLine({ scope: [aScopeItem("s", { kind: "unknown", title: "Replace pipe" })] });
    expect(wordsIn(unsaid, [box], [checks("work.kind", "dig-and-replace")])).toEqual(["empty"]);
    expect(wordsIn(aLine(), [box], [checks("work.dug", "no")])).toEqual(["empty"]);
  });

  test("a street is dug only where somebody said that it lies there", () => {
    const scope = [aScopeItem("s", { from: 0, to: 1_000 })];
    const street = aLand("l", { kind: "right-of-way", from: 0, to: 600 });
    const lot = aLand("m", { kind: "lot", propertyId: "12", from: 600, to: 1_000 });
    const asked = (land: LineFile["land"]) =>
      wordsIn(aLine({ scope, land }), [box], [checks("work.in-street", "yes")]);
    expect(asked([street])).toEqual(["checked"]);
    expect(asked([lot])).toEqual(["empty"]);
    expect(asked([{ ...lot, from: 0 }])).toEqual(["not checked"]);
  });

  test("an option is selected by its value; one that the form has not is not", () => {
    const file = aLine({ scope: [aScopeItem("s", { kind: "line" })] });
    const field = aField("how", { kind: "choice", options: ["CIPP", "Open cut"] });
    const mapping = (option: string) =>
      aMapping("how", "work.kind", { when: [{ value: "line", option }] });
    expect(wordsIn(file, [field], [mapping("CIPP")])).toEqual(["CIPP"]);
    expect(wordsIn(file, [field], [mapping("Liner")])).toEqual(["empty"]);
  });
});

test("the permit’s number is that of the form’s own kind", () => {
  const file = aLine({
    permits: [
      aPermit("p", { kind: "side-sewer", number: "SS-1" }),
      aPermit("q", { kind: "street-use", number: "SU-2" }),
    ],
  });
  const number = FORM_FACTS.find(({ key }) => key === "permit.number");
  expect(number?.of(inputOf(file, { permitKind: "street-use" }))).toEqual(["SU-2"]);
});

test("every fact has its own key and words, and can be told of a whole line", () => {
  const { file, report, office } = sampleLine();
  const input = {
    file,
    report,
    office,
    authority: { name: "x" },
    permitKind: "side-sewer",
  } as const;
  expect(new Set(FORM_FACTS.map(({ key }) => key)).size).toBe(FORM_FACTS.length);
  expect(new Set(FORM_FACTS.map(({ words }) => words)).size).toBe(FORM_FACTS.length);
  const told = FORM_FACTS.filter((fact) => fact.of(input).length > 0);
  expect(told.length).toBeGreaterThan(FORM_FACTS.length * 0.7);
  for (const fact of FORM_FACTS)
    for (const value of fact.of(input))
      if (fact.kind === "choice") expect(fact.values).toHaveProperty(value);
});
