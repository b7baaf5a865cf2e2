import path from "node:path";
import { expect, test } from "vitest";
import { copyDatabase } from "#db/queries/backup.ts";
import { codeOf } from "#db/queries/database-state.ts";
import { aDb, aFolder } from "../support/office.ts";

test("codeOf() finds SQLite's own code, also inside of another error", () => {
  const db = aDb();
  const thrownBy = (work: () => void): unknown => {
    try {
      work();
      return null;
    } catch (error) {
      return error;
    }
  };
  const nowhere = path.join(aFolder(), "nowhere", "copy.db");
  expect(codeOf(thrownBy(() => copyDatabase(db, nowhere)))).toMatch(/^SQLITE_CANTOPEN/);
  expect(codeOf(thrownBy(() => db.$client.exec("nonsense")))).toBe("SQLITE_ERROR");
  expect(codeOf(new Error("something else"))).toBe("");
});
