import { expect, test } from "vitest";
import { buildingToward } from "#lib/domain/plan/toward.ts";
import { aShape } from "../../../support/plan.ts";

const line = { bearing: 90 };
const garage = aShape("garage", "10,20; 30,20; 30,40; 10,40");
const house = aShape("house", "0,60; 40,60; 40,90; 0,90");
const across = aShape("across", "0,-30; 40,-30; 40,-60; 0,-60");

test("the nearest building square to the side is the one that is met first", () => {
  const file = { line, bends: [], planShapes: [house, garage, across] };
  expect(buildingToward(file, 2_000, "left")?.id).toBe("garage");
  expect(buildingToward(file, 3_500, "left")?.id).toBe("house");
  expect(buildingToward(file, 2_000, "right")?.id).toBe("across");
});

test("nothing is named beyond the buildings, without a side, or without a bearing", () => {
  const file = { line, bends: [], planShapes: [garage] };
  expect(buildingToward(file, 5_000, "left")).toBeNull();
  expect(buildingToward(file, 2_000, "crown")).toBeNull();
  expect(buildingToward(file, null, "left")).toBeNull();
  expect(buildingToward({ ...file, line: { bearing: null } }, 2_000, "left")).toBeNull();
});

test("a lot line is no building", () => {
  const planShapes = [{ ...garage, kind: "lot-line" as const }];
  expect(buildingToward({ line, bends: [], planShapes }, 2_000, "left")).toBeNull();
});
