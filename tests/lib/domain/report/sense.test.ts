import { expect, test } from "vitest";
import type { Upload } from "#lib/domain/facts/upload.ts";
import { nonsenseIn } from "#lib/domain/report/sense.ts";
import { aFixture } from "#tests/support/capacity.ts";
import { aFile, anUpload, aProperty, aUnit } from "#tests/support/file.ts";
import { aPicture } from "#tests/support/plan.ts";

test("a fixture count that names a unit has to name one of its own property", () => {
  const at = (unitId: string | null) =>
    nonsenseIn(
      aFile({
        properties: [aProperty("12"), aProperty("14")],
        units: [aUnit("12-a", "12"), aUnit("14-a", "14")],
        fixtures: [aFixture("12", { unitId })],
      }),
    );
  expect(at("12-a")).toEqual([]);
  expect(at(null)).toEqual([]);
  expect(at("14-a")).toMatchObject([{ list: "fixtures", row: 0, path: "unitId" }]);
});

test("a plan to trace over is a picture, with two points so far apart", () => {
  const wrong = (type: Upload["type"], overrides = {}) =>
    nonsenseIn(
      aFile({
        uploads: [anUpload("plan", { type })],
        planPictures: [aPicture("p", overrides)],
      }),
    ).map(({ list, path }) => [list, path]);
  expect(wrong("image/png")).toEqual([]);
  expect(wrong("image/jpeg", { apart: 0 })).toEqual([["planPictures", "apart"]]);
  expect(wrong("image/png", { otherX: 100 })).toEqual([["planPictures", "otherX"]]);
  expect(wrong("application/pdf")).toEqual([["planPictures", "uploadId"]]);
});
