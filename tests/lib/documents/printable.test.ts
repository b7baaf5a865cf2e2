import { expect, test } from "vitest";
import { canPrint, DocumentRefused, printable } from "#lib/documents/printable.ts";
import { renderLetters } from "#lib/documents/render-letters.tsx";
import { composeLetter } from "#lib/domain/paper/compose.ts";
import { readPdf } from "#tests/support/pdf.ts";
import { sampleLine, sampleNotice } from "#tests/support/sample-line.ts";

/** Rendering is slow where other work runs beside it. */
const SIGNS = "Peña Łódź ½ ⅓ ≥ ≤ ☐ ☑ ☒ ′ ″ → ő ¿ ¡";

test("canPrint() knows every sign that letters use", () => {
  const missing = [...SIGNS].filter((sign) => !canPrint(sign.codePointAt(0) ?? 0));
  expect(missing).toEqual([]);
});

test("printable() refuses a sign that no typeface here has, naming it and where it stands", () => {
  const refuse = () => printable({ name: "Ana 漢" }, "The letter to Ana");
  expect(refuse).toThrow(DocumentRefused);
  expect(refuse).toThrow(/The letter to Ana cannot be printed: .*“漢” \(U\+6F22\) in “Ana 漢”/);
});

test("printable() composes accents and drops invisible signs and line breaks", () => {
  expect(printable(["Pen\u0303a", "a\u00adb", "one\ntwo"], "It")).toEqual([
    "Pe\u00f1a",
    "ab",
    "one two",
  ]);
});

test("renderLetters() prints signs of both typefaces as they are, all embedded", async () => {
  const notice = sampleNotice("ottilie", "p12", { ownWords: SIGNS });
  const pdf = readPdf(await renderLetters([composeLetter({ ...sampleLine(), notice })]));
  for (const sign of SIGNS.replaceAll(" ", "")) expect(pdf.text(1)).toContain(sign);
  expect(pdf.fonts().filter(({ embedded }) => !embedded)).toEqual([]);
  expect(pdf.fonts().some(({ name }) => name.includes("DejaVu"))).toBe(true);
});

test("renderLetters() keeps joined letters searchable as the letters that they join", async () => {
  const notice = sampleNotice("ottilie", "p12", { ownWords: "Office, offer, \ufb01le" });
  const text = readPdf(await renderLetters([composeLetter({ ...sampleLine(), notice })])).text(1);
  expect(text).toContain("Office, offer, file");
  expect(text).toContain("office@example.com");
});

test("printable() leaves a room with its number", () => {
  expect(printable("Quillhaven Library, Room 2.", "A letter")).toBe(
    "Quillhaven Library, Room\u00a02.",
  );
});

test("printable() holds a time of day together, in both languages", () => {
  expect(printable("de 9:00 a. m. a 3:30 p. m.", "A letter")).toBe(
    "de 9:00\u00a0a.\u00a0m. a 3:30\u00a0p.\u00a0m.",
  );
  expect(printable("6:30 PM to 8:00 PM", "A letter")).toBe("6:30\u00a0PM to 8:00\u00a0PM");
});
