import fs from "node:fs";
import path from "node:path";
import { PDFDocument } from "@cantoo/pdf-lib";
import { describe, expect, test } from "vitest";
import { getForm, listForms, listFormVersions } from "#db/queries/form.ts";
import { listJobs } from "#db/queries/job.ts";
import { putOffice } from "#db/queries/office.ts";
import { listStoredHashes } from "#db/queries/upload.ts";
import { suggestedMappings } from "#lib/domain/form/suggest.ts";
import { composePacket } from "#lib/domain/packet/compose.ts";
import { planOf } from "#lib/domain/packet/sheets-form.ts";
import { reportOn } from "#lib/domain/report/report-on.ts";
import type { Act } from "#lib/operations/act.ts";
import { chooseRule } from "#lib/operations/choose-rule.ts";
import { exportLine } from "#lib/operations/export-line.ts";
import { formsOf } from "#lib/operations/forms-of.ts";
import { runNextJob } from "#lib/operations/run-job.ts";
import { saveAuthority } from "#lib/operations/save-authority.ts";
import { saveForm } from "#lib/operations/save-form.ts";
import { startJob } from "#lib/operations/start-job.ts";
import { takeForm } from "#lib/operations/take-form.ts";
import { typeInForm } from "#lib/operations/type-in-form.ts";
import { readStored, storeFile } from "#lib/storage/store.ts";
import { anAddress, anAuthority, anOffice, aProperty, aRequirement } from "../../support/file.ts";
import { aField } from "../../support/form.ts";
import { fullForm, scannedForm } from "../../support/forms.tsx";
import { aDb, addRows, aFolder, anAct, anOpenLine, fileOf, must } from "../../support/office.ts";
import { readPdf } from "../../support/pdf.ts";

async function* once(bytes: Uint8Array) {
  yield bytes;
}

/** An office with an authority, a line on it, and the authority’s form as it came in. */
async function anOfficeWithForm(pdf?: Uint8Array) {
  const db = aDb();
  const act = anAct(db, { role: "admin", dataFolder: aFolder() });
  putOffice(db, anOffice());
  const authority = anAuthority({
    id: "a1",
    name: "City of Quillhaven",
    requirements: [
      aRequirement("r1", { authorityId: "a1", sheet: "application", title: "Application" }),
    ],
  });
  must(saveAuthority(act, authority));
  const lineId = anOpenLine(act);
  must(chooseRule(act, { lineId, authorityId: "a1", ruleId: null }));
  const formId = must(await take(act, pdf ?? (await fullForm()))).formId;
  const { fields } = current(act, formId);
  // As an admin does who takes the suggestions: version 2, where there are any.
  must(saveForm(act, { formId, base: 1, change: { mappings: suggestedMappings(fields, []) } }));
  return { db, act, lineId, formId };
}

async function take(act: Act, pdf: Uint8Array, formId: string | null = null) {
  const stored = must(
    await storeFile(act.dataFolder, once(pdf), { declared: null, limit: 10_000_000 }),
  );
  return await takeForm(act, {
    authorityId: "a1",
    formId,
    name: "Side_sewer application.pdf",
    stored,
  });
}

function current(act: Act, formId: string) {
  const form = getForm(act.db, formId);
  if (form === null) throw new Error("No form");
  return form;
}

describe("takeForm()", () => {
  test("lists the fields, and is in a backup’s list", async () => {
    const { act, formId } = await anOfficeWithForm();
    const form = current(act, formId);
    expect(form).toMatchObject({ version: 2, title: "Side sewer application", retired: false });
    expect(form.fields).toHaveLength(14);
    expect(form.mappings.find(({ field }) => field === "Owner 2 Name")).toMatchObject({
      fact: "owner.name",
      row: 2,
    });
    expect(form.mappings.find(({ field }) => field === "Permit No")?.source).toBe("blank");
    expect(listStoredHashes(act.db)).toContain(form.sha256);
  });

  test("only an admin may, and a PDF that can’t be filled in is refused in words", async () => {
    const { act } = await anOfficeWithForm();
    const office = { ...act, actor: { ...act.actor, role: "office" as const } };
    expect(await take(office, await fullForm())).toMatchObject({
      error: { reason: "not-allowed" },
    });
    const broken = (await fullForm()).slice(0, 900);
    expect(await take(act, broken)).toMatchObject({
      error: { detail: expect.stringContaining("damaged or incomplete") },
    });
    expect(listForms(act.db, "a1")).toHaveLength(1);
  });

  test("a newer print keeps what was said of the fields that it still has, and the boxes", async () => {
    const { act, formId } = await anOfficeWithForm();
    const before = current(act, formId);
    const box = aField("Lot corner", { placed: true });
    const mappings = before.mappings.map((each) =>
      each.field === "Applicant Name"
        ? { ...each, source: "words" as const, fact: "", words: "Us" }
        : each,
    );
    must(saveForm(act, { formId, base: 2, change: { mappings, boxes: [box] } }));
    const next = await PDFDocument.load(await fullForm());
    const form = next.getForm();
    form.removeField(form.getField("Parcel 2"));
    must(await take(act, await next.save(), formId));
    const after = current(act, formId);
    expect(after.version).toBe(4);
    expect(after.mappings.find(({ field }) => field === "Applicant Name")?.words).toBe("Us");
    expect(after.mappings.some(({ field }) => field === "Parcel 2")).toBe(false);
    expect(after.fields.some(({ name }) => name === "Lot corner")).toBe(true);
  });
});

