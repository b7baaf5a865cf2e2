import { expect, test } from "vitest";
import { fieldTitle } from "#lib/domain/form/field-title.ts";
import { type PrintedWords, withPrintedLabels } from "#lib/domain/form/printed-label.ts";
import { suggestedMapping } from "#lib/domain/form/suggest.ts";
import { aField } from "../../../support/form.ts";

function words(text: string, left: number, top: number, page = 1): PrintedWords {
  return { page, left, top, width: text.length * 5, height: 9, text };
}

function at(name: string, left: number, top: number, width = 100, more = {}) {
  return aField(name, { places: [{ page: 1, left, top, width, height: 16 }], ...more });
}

function labels(fields: Parameters<typeof withPrintedLabels>[0], printed: PrintedWords[]) {
  return withPrintedLabels(fields, printed).map((field) => field.printed);
}

test("a field takes the words before it, joined; those beyond another field are that one’s", () => {
  const fields = [at("a", 120, 100), at("b", 300, 100)];
  const printed = [words("Owner’s", 50, 104), words("name:", 89, 104), words("Phone", 260, 104)];
  expect(labels(fields, printed)).toEqual(["Owner’s name", "Phone"]);
  expect(labels(fields, printed.slice(0, 2))).toEqual(["Owner’s name", ""]);
});

test("with nothing before it, a field takes the words right above its beginning", () => {
  const fields = [at("a", 50, 100, 200), at("b", 260, 100, 200)];
  const printed = [words("License", 50, 88), words("Good through", 260, 88), words("Far", 50, 40)];
  expect(labels(fields, printed)).toEqual(["License", "Good through"]);
});

test("a check box takes the words after it; words of another page or far away are nobody’s", () => {
  const box = at("c", 50, 100, 14, { kind: "check" });
  expect(labels([box], [words("1.", 30, 102), words("Repair", 70, 102)])).toEqual(["Repair"]);
  expect(labels([box], [words("Repair", 70, 102, 2), words("Note", 400, 102)])).toEqual([""]);
});

test("a field whose name says nothing is called, and suggested for, as is printed beside it", () => {
  const printed = "Owner name";
  expect(fieldTitle(aField("Text12", { printed }))).toBe(printed);
  expect(fieldTitle(aField("Lot", { printed }))).toBe("Lot");
  expect(suggestedMapping(aField("Text12", { printed }))?.fact).toBe("owner.name");
  expect(suggestedMapping(aField("Text12", { printed: "Office use only" }))?.source).toBe("blank");
  expect(suggestedMapping(aField("Text12"))).toBeNull();
});
