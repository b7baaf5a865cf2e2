import { Document, type DocumentProps, Page } from "@react-pdf/renderer";
import fc from "fast-check";
import { createElement, type ReactElement } from "react";
import { expect, test } from "vitest";
import { fewestPages } from "#lib/documents/fewest-pages.ts";

/** A setting that takes so many pages, of which so many are known before. */
interface Setting {
  readonly pages: number;
  readonly least: number;
}

function ofPages(count: number): ReactElement<DocumentProps> {
  const pages = Array.from({ length: count }, (_, key) => createElement(Page, { key }));
  return createElement(Document, {}, pages);
}

/** What was drawn, in its order, and the setting that was taken. */
async function taken(settings: readonly Setting[], most: number) {
  const drawn: Setting[] = [];
  const draw = (setting: Setting) => {
    drawn.push(setting);
    return ofPages(setting.pages);
  };
  const { document } = await fewestPages(settings, most, draw, { least: ({ least }) => least });
  return { drawn, pages: document.getPageCount() };
}

/** The rule itself, with everything drawn. */
function bestOf(settings: readonly Setting[], most: number): Setting | undefined {
  const fewest = (each: readonly Setting[]) => Math.min(...each.map(({ pages }) => pages));
  const roomier = settings.slice(0, -1);
  const open = fewest(roomier) > most ? settings : roomier;
  return open.find(({ pages }) => pages === fewest(open));
}

const settingsOf = (exact: boolean) =>
  fc.array(
    fc
      .tuple(fc.integer({ min: 1, max: 4 }), fc.integer({ min: 0, max: 2 }))
      .map(([pages, loose]) => ({ pages, least: exact ? pages : Math.max(1, pages - loose) })),
    { minLength: 1, maxLength: 4 },
  );

test("fewestPages() takes the roomiest of the fewest pages, however little is known before", async () => {
  await fc.assert(
    fc.asyncProperty(settingsOf(false), fc.integer({ min: 1, max: 3 }), async (settings, most) => {
      const { drawn, pages } = await taken(settings, most);
      const best = bestOf(settings, most);
      expect(drawn).toContain(best);
      expect(pages).toBe(best?.pages);
      expect(new Set(drawn).size).toBe(drawn.length);
    }),
    { numRuns: 60 },
  );
});

test("fewestPages() draws once where the pages are known before", async () => {
  await fc.assert(
    fc.asyncProperty(settingsOf(true), fc.integer({ min: 1, max: 3 }), async (settings, most) => {
      expect((await taken(settings, most)).drawn).toEqual([bestOf(settings, most)]);
    }),
    { numRuns: 30 },
  );
});

test("fewestPages() believes no bound after one that was none", async () => {
  const wrong = [
    { pages: 2, least: 3 },
    { pages: 1, least: 3 },
    { pages: 1, least: 3 },
  ];
  expect((await taken(wrong, 2)).pages).toBe(1);
});
