import { expect, test } from "vitest";
import { getOffice } from "#db/queries/office.ts";
import { saveOffice } from "#lib/operations/save-office.ts";
import { anAddress, anOffice } from "#tests/support/file.ts";
import { aDb, anAct, must } from "#tests/support/office.ts";

function admin() {
  const db = aDb();
  return anAct(db, { role: "admin" });
}

test("saveOffice() keeps hours, on-call number and how the office is paid", () => {
  const act = admin();
  must(saveOffice(act, anOffice()));
  expect(getOffice(act.db)).toEqual(anOffice());
});

test.each([
  [{ onCallHours: null }, "onCallHours.days"],
  [{ onCallPhone: "" }, "onCallPhone"],
  [{ hours: { days: "every-day", from: "08:00", to: "" } }, "hours.to"],
  [{ hours: { days: "every-day", from: "8 o'clock", to: "17:00" } }, "hours.from"],
  [{ onCallPhone: "5550199" }, "onCallPhone"],
  [{ phone: "555-0101" }, "phone"],
  [{ payDays: -1 }, "payDays"],
  [{ depositPercent: 101 }, "depositPercent"],
] as const)("saveOffice() refuses %j beside its field", (wrong, path) => {
  expect(
    saveOffice(admin(), anOffice(wrong as Partial<ReturnType<typeof anOffice>>)),
  ).toMatchObject({
    error: { path },
  });
});

test("saveOffice() keeps a state in its two letters", () => {
  const act = admin();
  must(saveOffice(act, anOffice({ address: anAddress("9 Weir Street", { state: "or" }) })));
  expect(getOffice(act.db)?.address.state).toBe("OR");
});
