import zlib from "node:zlib";
import { goal } from "./goals.ts";
import { type Served, SMALL } from "./served.ts";

const PAGES = ["", "/camera", "/reconcile", "/cost", "/notices"];

/** Scripts of a line's pages beyond those of the sign-in. */
export async function printWeights(served: Served): Promise<void> {
  console.log("");
  const least = await sizeOf(served, await scriptsOf(served, "/sign-in"));
  let most = 0;
  for (const page of PAGES) {
    const more = (await sizeOf(served, await scriptsOf(served, `/lines/${SMALL}${page}`))) - least;
    console.log(`  scripts of ${page || "a line’s front page"}: +${kilobytes(more)} KB gzipped`);
    most = Math.max(most, more);
  }
  goal("scripts of a line’s page beyond the sign-in’s", most / 1024, {
    ...{ most: 45, unit: "KB" },
    yardstick: `${kilobytes(least)} KB gzipped of the sign-in`,
  });
}

async function scriptsOf({ base, cookie }: Served, page: string): Promise<string[]> {
  const html = await (await fetch(base + page, { headers: { cookie } })).text();
  const found = html.matchAll(/<script[^>]+src="([^"]+\.js[^"]*)"/g);
  return [...new Set([...found].map(([, at = ""]) => at))];
}

async function sizeOf({ base }: Served, files: readonly string[]): Promise<number> {
  const sizes = await Promise.all(
    files.map(async (file) => {
      const bytes = await (await fetch(base + file)).arrayBuffer();
      return zlib.gzipSync(Buffer.from(bytes)).byteLength;
    }),
  );
  return sizes.reduce((sum, size) => sum + size, 0);
}

function kilobytes(bytes: number): string {
  return (bytes / 1024).toFixed(0);
}
