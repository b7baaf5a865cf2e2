import { createHash } from "node:crypto";
import { expect, test } from "vitest";
import { getAuthority, putAuthority } from "#db/queries/authority.ts";
import { insertFormVersion, listForms, listFormVersions } from "#db/queries/form.ts";
import type { Fee } from "#lib/domain/facts/authority.ts";
import type { AuthorityForm } from "#lib/domain/facts/form.ts";
import { exportAuthority, importAuthority } from "#lib/operations/import-authority.ts";
import { saveAuthority } from "#lib/operations/save-authority.ts";
import { keepBytes } from "#lib/storage/keep-bytes.ts";
import { aFee, anAuthority, aRule } from "#tests/support/file.ts";
import { aDb, aFolder, anAct, must } from "#tests/support/office.ts";

const PDF = new TextEncoder().encode("%PDF-1.7 a form");
const AUTHORITY = anAuthority({ id: "alder", name: "Alder Sewer District", rules: [aRule("r")] });
const SCALE = { id: "s", authorityId: "alder", citation: "Handbook 3", asOf: "2026-10-01" };
const FORM: AuthorityForm = {
  ...{ id: "form-1", authorityId: "alder", version: 1, title: "Permit", permitKind: "side-sewer" },
  ...{ requirementId: null, fileName: "permit.pdf", bytes: PDF.length, pages: [], fields: [] },
  ...{ notes: [], mappings: [], days: "mm/dd/yyyy", flatten: false, retired: false },
  ...{ savedBy: "Dana", savedAt: "2026-11-25T18:00:00.000Z" },
  sha256: createHash("sha256").update(PDF).digest("hex"),
};

function anOffice() {
  return anAct(aDb(), { role: "admin", dataFolder: aFolder() });
}

/** An office that has the authority with its form, and the file of it. */
function exported() {
  const act = anOffice();
  putAuthority(act.db, AUTHORITY);
  keepBytes(act.dataFolder, FORM.sha256, PDF);
  insertFormVersion(act.db, FORM);
  return { act, text: must(exportAuthority(act, "alder")).text };
}

test("another office gets the same authority and form, and exports the same file", () => {
  const { act, text } = exported();
  const other = anOffice();
  const asked = importAuthority(other, { text, agreed: false });
  expect(asked).toMatchObject({ ok: false });
  expect(asked.ok ? "" : asked.error.detail).toContain("Alder Sewer District is new here");
  expect(getAuthority(other.db, "alder")).toBeNull();
  must(importAuthority(other, { text, agreed: true }));
  expect(getAuthority(other.db, "alder")).toEqual(getAuthority(act.db, "alder"));
  expect(must(exportAuthority(other, "alder")).text).toBe(text);
  must(importAuthority(other, { text, agreed: true }));
  expect(listFormVersions(other.db, "form-1")).toHaveLength(1);
});

test("drawing scales go along, are named before they are replaced, and an older file has none", () => {
  const { act, text } = exported();
  putAuthority(act.db, { ...AUTHORITY, scales: [{ ...SCALE, feetPerInch: 20 }] });
  const withScales = must(exportAuthority(act, "alder")).text;
  const other = anOffice();
  must(importAuthority(other, { text: withScales, agreed: true }));
  expect(getAuthority(other.db, "alder")?.scales).toEqual([{ ...SCALE, feetPerInch: 20 }]);
  const { scales, ...authority } = JSON.parse(text).authority;
  expect(scales).toEqual([]);
  const older = JSON.stringify({ ...JSON.parse(text), authority });
  const asked = importAuthority(other, { text: older, agreed: false });
  expect(asked.ok ? "" : asked.error.detail).toContain("drawing scales (1 removed)");
  must(importAuthority(other, { text: older, agreed: true }));
  expect(getAuthority(other.db, "alder")?.scales).toEqual([]);
  const none = { ...authority, scales: [{ id: "s", feetPerInch: 0, asOf: "2026-10-01" }] };
  const refused = importAuthority(other, {
    text: JSON.stringify({ ...JSON.parse(text), authority: none }),
    agreed: true,
  });
  expect(refused.ok ? "" : refused.error.detail).toContain("Enter a whole number from 1 to 5000");
});

