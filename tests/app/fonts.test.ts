import fs from "node:fs";
import path from "node:path";
import * as fontkit from "@cantoo/fontkit";
import { expect, test } from "vitest";

const FOLDER = path.resolve(import.meta.dirname, "../../app/fonts");
const APP = path.resolve(import.meta.dirname, "../../app");
const DOMAIN = path.resolve(import.meta.dirname, "../../lib");
const FACES = ["regular", "italic", "semibold"] as const;

function lettersOf(face: string): ReadonlySet<number> {
  const font = fontkit.create(fs.readFileSync(path.join(FOLDER, `${face}.woff2`)));
  if (!("characterSet" in font)) throw new Error(`${face} is a collection, not a font`);
  return new Set(font.characterSet);
}

/** Letters are asked for above; marks of a file's own making are never shown. */
const NOT_SHOWN = /[\p{L}\p{Cc}\p{Cf}\ufffd]/u;

test("a first visit fetches at most 120 KB of fonts", () => {
  const sizes = FACES.map((face) => fs.statSync(path.join(FOLDER, `${face}.woff2`)).size);
  expect(sizes.reduce((sum, size) => sum + size, 0)).toBeLessThanOrEqual(120 * 1024);
});

test.each(FACES)("the %s face has every letter of English and Spanish, and of names", (face) => {
  const atOnce = lettersOf(face);
  const later = lettersOf(`${face}-more`);
  const lacks = (letters: string, known: ReadonlySet<number>) =>
    [...letters].filter((letter) => !known.has(letter.codePointAt(0) ?? 0));
  expect(lacks("AZaz09$%&@#?!¿¡ñÑáéíóúüÁÉÍÓÚÜ“”‘’–—…·×÷±°½¼¾€§", atOnce)).toEqual([]);
  expect(lacks("ŁódźŐőŘřČčŠšŽžĀāẼẽ".replaceAll(/[ód]/g, ""), later)).toEqual([]);
});

test("the regular face has every sign that pages are written with", () => {
  const known = lettersOf("regular");
  const signs = new Set(
    [APP, DOMAIN].flatMap((folder) =>
      fs
        .readdirSync(folder, { recursive: true, encoding: "utf8" })
        .filter((name) => /\.tsx?$|\.css$/.test(name))
        .flatMap((name) => [...fs.readFileSync(path.join(folder, name), "utf8")]),
    ),
  );
  const lacks = [...signs].filter(
    (sign) => !NOT_SHOWN.test(sign) && !known.has(sign.codePointAt(0) ?? 0),
  );
  expect(lacks).toEqual([]);
});
