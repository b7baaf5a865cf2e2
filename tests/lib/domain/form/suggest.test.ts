import { expect, test } from "vitest";
import { suggestedMapping, suggestedMappings, wordsOfName } from "#lib/domain/form/suggest.ts";
import { aField, aMapping } from "../../../support/form.ts";

test.each([
  ["Applicant Name", "contractor.name", 0],
  ["ContractorPhone", "contractor.phone", 0],
  ["topmostSubform[0].Page1[0].OwnerName_2[0]", "owner.name", 2],
  ["Property Owner 1 Mailing Address", "owner.mailing", 1],
  ["site_address", "property.address", 1],
  ["Parcel 3", "property.parcel", 3],
  ["Contractor License Exp Date", "contractor.license-expires", 0],
  ["Lic No", "contractor.license", 0],
  ["Bond Number", "contractor.bond", 0],
  ["Description of Work", "work.description", 0],
  ["Legal Description", "property.legal", 1],
  ["Valuation", "application.valuation", 0],
  ["Estimated Cost", "work.value", 0],
  ["Business License No", "contractor.business-license", 0],
  ["Workers Comp Policy", "contractor.compensation", 0],
  ["Proposed Pipe Material 2", "pipe-new.material", 2],
  ["New Pipe Slope", "pipe-new.slope", 1],
  ["Total Sq Ft of cut", "surface.total", 0],
  ["Date", "today", 0],
  ["Start Date", "work.begins", 0],
  ["811 Ticket", "ticket.number", 0],
  ["Permit No", "permit.number", 0],
])("%s is %s", (name, fact, row) => {
  expect(suggestedMapping(aField(name))).toMatchObject({ source: "fact", fact, row });
});

test.each(["Applicant Signature", "Office Use Only", "Date Approved", "Owner Initials"])(
  "%s is left for others",
  (name) => {
    expect(suggestedMapping(aField(name))).toMatchObject({ source: "blank", fact: "" });
  },
);

test("what the form says of a field counts where its name says nothing", () => {
  expect(suggestedMapping(aField("Text12", { hint: "Contractor’s email" }))?.fact).toBe(
    "contractor.email",
  );
  expect(suggestedMapping(aField("Text12"))).toBeNull();
});

test("a box is not suggested for words, nor words for a box", () => {
  const box = { kind: "check" } as const;
  expect(suggestedMapping(aField("Owner Name", box))).toBeNull();
  expect(suggestedMapping(aField("Work in street", box))).toMatchObject({
    fact: "work.in-street",
    when: [{ value: "yes", option: "" }],
  });
  expect(suggestedMapping(aField("Work in street"))).toBeNull();
});

test("only fields without a word of the office get a suggestion", () => {
  const fields = [aField("Owner Name"), aField("Applicant Name")];
  const made = suggestedMappings(fields, [aMapping("Owner Name", "line.name")]);
  expect(made.map(({ field }) => field)).toEqual(["Applicant Name"]);
});

test("names become words", () => {
  expect(wordsOfName("form1[0].#subform[0].ContractorLicenseNo[0]")).toBe(
    "subform contractor license no",
  );
});
