import { expect, test } from "vitest";
import type { LetterKind } from "#lib/domain/facts/letter-kind.ts";
import type { Notice } from "#lib/domain/facts/notice.ts";
import { composeLetter } from "#lib/domain/paper/compose.ts";
import { reportOn } from "#lib/domain/report/report-on.ts";
import { LANGUAGES } from "#lib/domain/say/language.ts";
import { sampleLine, sampleNotice } from "#tests/support/sample-line.ts";

const LINE = sampleLine();
const TELLS_OF_WORK: readonly LetterKind[] = [
  ...(["work-start", "entry-consent", "authority-response", "close-out", "change-order"] as const),
];
const FEET = /\d\.\d (ft|pies)/;

function linesOf(kind: LetterKind, about: Partial<Notice>, line = LINE): string[] {
  const notice = sampleNotice("lodz", "p18", { ...about, kind });
  return composeLetter({ ...line, notice }).blocks.flatMap((block) =>
    block.kind === "list" ? block.lines : [],
  );
}

test("feet along the pipe are said from where in every list of a letter", () => {
  let told = 0;
  for (const kind of TELLS_OF_WORK)
    for (const language of LANGUAGES)
      for (const line of linesOf(kind, { language }))
        if (FEET.test(line)) {
          told += 1;
          expect(line, `${kind}, ${language}`).toMatch(
            /from the city’s main|desde la tubería principal/,
          );
        }
  expect(told).toBeGreaterThan(8);
});

test("a proposed change order asks first, by its day, and quotes in Spanish what the office typed", () => {
  const changeOrders = [
    {
      ...{ id: "co", number: 2, title: "Slab", reason: "The pipe is broken under the slab." },
      ...{ state: "proposed" as const, orderedBy: "Ruth", orderedOn: "2026-11-24", note: "" },
    },
  ];
  const file = { ...LINE.file, changeOrders };
  const line = { ...LINE, file, report: reportOn(file, LINE.report.today) };
  const first = (about: Partial<Notice>) => {
    const notice = sampleNotice("lodz", "p18", { ...about, kind: "change-order" });
    const { blocks } = composeLetter({ ...line, notice });
    return blocks.flatMap((block) => (block.kind === "paragraph" ? [block.text] : []));
  };
  const [asked, ...rest] = first({ replyBy: "2026-12-09" });
  expect(asked).toBe(
    "Please tell us by Wednesday, December 9, 2026 whether you agree to change order No. 2.",
  );
  expect(rest).toContain("The pipe is broken under the slab.");
  expect(first({ replyBy: null })[0]).toBe(
    "Please tell us whether you agree to change order No. 2.",
  );
  expect(first({ replyBy: "2026-12-09", language: "es" })).toContain(
    "«The pipe is broken under the slab.»",
  );
});
