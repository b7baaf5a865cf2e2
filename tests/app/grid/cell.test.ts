import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { formatCell, parseCell } from "#app/_components/grid/cell.ts";
import type { CellKind, GridColumn } from "#app/_components/grid/column.ts";

function column(kind: CellKind, rest: Partial<GridColumn> = {}): GridColumn {
  return { key: "value", title: "Value", kind, ...rest };
}

const SIDES = column("choice", {
  choices: [
    { value: "", label: "unknown" },
    { value: "left", label: "left" },
    { value: "right", label: "right" },
    { value: "cured-in-place-liner", label: "cured-in-place liner" },
  ],
});

describe("parseCell()", () => {
  test.each([
    ["feet", "26", 2600],
    ["feet", "26.05 ft", 2605],
    ["feet", "0+26.0", 2600],
    ["inches", "4", 4],
    ["inches", '6"', 6],
    ["cents", "$1,250.50", 125_050],
    ["cents", "1250", 125_000],
    ["cents", "-5.00", -500],
    ["whole", "12", 12],
    ["hundredths", "12.5", 1250],
    ["percent", "8.25 %", 825],
    ["day", "11/25/2026", "2026-11-25"],
    ["day", "Nov 25, 2026", "2026-11-25"],
    ["time", "4:05 PM", "16:05"],
    ["time", "7 am", "07:00"],
    ["clock", "9", 9],
    ["clock", "3:30", 3.5],
    ["clock", "3.5", 3.5],
    ["clock", "12:30", 12.5],
    ["video", "2:58", 178],
    ["video", "1:02:58", 3778],
    ["yesno", "y", true],
    ["yesno", "no", false],
  ] as const)("reads %s %s as %s", (kind, typed, value) => {
    expect(parseCell(column(kind), typed)).toEqual({ ok: true, value });
  });

  test.each([
    ["feet", "about 26"],
    ["inches", "six"],
    ["cents", "12.345"],
    ["cents", "1,25"],
    ["whole", "1.5"],
    ["percent", "ten"],
    ["day", "2/30/2026"],
    ["day", "13/1/2026"],
    ["time", "4:05"],
    ["clock", "13"],
    ["clock", "0"],
    ["yesno", "maybe"],
  ] as const)("refuses %s %s in words", (kind, typed) => {
    const read = parseCell(column(kind), typed);
    expect(read.ok).toBe(false);
    expect(read.ok ? "" : read.error).toMatch(/^enter /);
  });

  test("takes an emptied choice as none, else as unknown, else as needed", () => {
    const emptied = (...values: string[]) =>
      parseCell(
        column("choice", { choices: values.map((value) => ({ value, label: value })) }),
        " ",
      );
    expect(emptied("", "unknown", "left")).toEqual({ ok: true, value: null });
    expect(emptied("left", "unknown")).toEqual({ ok: true, value: "unknown" });
    expect(emptied("left", "right")).toEqual({ ok: false, error: "needed" });
  });

  test("takes an empty cell as nothing, an empty text as empty, and misses what is needed", () => {
    expect(parseCell(column("feet"), " ")).toEqual({ ok: true, value: null });
    expect(parseCell(column("text"), "")).toEqual({ ok: true, value: "" });
    expect(parseCell(column("time"), "")).toEqual({ ok: true, value: "" });
    expect(parseCell(column("yesno"), "")).toEqual({ ok: true, value: false });
    expect(parseCell(column("feet", { required: true }), "")).toEqual({
      ok: false,
      error: "needed",
    });
  });

  test("reads a choice by what it begins with and by its words, not by a word from its middle", () => {
    expect(parseCell(SIDES, "ri")).toEqual({ ok: true, value: "right" });
    expect(parseCell(SIDES, "Cured in place liner")).toEqual({
      ok: true,
      value: "cured-in-place-liner",
    });
    expect(parseCell(SIDES, "liner").ok).toBe(false);
    expect(parseCell(SIDES, "unknown")).toEqual({ ok: true, value: null });
    expect(parseCell(SIDES, "up")).toEqual({
      ok: false,
      error: "choose unknown, left, right, cured-in-place liner",
    });
  });
});

test("formatCell() and parseCell() give back every value of every kind of number", () => {
  const kinds = ["feet", "cents", "whole", "hundredths", "percent"] as const;
  fc.assert(
    fc.property(
      fc.constantFrom(...kinds),
      fc.integer({ min: -50_000_000, max: 50_000_000 }),
      (kind, value) => {
        const shown = formatCell(column(kind), value);
        expect(parseCell(column(kind), shown)).toEqual({ ok: true, value });
      },
    ),
  );
});

test("formatCell() and parseCell() give back clock positions, video times and days", () => {
  for (const value of [1, 1.5, 6, 11.5, 12, 12.5]) {
    expect(parseCell(column("clock"), formatCell(column("clock"), value))).toEqual({
      ok: true,
      value,
    });
  }
  for (const value of [0, 59, 60, 178, 3599, 3600, 3778]) {
    expect(parseCell(column("video"), formatCell(column("video"), value))).toEqual({
      ok: true,
      value,
    });
  }
  expect(formatCell(column("day"), "2028-02-29")).toBe("Feb 29, 2028");
  expect(parseCell(column("day"), "Feb 29, 2028")).toEqual({ ok: true, value: "2028-02-29" });
});

test("formatCell() shows the word that stands for null, where the column has one", () => {
  expect(formatCell(SIDES, null)).toBe("unknown");
  expect(formatCell(column("feet"), null)).toBe("");
});
