import * as fontkit from "@cantoo/fontkit";
import { PDFDocument } from "@cantoo/pdf-lib";
import { expect, test, vi } from "vitest";
import { regularFontBytes } from "#lib/documents/fonts.ts";
import { stampCode } from "#lib/documents/stamp-code.ts";
import type { Language } from "#lib/domain/say/language.ts";

const CODE = {
  url: "https://office.example.com/n/K7QM2XPD9RTB",
  door: "office.example.com/n",
  code: "K7QM-2XPD-9RTB",
  until: { en: "September 25, 2026", es: "25 de septiembre de 2026" },
};
/** The letterhead’s lowest line: the window of a #10 envelope begins 2-3/8 in from the top. */
const LOWEST = 792 - 2.25 * 72;

async function stamped(languages: readonly Language[]) {
  const document = await PDFDocument.create();
  document.registerFontkit(fontkit);
  const font = await document.embedFont(regularFontBytes(), { subset: true });
  const page = document.addPage([612, 792]);
  const drawn = vi.spyOn(page, "drawText");
  stampCode(page, CODE, { font, languages });
  return drawn.mock.calls.map(([text, at]) => ({ text, size: at?.size ?? 0, y: at?.y ?? 0 }));
}

test.each([[["en"]], [["es"]], [["en", "es"]], [["es", "en"]]] as const)(
  "beside the code nothing is smaller than 7 points or in the window: %o",
  async (languages) => {
    const lines = await stamped(languages);
    for (const { text, size, y } of lines) {
      expect(size, text).toBeGreaterThanOrEqual(7);
      expect(y, text).toBeGreaterThan(LOWEST);
    }
  },
);

test("a letter in two languages says in each until when its code opens", async () => {
  const texts = (await stamped(["en", "es"])).map(({ text }) => text);
  expect(texts).toContain("Good through September 25, 2026");
  expect(texts).toContain("Vale hasta el 25 de septiembre de 2026");
});
