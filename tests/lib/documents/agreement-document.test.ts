import { expect, test } from "vitest";
import { renderAgreements } from "#lib/documents/agreement-document.tsx";
import { agreementPaper, readingCopy } from "#lib/domain/paper/agreement-paper.ts";
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

test("no signer stands alone on a sheet, and each sheet says what is signed on it", async () => {
  for (const many of [3, 4, 5, 7]) {
    const parties = Array.from({ length: many }, (_none, at) => ({
      name: `Signer ${at}`,
      lots: "12 Fennel Row, Quillhaven, WA 98000",
    }));
    const pages = readPdf(await renderAgreements([{ ...PAPER, parties }]))
      .text()
      .split("\f")
      .filter((page) => page.trim() !== "");
    const signing = pages.map((page) => page.match(/Acknowledgment of/g)?.length ?? 0);
    expect(signing.reduce((sum, each) => sum + each, 0)).toBe(many);
    expect(signing.at(-1)).toBeGreaterThanOrEqual(2);
    for (const page of pages) expect(page).toContain(PAPER.title);
  }
});

test("who is written to in Spanish gets a copy to read, with nothing to sign or to record", async () => {
  const facts = { file: FILE, office: anOffice(), today: "2026-11-25" };
  expect(readingCopy(facts, AGREEMENT)).toBeNull();
  const [ann, ...others] = FILE.parties;
  const file = {
    ...FILE,
    parties: [{ ...ann, language: "es" as const }, ...others],
    roles: FILE.roles.map((role) =>
      role.partyId === "firm" ? { ...role, capacity: "member" } : role,
    ),
  } as typeof FILE;
  const copy = readingCopy({ ...facts, file }, AGREEMENT);
  if (copy === null) throw new Error("No copy");
  const text = readPdf(await renderAgreements([copy]))
    .text()
    .replaceAll(/\s+/g, " ");
  expect(text).toContain("Copia de lectura: no se firma ni se registra.");
  expect(text).toContain("not to be signed or recorded");
  expect(text).not.toMatch(/Acknowledgment|recorder’s use|return to/);
  // What was typed in English is quoted; who signs for a firm is said in Spanish.
  expect(text).toContain("«Joint sewer agreement»");
  expect(text).toContain("Larkspur Holdings LLC, por medio de su miembro («member»)");
  expect(text).not.toContain("by its");
  // The terms are nobody's to translate: without the office's own they stay in English, and it says so.
  expect(text).toContain("Las condiciones están aquí en inglés");
  expect(text).toContain("Each lot pays its part.");
  const own = readingCopy(
    { ...facts, file },
    { ...AGREEMENT, termsEs: "Cada lote paga su parte." },
  );
  expect(own?.sections.at(-1)?.text).toEqual(["Cada lote paga su parte."]);
});
