import { expect, test } from "vitest";
import { dayAt } from "#lib/domain/time/days.ts";

// `npm run verify` runs these tests in zones on both sides of the date line: they have to be in force.
test("the tests run in the zone that was asked for", () => {
  const asked = process.env["WYEBOOK_TEST_ZONE"] ?? "America/Los_Angeles";
  expect(Intl.DateTimeFormat().resolvedOptions().timeZone).toBe(asked);
});

test("dayAt() goes by the named zone, wherever the machine stands", () => {
  expect(dayAt("2026-11-26T03:30:00.000Z", "America/Los_Angeles")).toBe("2026-11-25");
  expect(dayAt("2026-11-26T03:30:00.000Z", "Pacific/Auckland")).toBe("2026-11-26");
});