describe("saveForm()", () => {
  test("each save is a version; the same again is none; a second person is told", async () => {
    const { act, formId } = await anOfficeWithForm();
    must(saveForm(act, { formId, base: 2, change: { title: "Form 7", days: "m/d/yyyy" } }));
    must(saveForm(act, { formId, base: 3, change: { title: "Form 7" } }));
    expect(listFormVersions(act.db, formId).map(({ version, title }) => [version, title])).toEqual([
      [3, "Form 7"],
      [2, "Side sewer application"],
      [1, "Side sewer application"],
    ]);
    expect(saveForm(act, { formId, base: 2, change: { title: "Other" } })).toMatchObject({
      error: { reason: "changed-meanwhile" },
    });
  });

  test("a version stays as it was saved", async () => {
    const { db } = await anOfficeWithForm();
    expect(() => db.$client.exec("UPDATE forms SET title = 'x'")).toThrow(
      "a version of a form stays as it was saved",
    );
  });

  test.each([
    ["a box off the page", { places: [{ page: 1, left: 500, top: 10, width: 200, height: 18 }] }],
    ["a box on no page", { places: [{ page: 9, left: 10, top: 10, width: 50, height: 18 }] }],
  ])("%s is refused", async (_what, overrides) => {
    const { act, formId } = await anOfficeWithForm(await scannedForm());
    const boxes = [aField("Name", { placed: true, ...overrides })];
    expect(saveForm(act, { formId, base: 1, change: { boxes } })).toMatchObject({
      error: { reason: "bad-value", detail: "The box “Name” does not lie on the page" },
    });
  });

  test("a name that is there twice, an unknown fact and requirement are refused", async () => {
    const { act, formId } = await anOfficeWithForm();
    const change = (one: Parameters<typeof saveForm>[1]["change"]) =>
      saveForm(act, { formId, base: 2, change: one });
    expect(change({ boxes: [aField("Date", { placed: true })] })).toMatchObject({
      error: { reason: "already-there" },
    });
    const mapping = {
      field: "Date",
      source: "fact",
      fact: "no.such",
      row: 0,
      words: "",
      when: [],
    } as const;
    expect(change({ mappings: [mapping] })).toMatchObject({ error: { path: "mappings.0.fact" } });
    expect(change({ requirementId: "r9" })).toMatchObject({ error: { path: "requirementId" } });
    expect(change({ title: " " })).toMatchObject({ error: { path: "title" } });
  });
});

