import { expect, test } from "vitest";
import { reportOn } from "#lib/domain/report/report-on.ts";
import { saveLine } from "#lib/operations/save-line.ts";
import { takeFixtureWeights } from "#lib/operations/take-fixture-weights.ts";
import { aFixture, aLevel } from "#tests/support/capacity.ts";
import { aDesk, addRows, fileOf, must } from "#tests/support/office.ts";

test("counts and levels typed in their tables give load, slope and weights", () => {
  const { act, lineId } = aDesk();
  must(saveLine(act, { lineId, facts: { plumbingCode: "upc", leastSlope: "two-percent" } }));
  addRows(act, { lineId, table: "levels" }, [
    aLevel("low", { ground: 10_000, depth: 720 }),
    aLevel("top", { station: 6_000, ground: 10_100, depth: 520, method: "pothole" }),
  ]);
  addRows(act, { lineId, table: "fixtures" }, [
    aFixture("12", { fixture: "water-closet", count: 2 }),
    aFixture("12", { fixture: "clothes-washer" }),
    aFixture("14", { fixture: "water-closet" }),
  ]);
  const open = takeFixtureWeights(act, { lineId });
  expect(open).toMatchObject({
    ok: false,
    error: { detail: "Count the fixtures of 16 Fennel Row too." },
  });

  addRows(act, { lineId, table: "fixtures" }, [aFixture("16", { fixture: "bathtub" })]);
  must(takeFixtureWeights(act, { lineId }));
  const file = fileOf(act, lineId);
  expect(file.properties.map(({ id, weight }) => [id, weight])).toEqual([
    ["12", 9],
    ["14", 3],
    ["16", 2],
  ]);
  const { capacity } = reportOn(file, act.today);
  expect(capacity.slopes).toMatchObject([
    { from: 0, to: 6_000, fall: 300, uncertainty: 60, against: "two-percent", verdict: "meets" },
  ]);
  expect(capacity.reaches[0]?.load?.load).toMatchObject({ least: 14, most: 14 });
});
