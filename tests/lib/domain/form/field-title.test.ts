import { expect, test } from "vitest";
import { fieldTitle, placeWords } from "#lib/domain/form/field-title.ts";
import { undecidedFields } from "#lib/domain/form/undecided.ts";
import { aField, aMapping } from "../../../support/form.ts";

test.each([
  ["Box A", {}, "Box A"],
  ["topmost[0].OwnerName_2[0]", {}, "Topmost owner name 2"],
  ["f7", { hint: "Parcel number" }, "Parcel number"],
  ["lot_CORNER", { placed: true }, "lot_CORNER"],
  ["***", {}, "***"],
])("the field %s %o is called %s", (name, more, title) => {
  expect(fieldTitle(aField(name, more))).toBe(title);
});

test("a place is told in inches from the upper left", () => {
  expect(placeWords({ page: 2, left: 36, top: 99, width: 10, height: 10 })).toBe(
    "page 2, 0.5 in from the left, 1.38 in from the top",
  );
});

test("a field is undecided until somebody says what goes there; a signature never is", () => {
  const fields = [aField("Lot"), aField("Date"), aField("Sign", { kind: "signature" })];
  const open = undecidedFields({ fields, mappings: [aMapping("Date", "")] });
  expect(open.map(({ name }) => name)).toEqual(["Lot"]);
});
