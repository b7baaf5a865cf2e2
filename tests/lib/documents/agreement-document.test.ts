import { expect, test } from "vitest";
import { renderAgreements } from "#lib/documents/agreement-document.tsx";
import { agreementPaper } from "#lib/domain/paper/agreement-paper.ts";
import { aFile, anAgreement, anOffice, aParty, aProperty, aRole } from "#tests/support/file.ts";
import { readPdf } from "#tests/support/pdf.ts";

const AGREEMENT = anAgreement("a", {
  title: "Joint sewer agreement",
  recordingNumber: "",
  recordedOn: null,
  terms: "Each lot pays its part.",
  shares: [
    { propertyId: "12", parts: 1 },
    { propertyId: "14", parts: 2 },
  ],
});
const FILE = aFile({
  properties: [
    aProperty("12", { legalDescription: "Lot 12, Fennel Addition", parcel: "QH-0412" }),
    aProperty("14", { legalDescription: "", parcel: "" }),
  ],
  parties: [
    aParty("ann", { name: "Ann Lindqvist" }),
    aParty("firm", { name: "Larkspur Holdings LLC", kind: "firm" }),
  ],
  roles: [aRole("ann", "12"), aRole("firm", "14", { capacity: "" })],
  agreements: [AGREEMENT],
});
const PAPER = agreementPaper({ file: FILE, office: anOffice(), today: "2026-11-25" }, AGREEMENT);

test("a draft names parties with their capacity, lots and parts, and leaves blanks for what is unknown", () => {
  expect(PAPER.parties[0]?.name).toBe("Ann Lindqvist");
  expect(PAPER.parties[1]?.name).toMatch(/^Larkspur Holdings LLC, by its _+$/);
  expect(PAPER.lots.map(({ share }) => share)).toEqual(["1 of 3 parts", "2 of 3 parts"]);
  expect(PAPER.lots[0]).toMatchObject({ legal: "Lot 12, Fennel Addition", parcel: "QH-0412" });
  expect(PAPER.lots[1]?.legal).toMatch(/^_+$/);
});

test("the draft says that it binds nobody, and leaves the acknowledgment to the notary", async () => {
  const text = readPdf(await renderAgreements([PAPER]))
    .text()
    .replaceAll(/\s+/g, " ");
  expect(text).toContain("Not binding");
  expect(text).toContain("For the recorder’s use");
  expect(text).toContain("Each lot pays its part.");
  expect(text.match(/Acknowledgment of/g)).toHaveLength(2);
});
