// npm run fonts: the screen's three faces, cut to what a page needs at once. The rest of each face
// stays a second file that a browser fetches only for a page that holds such a letter.
import fs from "node:fs";
import path from "node:path";
import subset from "subset-font";

const FACES = {
  regular: "400Regular/SourceSans3_400Regular.ttf",
  italic: "400Regular_Italic/SourceSans3_400Regular_Italic.ttf",
  semibold: "600SemiBold/SourceSans3_600SemiBold.ttf",
};
const FOLDER = path.resolve(
  import.meta.dirname,
  "../../node_modules/@expo-google-fonts/source-sans-3",
);

/** English, Spanish, and the signs that pages use. */
const AT_ONCE = [
  ...range(0x20, 0x7e),
  ...range(0xa0, 0xff),
  ...[..."–—‘’‚“”„‹›†•…′″⁄€₅™←↑→↓−≈≠≤≥½¼¾⅓⅔▴▸▾✓☐☑●○◆■□"].map((sign) => sign.codePointAt(0)),
];
/** Other letters of names written in Latin script. */
const LATER = [...range(0x100, 0x24f), ...range(0x1e00, 0x1eff)];

for (const [face, file] of Object.entries(FACES)) {
  const whole = fs.readFileSync(path.join(FOLDER, file));
  await write(`${face}.woff2`, whole, AT_ONCE);
  await write(`${face}-more.woff2`, whole, LATER);
}

async function write(name, whole, codes) {
  const cut = await subset(whole, String.fromCodePoint(...codes), { targetFormat: "woff2" });
  fs.writeFileSync(path.join(import.meta.dirname, name), cut);
}

function range(from, to) {
  return Array.from({ length: to - from + 1 }, (_, at) => from + at);
}
