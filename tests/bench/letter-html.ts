import fs from "node:fs";
import { createRequire } from "node:module";
import type { Letter, LetterBlock } from "#lib/domain/paper/letter.ts";
import { planStrip } from "#lib/domain/strip/strip-plan.ts";
import type { Shape } from "#lib/domain/strip/strip-shape.ts";

// The letters of a bench as one page of HTML with the same words, tables, drawing and typefaces, for
// a browser to print: the yardstick of our own.

const require = createRequire(import.meta.url);
const WIDTH = 468;

/** All letters as one document, each from a fresh page. */
export function lettersAsHtml(letters: readonly Letter[]): string {
  return `<!doctype html><meta charset="utf-8"><style>
${face(400, "400Regular/SourceSans3_400Regular.ttf")}${face(600, "600SemiBold/SourceSans3_600SemiBold.ttf")}
@page { size: letter; margin: 46pt 72pt 55pt }
body { font: 10pt/1.27 Bench; margin: 0 }
article { break-before: page }
header { height: 200pt } h1 { font-size: 15pt } h2 { font-size: 10pt } pre { font: inherit }
table { width: 100%; border-collapse: collapse; font-size: 9pt } tr { border-bottom: 0.4pt solid #999 }
aside { border-left: 2pt solid; padding-left: 9pt } svg { break-inside: avoid }
</style>${letters.map(article).join("")}`;
}

function face(weight: number, file: string): string {
  const path = require.resolve(`@expo-google-fonts/source-sans-3/${file}`);
  const bytes = fs.readFileSync(path).toString("base64");
  return `@font-face { font-family: Bench; font-weight: ${weight}; src: url(data:font/ttf;base64,${bytes}) }\n`;
}

function article(letter: Letter): string {
  const { from, to, subject, greeting, blocks, closing, footer, date, reference } = letter;
  const head = [from.join("\n"), to.join("\n"), date, reference].map(escaped).join("\n\n");
  return `<article><header><pre>${head}</pre></header><h1>${escaped(subject)}</h1><p>${escaped(greeting)}</p>
${blocks.map(block).join("\n")}<p>${escaped(closing)}</p><footer>${escaped(footer)}</footer></article>`;
}

function block(one: LetterBlock): string {
  if (one.kind === "paragraph") return `<p>${escaped(one.text)}</p>`;
  if (one.kind === "heading") return `<h2>${escaped(one.text)}</h2>`;
  if (one.kind === "list") return `<ul>${one.lines.map(item).join("")}</ul>`;
  if (one.kind === "table")
    return `<table>${[one.head, ...one.rows].map((cells) => `<tr>${cells.map(cell).join("")}</tr>`).join("")}</table>`;
  if (one.kind === "amount") return `<p>${escaped(one.words)} <b>${escaped(one.amount)}</b></p>`;
  if (one.kind === "caution")
    return `<aside><b>${escaped(one.title)}</b><p>${escaped(one.text)}</p></aside>`;
  if (one.kind === "answer-slip") return `<hr><ul>${one.choices.map(item).join("")}</ul>`;
  if (one.kind === "signature") return `<pre>${one.lines.map(escaped).join("\n")}</pre>`;
  if (one.kind === "pictures") return "";
  const { drawing, caption } = one;
  const frame = { width: WIDTH, scale: null, from: 0, to: drawing.extent, height: 230 };
  const { width, height, shapes } = planStrip(drawing, frame);
  return `<svg width="${width}pt" height="${height}pt" viewBox="0 0 ${width} ${height}">${shapes.map(drawn).join("")}</svg><p>${escaped(caption)}</p>`;
}

function drawn(shape: Shape): string {
  if (shape.kind === "words") {
    const [x, y] = shape.at;
    const turned = shape.upright ? ` transform="rotate(-90 ${x} ${y})"` : "";
    return `<text x="${x}" y="${y}" font-size="${shape.size}" text-anchor="${shape.anchor}"${turned}>${escaped(shape.text)}</text>`;
  }
  const points = shape.points.map(([x, y]) => `${x.toFixed(2)},${y.toFixed(2)}`).join(" ");
  const name = shape.kind === "area" ? "polygon" : "polyline";
  return `<${name} points="${points}" fill="none" stroke="#333" stroke-width="${shape.width}"/>`;
}

function item(text: string): string {
  return `<li>${escaped(text)}</li>`;
}

function cell(text: string): string {
  return `<td>${escaped(text)}</td>`;
}

function escaped(text: string): string {
  return text.replace(/[&<>]/g, (sign) => `&#${sign.charCodeAt(0)};`);
}
