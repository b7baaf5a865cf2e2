import { expect, test, vi } from "vitest";
import { renderLetters } from "#lib/documents/render-letters.tsx";
import { composeLetter } from "#lib/domain/paper/compose.ts";
import { reportOn } from "#lib/domain/report/report-on.ts";
import { enclosedPapers } from "#lib/operations/enclosed-papers.ts";
import { aFile, aNotice, anOffice, aParty, aProperty, aRole } from "#tests/support/file.ts";
import { aLedgerEntry, aVersion } from "#tests/support/ledger.ts";
import { readPdf } from "#tests/support/pdf.ts";

/** Rendering is slow where other work runs beside it. */
vi.setConfig({ testTimeout: 600_000 });

const FILE = aFile({
  properties: [aProperty("12"), aProperty("14")],
  parties: [aParty("ottilie", { name: "Ottilie Brandvold" }), aParty("teo", { name: "Teo Marsh" })],
  roles: [aRole("ottilie", "12"), aRole("teo", "14")],
  splits: [aVersion(1, { "12": 119_000, "14": 80_000 })],
  ledger: [
    aLedgerEntry(1, {
      amount: 119_000,
      partyId: "ottilie",
      dueOn: "2026-12-25",
      splitId: "split-1",
    }),
    aLedgerEntry(2, {
      ...{ amount: 80_000, partyId: "teo", propertyId: "14", dueOn: "2026-12-25" },
      splitId: "split-1",
    }),
  ],
});
const FACTS = {
  file: FILE,
  report: reportOn(FILE, "2026-11-25"),
  office: anOffice({ payee: "Bellwether Trust Account" }),
};

test("an invoice cover has the invoice that it names behind it, and no one else’s", async () => {
  const about = { kind: "invoice-cover", partyId: "ottilie", propertyId: "12" } as const;
  const notice = aNotice("n", { ...about, splitId: "split-1" });
  const letter = composeLetter({ ...FACTS, notice });
  const enclosed = enclosedPapers([{ notice, letter }], FACTS);
  const bytes = await renderLetters([letter], new Map(), enclosed);
  const text = readPdf(bytes).text();
  expect(text).toMatch(/is enclosed/);
  expect(text).toContain("Payment slip");
  expect(text).not.toContain("Teo Marsh");
  expect(text).not.toContain("800.00");
});

test("a cover in Spanish has its invoice behind it, in whatever words its number was sent", () => {
  const about = { kind: "invoice-cover", partyId: "ottilie", propertyId: "12" } as const;
  const notice = aNotice("n", { ...about, splitId: "split-1", language: "es" });
  const letter = composeLetter({ ...FACTS, notice });
  for (const said of ["Núm. 1", "No. 1"]) {
    const sent = {
      ...letter,
      blocks: letter.blocks.map((block) =>
        block.kind === "table"
          ? { ...block, rows: block.rows.map(([, ...others]) => [said, ...others]) }
          : block,
      ),
    };
    expect(enclosedPapers([{ notice, letter: sent }], FACTS).get(sent)).toHaveLength(1);
  }
});

test("a cover without an open invoice encloses nothing", () => {
  const notice = aNotice("n", { kind: "invoice-cover", partyId: "ottilie", propertyId: null });
  const letter = composeLetter({ ...FACTS, notice });
  expect(enclosedPapers([{ notice, letter }], FACTS).size).toBe(0);
});
