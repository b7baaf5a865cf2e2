import { expect, test } from "vitest";
import { listAuthorities } from "#db/queries/authority.ts";
import { listOfficeHistory } from "#db/queries/history.ts";
import { chooseRule } from "#lib/operations/choose-rule.ts";
import { removeAuthority } from "#lib/operations/remove-authority.ts";
import { saveAuthority } from "#lib/operations/save-authority.ts";
import { aFee, aHoliday, anAuthority, aRequirement, aRule } from "#tests/support/file.ts";
import { aDb, anAct, anOpenLine, must } from "#tests/support/office.ts";

const TWO = anAuthority({
  id: "twice",
  name: "Merrow Bay Sewer District",
  rules: [aRule("r")],
  requirements: [aRequirement("q")],
  fees: [aFee("f")],
  holidays: [aHoliday("2026-11-26")],
});

test("removeAuthority() takes out one that no line lies with, parts and all, and tells of it", () => {
  const act = anAct(aDb(), { role: "admin" });
  must(saveAuthority(act, TWO));
  must(removeAuthority(act, { authorityId: "twice" }));
  expect(listAuthorities(act.db)).toEqual([]);
  expect(listOfficeHistory(act.db)[0]?.sentence).toBe(
    "Removed the authority Merrow Bay Sewer District.",
  );
  // Its parts are gone with it: the same ones can be added again.
  must(saveAuthority(act, TWO));
  expect(listAuthorities(act.db)[0]?.rules).toHaveLength(1);
});

test("removeAuthority() refuses one that a line lies with, and names the line", () => {
  const act = anAct(aDb(), { role: "admin" });
  const lineId = anOpenLine(act);
  must(saveAuthority(act, TWO));
  must(chooseRule(act, { lineId, authorityId: "twice", ruleId: null }));
  const refused = removeAuthority(act, { authorityId: "twice" });
  expect(refused).toMatchObject({ ok: false, error: { reason: "in-use" } });
  expect(refused.ok ? "" : refused.error.detail).toMatch(/^It is the authority of /);
  expect(listAuthorities(act.db)).toHaveLength(1);
});

test("removeAuthority() is an admin's to do, and refuses what is not there", () => {
  const act = anAct(aDb(), { role: "office" });
  must(saveAuthority(anAct(act.db, { role: "admin" }), TWO));
  expect(removeAuthority(act, { authorityId: "twice" })).toMatchObject({
    ok: false,
    error: { reason: "not-allowed" },
  });
  expect(removeAuthority(anAct(act.db, { role: "admin" }), { authorityId: "x" })).toMatchObject({
    ok: false,
    error: { reason: "not-found" },
  });
});