test("fees by cost and by square foot go along whole, and a fee of an older file is as it was", () => {
  const { act, text } = exported();
  const fees = [
    aFee("cost", { authorityId: "alder", per: "cost", step: 100, least: 500, most: 2_500 }),
    aFee("cut", {
      authorityId: "alder",
      per: "square-foot",
      surface: "gravel",
      partCounts: "share",
    }),
  ];
  putAuthority(act.db, { ...AUTHORITY, fees });
  const file = must(exportAuthority(act, "alder")).text;
  const other = anOffice();
  must(importAuthority(other, { text: file, agreed: true }));
  expect(getAuthority(other.db, "alder")?.fees).toEqual(fees);
  expect(must(exportAuthority(other, "alder")).text).toBe(file);
  const parsed = JSON.parse(text);
  const { step, partCounts, least, most, surface, ...old } = aFee("old", { authorityId: "alder" });
  const older = { ...parsed, authority: { ...parsed.authority, fees: [old] } };
  must(importAuthority(other, { text: JSON.stringify(older), agreed: true }));
  expect(getAuthority(other.db, "alder")?.fees).toEqual([
    { ...old, step, partCounts, least, most, surface },
  ]);
});

test("saveAuthority() refuses a fee by cost without its step, and a most below its least", () => {
  const { act } = exported();
  const path = (fee: Partial<Fee>) => {
    const fees = [aFee("f", { authorityId: "alder", ...fee })];
    const saved = saveAuthority(act, { ...AUTHORITY, fees });
    return saved.ok ? "" : saved.error.path;
  };
  expect(path({ per: "cost" })).toBe("fees.0.step");
  expect(path({ least: 900, most: 500 })).toBe("fees.0.most");
  expect(path({ per: "cost", step: 100, least: 500, most: 500 })).toBe("");
});

test("what is here is told before anything is replaced, and a form's older version stays", () => {
  const { text } = exported();
  const other = anOffice();
  putAuthority(other.db, { ...AUTHORITY, rules: [], fees: [aFee("f", { authorityId: "alder" })] });
  keepBytes(other.dataFolder, FORM.sha256, PDF);
  insertFormVersion(other.db, { ...FORM, title: "Old print" });
  const asked = importAuthority(other, { text, agreed: false });
  expect(asked.ok ? "" : asked.error.detail).toMatch(
    /responsibility rules \(1 added\).*fees \(1 removed\).*“Permit”/,
  );
  expect(getAuthority(other.db, "alder")?.fees).toHaveLength(1);
  must(importAuthority(other, { text, agreed: true }));
  expect(getAuthority(other.db, "alder")?.fees).toEqual([]);
  expect(listForms(other.db, "alder").map(({ title, version }) => [title, version])).toEqual([
    ["Permit", 2],
  ]);
  expect(listFormVersions(other.db, "form-1")).toHaveLength(2);
});

test("a wrong file is refused by its path, and nothing of it is kept", () => {
  const { text } = exported();
  const other = anOffice();
  const refused = (wrong: string) => {
    const answer = importAuthority(other, { text: wrong, agreed: true });
    return answer.ok ? "" : answer.error.detail;
  };
  const file = JSON.parse(text);
  expect(refused("{}")).toContain("kind: This is not an authority file");
  expect(refused("no")).toContain("not JSON");
  expect(refused(JSON.stringify({ ...file, version: 9 }))).toContain("version:");
  const forms = [{ ...file.forms[0], content: Buffer.from("else").toString("base64") }];
  expect(refused(JSON.stringify({ ...file, forms }))).toContain("forms.0.content");
  expect(refused(JSON.stringify({ ...file, moon: 1 }))).toContain("moon");
  expect(getAuthority(other.db, "alder")).toBeNull();
  const office = anAct(other.db, { role: "office" });
  expect(importAuthority(office, { text, agreed: true })).toMatchObject({
    error: { reason: "not-allowed" },
  });
});
