import { distinct } from "#app/_components/grid/choices.ts";
import type { GridColumn } from "#app/_components/grid/column.ts";
import { usualRow } from "#lib/domain/facts/field.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import { TIE_IN_TEST } from "#lib/domain/facts/test.ts";
import { TEST_RESULT_WORDS } from "#lib/domain/tiein/test-words.ts";
import { CONTROL_WORDS, TEST_KIND_WORDS, withNone } from "../../field-terms.ts";
import { propertyName } from "../../names.ts";
import { CONTROL_SYNONYMS, TEST_RESULT_SYNONYMS } from "../../synonyms.ts";
import { optionsOf } from "../../terms.ts";
import { propertyChoices } from "../../who/columns.ts";

/** What is recorded of a test: what proof rests on first, then the rest. */
export function testColumns(file: Pick<LineFile, "properties" | "units">): GridColumn[] {
  const properties = withNone(propertyChoices(file));
  return [
    {
      key: "performedOn",
      title: "Date",
      kind: "day",
      width: 12,
      required: true,
      pasteHeadings: ["day"],
    },
    {
      key: "kind",
      title: "Test",
      kind: "choice",
      choices: optionsOf(TEST_KIND_WORDS),
      width: 11,
      required: true,
    },
    { key: "propertyId", title: "At", kind: "choice", choices: properties, width: 18 },
    {
      key: "result",
      title: "Result",
      kind: "choice",
      choices: optionsOf(TEST_RESULT_WORDS, TEST_RESULT_SYNONYMS),
      width: 12,
      required: true,
      hint: "“Not seen” is weak evidence: note the wait and other water use",
    },
    {
      key: "otherWaterBarred",
      title: "Other water off",
      kind: "yesno",
      width: 12,
      hint: "Was all other water shut off during the test?",
    },
    {
      key: "filmed",
      title: "Video",
      kind: "text",
      width: 14,
      example: "Run 3, 2:10",
      pasteHeadings: ["filmed"],
    },
    { key: "dosedBy", title: "Dye added by", kind: "text", width: 14, pasteHeadings: ["dosed by"] },
    {
      key: "watchedBy",
      title: "Watched by",
      kind: "text",
      width: 14,
      hint: "Two names make it stronger",
    },
    {
      key: "controlPropertyId",
      title: "Control at",
      kind: "choice",
      choices: properties,
      width: 18,
    },
    {
      key: "controlResult",
      title: "Control",
      kind: "choice",
      choices: optionsOf(CONTROL_WORDS, CONTROL_SYNONYMS),
      width: 12,
      hint: "Same test from an address that should not show",
    },
    {
      key: "unitId",
      title: "Unit",
      kind: "choice",
      choices: withNone(unitChoices(file)),
      width: 14,
    },
    { key: "fixture", title: "Fixture", kind: "text", width: 16, example: "Kitchen sink" },
    { key: "colour", title: "Dye color", kind: "text", width: 10, example: "green" },
    { key: "quantity", title: "Amount", kind: "text", width: 11, example: "2 tablets" },
    { key: "startedAt", title: "Started", kind: "time", width: 9, example: "9:40 AM" },
    { key: "firstSeenAt", title: "First seen", kind: "time", width: 9, example: "9:52 AM" },
    { key: "seenAt", title: "Seen at", kind: "feet", width: 8, hint: "Station on the line" },
    { key: "waitMinutes", title: "Wait (min)", kind: "whole", width: 10 },
    { key: "note", title: "Note", kind: "text", width: 26 },
  ];
}

function unitChoices(
  file: Pick<LineFile, "properties" | "units">,
): { readonly value: string; readonly label: string }[] {
  const named = file.units.filter((unit) => unit.name !== "");
  return distinct(
    named.map((unit) => ({
      value: unit.id,
      label: `${unit.name}, ${propertyName(file, unit.propertyId)}`,
    })),
  );
}

export const TEST_BLANK = { ...usualRow(TIE_IN_TEST), kind: "dye", result: "inconclusive" };
