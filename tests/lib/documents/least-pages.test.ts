import type { DocumentProps } from "@react-pdf/renderer";
import { createElement, type ReactElement } from "react";
import { beforeAll, expect, test } from "vitest";
import { addressLayout } from "#lib/documents/address-layout.ts";
import { fewestPages } from "#lib/documents/fewest-pages.ts";
import { readyFonts } from "#lib/documents/fonts.ts";
import { leastPages } from "#lib/documents/least-pages.ts";
import { LetterDocument } from "#lib/documents/letter-document.tsx";
import {
  isPlain,
  LETTER_SETTINGS,
  type LetterSetting,
  PLAIN_SETTINGS,
} from "#lib/documents/letter-settings.ts";
import { printable } from "#lib/documents/printable.ts";
import { LETTER_KINDS } from "#lib/domain/facts/notice.ts";
import { composeLetter } from "#lib/domain/paper/compose.ts";
import type { Letter } from "#lib/domain/paper/letter.ts";
import { recipientsOf } from "#lib/domain/paper/recipients.ts";
import { reportOn } from "#lib/domain/report/report-on.ts";
import { demoLines } from "#tests/support/demo.ts";
import { aNotice } from "#tests/support/file.ts";

const TODAY = "2026-11-25";

beforeAll(readyFonts);

/** The letters of every kind that the example office could send, in turn in both languages. */
async function letters(): Promise<Letter[]> {
  const { office, fennel: file } = await demoLines();
  const report = reportOn(file, TODAY);
  return LETTER_KINDS.flatMap((kind, at) => {
    const [to] = recipientsOf(file, report, kind);
    if (to === undefined) return [];
    const language = at % 2 === 0 ? "en" : "es";
    const also = at % 3 === 0 ? ({ alsoIn: language === "en" ? "es" : "en" } as const) : {};
    const notice = aNotice("n", { ...to, ...also, kind, language, replyBy: "2026-12-09" });
    return [printable(composeLetter({ file, report, office, notice }), kind)];
  });
}

async function drawnPages(letter: Letter, setting: LetterSetting): Promise<number> {
  const { document } = await fewestPages(
    [setting],
    1,
    (each) =>
      createElement(LetterDocument, {
        ...{ letter, address: addressLayout(letter.to) },
        ...{ pictures: new Map(), setting: each, count: { total: 1, page: 0 } },
      }) as ReactElement<DocumentProps>,
  );
  return document.getPageCount();
}

/** So many words and the letter’s ending: a bound has to hold at the edge of a page. */
function longer(letter: Letter, words: number): Letter {
  const ending = letter.blocks.filter(({ kind }) => kind === "signature" || kind === "answer-slip");
  const text = Array.from({ length: words }, (_, at) => `word${at % 7}`).join(" ");
  return { ...letter, blocks: [{ kind: "paragraph", text }, ...ending] };
}

test("leastPages() is never more than a letter takes in any setting, and mostly as many", async () => {
  let [asked, met] = [0, 0];
  for (const letter of await letters())
    for (const setting of isPlain(letter) ? PLAIN_SETTINGS : LETTER_SETTINGS) {
      const [least, pages] = [leastPages(letter, setting), await drawnPages(letter, setting)];
      expect(least, `${letter.subject}, ${setting.size} pt`).toBeLessThanOrEqual(pages);
      asked += 1;
      met += least === pages ? 1 : 0;
    }
  expect(met / asked).toBeGreaterThan(0.8);
}, 300_000);

test("leastPages() holds for a letter that grows over a page's end line by line", async () => {
  const first = (await letters()).find(isPlain);
  if (first === undefined) throw new Error("No letter of words alone");
  const found = new Set<number>();
  for (let words = 240; words <= 640; words += 20) {
    const letter = longer(first, words);
    for (const setting of PLAIN_SETTINGS.slice(1, 3)) {
      const [least, pages] = [leastPages(letter, setting), await drawnPages(letter, setting)];
      expect(least, `${words} words, ${setting.size} pt`).toBeLessThanOrEqual(pages);
      found.add(least);
    }
  }
  expect([...found].sort()).toEqual([1, 2]);
}, 300_000);
