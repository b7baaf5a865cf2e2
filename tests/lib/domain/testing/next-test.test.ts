import { expect, test } from "vitest";
import { repeated, testToRepeat } from "#lib/domain/testing/next-test.ts";
import { aTest } from "../../../support/file.ts";

const SEEN = aTest("a", "t2", {
  kind: "dye",
  result: "positive",
  propertyId: "p14",
  fixture: "Kitchen sink",
  colour: "green",
  startedAt: "09:40",
  firstSeenAt: "09:52",
  seenAt: 2_600,
  waitMinutes: 15,
  filmed: "Run 3, 2:10",
  dosedBy: "Sami Orlov",
  watchedBy: "Lou Castellane",
  otherWaterBarred: true,
  controlPropertyId: "p16",
  controlResult: "negative",
});

test("testToRepeat() asks for the dye test once more that was seen once", () => {
  expect(testToRepeat([SEEN], "t2")).toEqual({
    last: SEEN,
    seen: 1,
    missing: ["a second dye test"],
  });
});

test("testToRepeat() asks for nothing once two tests prove it", () => {
  expect(testToRepeat([SEEN, { ...SEEN, id: "b" }], "t2")).toBeNull();
});

test("testToRepeat() asks again where two were seen and one was not filmed", () => {
  const again = testToRepeat([SEEN, { ...SEEN, id: "b", filmed: "" }], "t2");
  expect(again).toMatchObject({ seen: 2, missing: ["video of both tests"] });
});

test("testToRepeat() repeats nothing that tells two addresses not apart, or that was not seen", () => {
  expect(testToRepeat([SEEN, { ...SEEN, id: "b", propertyId: "p12" }], "t2")).toBeNull();
  expect(testToRepeat([{ ...SEEN, controlResult: "positive" }], "t2")).toBeNull();
  expect(testToRepeat([{ ...SEEN, result: "not-seen" }], "t2")).toBeNull();
  expect(testToRepeat([SEEN], "t3")).toBeNull();
});

test("repeated() keeps where, with what and by whom, and takes nothing for seen", () => {
  const row = repeated({ last: SEEN }, "2026-11-25");
  expect(row).toMatchObject({
    tieInId: "t2",
    propertyId: "p14",
    fixture: "Kitchen sink",
    colour: "green",
    dosedBy: "Sami Orlov",
    performedOn: "2026-11-25",
    startedAt: "",
    firstSeenAt: "",
    seenAt: null,
    filmed: "",
    controlResult: "not-run",
  });
  expect(row).not.toHaveProperty("result");
  expect(row).not.toHaveProperty("id");
});
