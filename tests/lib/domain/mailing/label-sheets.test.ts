import { expect, test } from "vitest";
import { LABEL_SHEETS } from "#lib/domain/mailing/label-sheets.ts";

test.each(LABEL_SHEETS)("$name lies in the middle of a letter-size sheet", (sheet) => {
  const { columns, rows, width, height, left, top, across, down } = sheet;
  expect(left * 2 + (columns - 1) * across + width).toBeCloseTo(8.5, 6);
  expect(top * 2 + (rows - 1) * down + height).toBeCloseTo(11, 6);
  expect(across).toBeGreaterThanOrEqual(width);
  expect(down).toBeGreaterThanOrEqual(height);
  expect(sheet.name).toContain(String(columns * rows));
});
