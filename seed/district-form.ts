import { Readable } from "node:stream";
import { drawForm } from "#lib/documents/draw-form.ts";
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

/** Stands on the row of the license. */
const BESIDE = "License valid to";

/** Adds the form to the district and says what goes into each of its fields. */
export async function addDistrictForm(act: Act): Promise<void> {
  const bytes = await drawForm({
    title: "Quillhaven Sewer District",
    under: "Side sewer work application · Form 12 (invented)",
    madeOn: new Date("2026-01-05T00:00:00Z"),
    asked: ASKED.map(([printed, name]) => ({ printed, name, beside: name === BESIDE })),
  });
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