describe("on a line", () => {
  test("what is typed stands in the form, can be taken back, and goes with the line’s file", async () => {
    const { act, lineId, formId } = await anOfficeWithForm();
    must(typeInForm(act, { lineId, formId, answers: { "Pipe Material": "PVC", Date: "" } }));
    const entries = () => fileOf(act, lineId).formEntries.map(({ field, words }) => [field, words]);
    expect(entries()).toEqual([
      ["Pipe Material", "PVC"],
      ["Date", ""],
    ]);
    expect(exportLine(act, lineId)).toContain('"field": "Pipe Material"');
    must(typeInForm(act, { lineId, formId, answers: { Date: null, "Pipe Material": "PVC" } }));
    expect(entries()).toEqual([["Pipe Material", "PVC"]]);
    expect(typeInForm(act, { lineId, formId, answers: { "Pipe Material": "Lead" } })).toMatchObject(
      { error: { path: "Pipe Material" } },
    );
    expect(typeInForm(act, { lineId, formId, answers: { gone: "x" } })).toMatchObject({
      error: { reason: "not-found" },
    });
  });

  test("the packet holds the form first, in place of our own application, and says what is empty", async () => {
    const { act, lineId, formId } = await anOfficeWithForm();
    const input = () => {
      const file = fileOf(act, lineId);
      return {
        file,
        report: reportOn(file, act.today),
        office: anOffice(),
        forms: formsOf(act.db, file),
      };
    };
    expect(
      composePacket(input())
        .sheets.slice(0, 2)
        .map(({ title }) => title),
    ).toEqual(["Side sewer application", "Application data"]);
    must(saveForm(act, { formId, base: 2, change: { requirementId: "r1" } }));
    const packet = composePacket(input());
    expect(packet.sheets.map(({ title }) => title)).not.toContain("Application data");
    expect(packet.missing.at(-1)).toContain("Side sewer application: 8 fields are empty (");
    must(saveForm(act, { formId, base: 3, change: { retired: true } }));
    expect(composePacket(input()).sheets[0]?.title).toBe("Application data");
  });

  test("the form by itself and the packet are made, with the attached sheet behind the form", async () => {
    const { act, lineId, formId } = await anOfficeWithForm();
    addRows(
      act,
      { lineId, table: "properties" },
      [12, 14, 16].map((n) => aProperty(`p${n}`, { address: anAddress(`${n} Fennel Row`) })),
    );
    const long = "Open cut of the clay pipe under the alley, one spot repair, two tie-ins. ".repeat(
      20,
    );
    must(
      typeInForm(act, {
        lineId,
        formId,
        answers: { "Work Description": long, "Work Repair": "yes" },
      }),
    );
    const form = current(act, formId);
    const mappings = form.mappings.map((each) =>
      each.field.startsWith("Parcel") ? { ...each, fact: "property.address" } : each,
    );
    must(saveForm(act, { formId, base: 2, change: { mappings } }));
    const made = async (kind: "form" | "packet", subjectIds: readonly string[]) => {
      must(startJob(act, { lineId, kind, subjectIds }));
      const place = {
        db: act.db,
        dataFolder: act.dataFolder,
        now: () => act.now,
        today: () => act.today,
        newId: act.newId,
        worker: "worker-1",
        smtp: null,
        imap: null,
        address: null,
        mailFrom: "",
      };
      expect(await runNextJob(place)).toBe(true);
      const upload = fileOf(act, lineId).uploads.at(-1);
      if (upload === undefined) throw new Error(listJobs(act.db, lineId)[0]?.problem);
      return {
        upload,
        pdf: readPdf(readStored(act.dataFolder, upload.sha256) ?? new Uint8Array()),
      };
    };
    const alone = await made("form", [formId]);
    expect(alone.upload.name).toMatch(/^Side sewer application 20.*\.pdf$/);
    expect(alone.upload.note).toBe(
      "Version 3 of the form. In full on the attached sheet: Work Description.",
    );
    alone.pdf.check();
    expect(alone.pdf.text(1)).toContain("12 Fennel Row");
    expect(alone.pdf.text(3)).toContain("attached sheet");
    expect(alone.pdf.text(3)).toContain("16 Fennel Row");
    expect(alone.pdf.text(3).replace(/\s+/g, " ")).toContain("one spot repair, two tie-ins.");
    const packet = await made("packet", []);
    packet.pdf.check();
    expect(packet.pdf.text()).toContain("City of Larkspur Bay");
    expect(startJob(act, { lineId, kind: "form", subjectIds: ["no"] })).toMatchObject({
      ok: false,
    });
    if (process.env["WYEBOOK_LOOK"]) {
      for (const [name, { upload }] of Object.entries({ alone, packet }))
        fs.copyFileSync(
          path.join(act.dataFolder, "files", upload.sha256.slice(0, 2), upload.sha256),
          path.join(process.env["WYEBOOK_LOOK"], `${name}.pdf`),
        );
    }
  });

  test("a line of another authority has no such form", async () => {
    const { act, lineId, formId } = await anOfficeWithForm();
    must(chooseRule(act, { lineId, authorityId: null, ruleId: null }));
    expect(typeInForm(act, { lineId, formId, answers: { Date: "x" } })).toMatchObject({
      ok: false,
    });
    expect(
      planOf(current(act, formId), {
        file: fileOf(act, lineId),
        report: reportOn(fileOf(act, lineId), act.today),
        office: anOffice(),
      }).answers,
    ).toHaveLength(14);
  });
});
