import { expect, test } from "vitest";
import { reportOn } from "#lib/domain/report/report-on.ts";
import { concernsUnknown, nobodysTieIns } from "#lib/domain/split/unknown-owner.ts";
import { aFile, aProperty, aSplit, aTieIn } from "#tests/support/file.ts";

const own = { propertyId: "12", tieInId: null, amount: 100, recoverable: 0 };

test("a version concerns an unknown owner only where a share is held apart or carried for one", () => {
  expect(concernsUnknown(aSplit("s", { shares: [own] }))).toBe(false);
  expect(concernsUnknown(aSplit("s", { shares: [{ ...own, recoverable: 1 }] }))).toBe(true);
  const apart = { ...own, propertyId: null, tieInId: "t" };
  expect(concernsUnknown(aSplit("s", { shares: [own, apart] }))).toBe(true);
});

test("nobody’s tie-ins are live ones without a property; one proven dead asks for no share", () => {
  const file = aFile({
    properties: [aProperty("12")],
    tieIns: [
      aTieIn("t1", { station: 1_000, propertyId: "12" }),
      aTieIn("t2", { station: 2_000, kind: "unknown" }),
      aTieIn("t3", { station: 3_000, inactive: true, settledReason: "Dug up", settledBy: "Dana" }),
    ],
  });
  const { tieIns } = reportOn(file, "2026-11-25");
  expect(nobodysTieIns(tieIns).map(({ tieIn }) => tieIn.id)).toEqual(["t2"]);
});
