import { Readable } from "node:stream";
import { PDFDocument, StandardFonts } from "@cantoo/pdf-lib";
import type { FormMapping } from "#lib/domain/facts/form.ts";
import type { Act } from "#lib/operations/act.ts";
import { saveForm } from "#lib/operations/save-form.ts";
import { takeForm } from "#lib/operations/take-form.ts";
import { storeFile } from "#lib/storage/store.ts";
import { must } from "./desk.ts";
import { AUTHORITY } from "./office.ts";

type Source = Partial<Omit<FormMapping, "field">>;

const from = (fact: string, row = 0): Source => ({ source: "fact", fact, row });

/** What the form asks, top to bottom: as printed, the field’s name, and what goes into it. */
const ASKED: readonly (readonly [string, string, Source])[] = [
  ["Applicant", "Applicant", from("application.applicant")],
  ["Contractor", "Contractor", from("contractor.name")],
  ["Contractor’s license", "License", from("contractor.license")],
  ["Good through", "License valid to", from("contractor.license-expires")],
  ["Office phone", "Phone", from("contractor.phone")],
  ["Site addresses", "Site", from("property.address")],
  ["Parcel numbers", "Parcels", from("property.parcel")],
  ["Owner, first listed", "Owner 1", from("owner.name", 1)],
  ["Owner, second listed", "Owner 2", from("owner.name", 2)],
  ["What will be done", "Work", from("work.description")],
  ["Value of the work", "Value", from("work.value")],
  ["Locate ticket", "Ticket", from("ticket.number")],
  ["Drain field or septic tank on site", "Septic", { source: "typed" }],
  ["Applicant’s signature and date", "Signature", { source: "blank" }],
  ["District use only", "District", { source: "blank" }],
];

const TOP = 692;
const STEP = 40;
/** What is not a number of its own stands beside the field above it. */
const NARROW = new Set(["License", "License valid to"]);

/** The invented district’s own application, with fields to type in: one page, drawn here. */
async function districtForm(): Promise<Uint8Array> {
  const document = await PDFDocument.create();
  const drawnOn = new Date("2026-01-05T00:00:00Z");
  document.setTitle("Side sewer work application");
  document.setCreationDate(drawnOn);
  document.setModificationDate(drawnOn);
  const font = await document.embedFont(StandardFonts.Helvetica);
  const strong = await document.embedFont(StandardFonts.HelveticaBold);
  const page = document.addPage([612, 792]);
  page.drawText("Quillhaven Sewer District", { x: 54, y: 740, size: 15, font: strong });
  page.drawText("Side sewer work application · Form 12 (invented)", {
    x: 54,
    y: 722,
    size: 10,
    font,
  });
  const form = document.getForm();
  let row = 0;
  for (const [printed, name] of ASKED) {
    const isBeside = name === "License valid to";
    if (!isBeside) row += 1;
    const bottom = TOP - row * STEP;
    page.drawText(printed, { x: isBeside ? 314 : 54, y: bottom + 24, size: 9, font });
    const isNarrow = NARROW.has(name);
    form.createTextField(name).addToPage(page, {
      ...{ x: isBeside ? 314 : 54, y: bottom, width: isNarrow ? 244 : 504, height: 18 },
      ...{ borderWidth: 0.75, font },
    });
  }
  return document.save();
}

/** Adds the form to the district and says what goes into each of its fields. */
export async function addDistrictForm(act: Act): Promise<void> {
  const bytes = await districtForm();
  const stored = must(
    await storeFile(act.dataFolder, Readable.from([bytes]), {
      declared: bytes.byteLength,
      limit: 1_000_000,
    }),
  );
  const authorityId = AUTHORITY.id;
  const { formId } = must(
    await takeForm(act, { authorityId, formId: null, name: "QSD form 12.pdf", stored }),
  );
  must(
    saveForm(act, {
      formId,
      base: 1,
      change: {
        title: "District form 12, side sewer work",
        permitKind: "side-sewer",
        requirementId: `${authorityId}-application`,
        days: "mm/dd/yyyy",
        mappings: ASKED.map(([, field, source]) => ({
          ...{ field, source: "typed", fact: "", row: 0, words: "", when: [] },
          ...source,
        })),
      },
    }),
  );
}
