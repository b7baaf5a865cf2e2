import { expect, test } from "vitest";
import { getAuthority } from "#db/queries/authority.ts";
import { putOffice } from "#db/queries/office.ts";
import { addAuthority } from "#lib/operations/add-authority.ts";
import { anAddress, anOffice } from "../../support/file.ts";
import { aDb, anAct, must } from "../../support/office.ts";

test("addAuthority() adds one from an example, with the holidays of the office's state", () => {
  const act = anAct(aDb(), { role: "admin" });
  putOffice(act.db, anOffice({ address: anAddress("1 Weir Street", { state: "Washington" }) }));
  const { authorityId } = must(addAuthority(act, { name: "", starter: "district-right-of-way" }));
  const made = getAuthority(act.db, authorityId);
  expect(made).toMatchObject({ name: "Example sewer district" });
  expect(made?.requirements.length).toBeGreaterThan(5);
  expect(made?.holidays.map(({ day }) => day)).toContain("2026-11-27");
});

test("addAuthority() adds an empty one by its name, and none without either", () => {
  const act = anAct(aDb(), { role: "admin" });
  const { authorityId } = must(addAuthority(act, { name: "Alder Fork", starter: null }));
  expect(getAuthority(act.db, authorityId)).toMatchObject({ name: "Alder Fork", rules: [] });
  expect(addAuthority(act, { name: "", starter: null })).toMatchObject({ ok: false });
  const office = anAct(act.db, { role: "office" });
  expect(addAuthority(office, { name: "", starter: "city-to-main" })).toMatchObject({
    error: { reason: "not-allowed" },
  });
});
