import { expect, test, vi } from "vitest";
import { putOffice } from "#db/queries/office.ts";
import { officeDay, officeZone } from "#lib/operations/office-day.ts";
import { anOffice } from "../../support/file.ts";
import { aDb } from "../../support/office.ts";

/** Half past seven in the evening in Seattle, half past five in Honolulu, the 26th in Greenwich. */
const EVENING = "2026-11-26T03:30:00.000Z";

test("officeDay() is the day in the office's zone, whatever the server's is", () => {
  const db = aDb();
  putOffice(db, anOffice({ zone: "America/Los_Angeles" }));
  expect(officeDay(db, EVENING)).toBe("2026-11-25");
  putOffice(db, anOffice({ zone: "Pacific/Auckland" }));
  expect(officeDay(db, EVENING)).toBe("2026-11-26");
});

test("officeDay() gives way to a fixed day", () => {
  vi.stubEnv("WYEBOOK_TODAY", "2026-12-24");
  expect(officeDay(aDb(), EVENING)).toBe("2026-12-24");
  vi.unstubAllEnvs();
});

test("officeZone() is the machine's own before there is an office", () => {
  expect(officeZone(aDb())).toBe(Intl.DateTimeFormat().resolvedOptions().timeZone);
});
