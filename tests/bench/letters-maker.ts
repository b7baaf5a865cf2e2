// Makes letters for whoever started it: JSON in, the path of a PDF out.
import fs from "node:fs";
import os from "node:os";
import path from "node:path";
import { renderLetters } from "#lib/documents/render-letters.tsx";
import type { Letter } from "#lib/domain/paper/letter.ts";

process.on("message", async ({ letters }: { letters: readonly string[] }) => {
  const bytes = await renderLetters(letters.map((letter) => JSON.parse(letter) as Letter));
  const file = path.join(fs.mkdtempSync(path.join(os.tmpdir(), "wyebook-bench-")), "letters.pdf");
  fs.writeFileSync(file, bytes);
  process.send?.({ file });
});
process.send?.("ready");
