import { expect, test } from "vitest";
import { renderLetters } from "#lib/documents/render-letters.tsx";
import { composeLetter } from "#lib/domain/paper/compose.ts";
import { enclosedStatements } from "#lib/operations/enclosed-statements.ts";
import { readPdf } from "#tests/support/pdf.ts";
import { SAMPLE_AMOUNTS, sampleLine, sampleNotice } from "#tests/support/sample-line.ts";

const FACTS = sampleLine();

function sent(kind: "proposed-split" | "finding", propertyId: string | null) {
  const notice = sampleNotice("ottilie", propertyId, { kind });
  return { notice, letter: composeLetter({ ...FACTS, notice }) };
}

test("only a proposed split says that it encloses a statement, and has one", () => {
  const split = sent("proposed-split", "p12");
  const finding = sent("finding", "p12");
  const enclosed = enclosedStatements([split, finding], FACTS);
  expect([...enclosed.keys()]).toEqual([split.letter]);
  expect(enclosed.get(split.letter)?.subject).toBe("Statement for 12 Fennel Row");
  expect(enclosedStatements([sent("proposed-split", null)], FACTS).size).toBe(0);
});

test("a letter that was frozen under earlier words keeps its statement", () => {
  const split = sent("proposed-split", "p12");
  const blocks = split.letter.blocks.map((block) =>
    block.kind === "paragraph" ? { ...block, text: `${block.text} (earlier words)` } : block,
  );
  const frozen = { ...split, letter: { ...split.letter, blocks } };
  expect(enclosedStatements([frozen], FACTS).size).toBe(1);
});

test("the statement follows its letter in the PDF, and bears no other’s amount", async () => {
  const split = sent("proposed-split", "p12");
  const bytes = await renderLetters([split.letter], new Map(), enclosedStatements([split], FACTS));
  const text = readPdf(bytes).text();
  expect(text.replaceAll(/\s+/g, " ")).toContain("Enclosed: your statement");
  expect(text).toContain("Statement for 12 Fennel Row");
  const statement = text.slice(text.lastIndexOf("Statement for 12 Fennel Row"));
  expect(statement).not.toContain(String(SAMPLE_AMOUNTS.p18 / 100));
});
