import fs from "node:fs";
import path from "node:path";
import { expect, test } from "vitest";

const pages = path.resolve(import.meta.dirname, "../../app/lines/[lineId]");

test("every table of a line says whether it may be typed in: nothing may on a closed file", () => {
  const open = fs
    .readdirSync(pages, { recursive: true, encoding: "utf8" })
    .filter((name) => name.endsWith(".tsx"))
    .flatMap((name) => {
      const text = fs.readFileSync(path.join(pages, name), "utf8");
      const grids = text.match(/<RowsGrid\b[\s\S]*?\/>/g) ?? [];
      return grids.some((grid) => !grid.includes("readOnly=")) ? [name] : [];
    });
  expect(open).toEqual([]);
});
