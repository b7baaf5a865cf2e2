import { expect, test } from "vitest";
import { getAuthority } from "#db/queries/authority.ts";
import { listOfficeHistory } from "#db/queries/history.ts";
import { offeredHolidays } from "#lib/domain/calendar/holiday-sets.ts";
import { bringInHolidays } from "#lib/operations/bring-in-holidays.ts";
import { saveAuthority } from "#lib/operations/save-authority.ts";
import { aHoliday, anAuthority } from "../../support/file.ts";
import { aDb, anAct, must } from "../../support/office.ts";

const FOUNDERS = aHoliday("2026-03-02", { source: "Resolution 88-12" });

function anOffice() {
  const act = anAct(aDb(), { role: "admin" });
  const christmas = aHoliday("2026-12-25", { name: "Christmas", source: "" });
  const authority = anAuthority({ holidays: [FOUNDERS, christmas] });
  must(saveAuthority(act, authority));
  const holidays = () => getAuthority(act.db, authority.id)?.holidays ?? [];
  return { act, authority, holidays };
}

test("bringInHolidays() adds the chosen days by day, each with where it is from, and keeps one's own", () => {
  const { act, authority, holidays } = anOffice();
  const days = offeredHolidays("WA", 2026)
    .filter(({ usual }) => usual)
    .map(({ day }) => day);
  const wanted = { authorityId: authority.id, state: "WA", year: 2026, days };
  expect(must(bringInHolidays(act, wanted))).toEqual({ added: days.length - 1 });
  const found = holidays();
  expect(found.map(({ day }) => day)).toEqual([...days, "2026-03-02"].toSorted());
  expect(found).toContainEqual(FOUNDERS);
  expect(found.find(({ day }) => day === "2026-11-27")).toMatchObject({
    name: "Native American Heritage Day",
    source: "RCW 1.16.050(1)",
  });
  expect(found.at(-1)).toMatchObject({
    name: "Christmas",
    source: "5 U.S.C. 6103 (imported with the Washington list)",
  });
  expect(listOfficeHistory(act.db)[0]?.sentence).toBe(
    "Imported the holidays of 2026 into City of Quillhaven.",
  );
  expect(must(bringInHolidays(act, wanted))).toEqual({ added: 0 });
  expect(holidays()).toEqual(found);
});

test("bringInHolidays() leaves out what was not chosen, and refuses what is not offered", () => {
  const { act, authority, holidays } = anOffice();
  const wanted = { authorityId: authority.id, state: "WA", year: 2026 };
  must(bringInHolidays(act, { ...wanted, days: ["2026-11-27"] }));
  expect(holidays().map(({ day }) => day)).toEqual(["2026-03-02", "2026-11-27", "2026-12-25"]);
  for (const days of [[], ["2026-05-05"]])
    expect(bringInHolidays(act, { ...wanted, days })).toMatchObject({ error: { path: "days" } });
  expect(bringInHolidays(act, { ...wanted, year: 1999, days: ["2026-11-27"] })).toMatchObject({
    error: { path: "year" },
  });
  const office = anAct(act.db, { role: "office" });
  expect(bringInHolidays(office, { ...wanted, days: ["2026-11-27"] })).toMatchObject({
    error: { reason: "not-allowed" },
  });
});

test("bringInHolidays() marks a day that an older import had as plainly kept, not one that was checked", () => {
  const act = anAct(aDb(), { role: "admin" });
  const day = (on: string, source: string) => ({ ...FOUNDERS, id: on, day: on, source });
  const old = [
    day("2026-03-31", "California list, date-holidays 3.37.0: check with the authority"),
    day("2026-11-27", "Resolution 12-4"),
  ];
  const authority = anAuthority({ holidays: old });
  must(saveAuthority(act, authority));
  const days = old.map((each) => each.day);
  must(bringInHolidays(act, { authorityId: authority.id, state: "CA", year: 2026, days }));
  expect(getAuthority(act.db, authority.id)?.holidays.map(({ source }) => source)).toEqual([
    "Cal. Gov. Code 6700(a)(7): kept only if adopted",
    "Resolution 12-4",
  ]);
});
