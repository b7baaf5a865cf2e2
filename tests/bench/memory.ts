import { spawnSync } from "node:child_process";
import { goal } from "./goals.ts";
import { enteringMoney, linesThere, PAGES, pays, reads } from "./people.ts";
import type { Served } from "./served.ts";

/** A page every so often, as of a few people at work; one in so many is a payment. */
const EVERY_MS = 1_000;
const WRITES = 10;

/** What it has grown to when every page was looked at often enough is the level that it should keep. */
const WARM = 0.25;

/** The page servers' memory under light load for so many minutes: its level after a quarter, then and at the end. */
export async function printMemory(served: Served, minutes: number): Promise<void> {
  const entering = enteringMoney();
  const lines = await linesThere(served);
  const start = performance.now();
  const share = () => (performance.now() - start) / (minutes * 60_000);
  const samples: { readonly share: number; readonly megabytes: number }[] = [];
  let failed = 0;
  for (let turn = 0; share() < 1; turn += 1) {
    const line = lines[turn % lines.length] ?? "";
    const page = PAGES[turn % PAGES.length] ?? "";
    const ok =
      turn % WRITES === WRITES - 1
        ? await pays(served, { reference: `memory-${turn}`, entering })
        : await reads(served, turn % 7 === 0 ? "/" : `/lines/${line}${page}`);
    if (!ok) failed += 1;
    samples.push({ share: share(), megabytes: residentOf(served.pids) });
    await new Promise((resolve) => setTimeout(resolve, EVERY_MS));
  }
  const between = (from: number, to: number) =>
    middle(
      samples.filter((one) => one.share >= from && one.share < to).map((one) => one.megabytes),
    );
  const parts = [0, 0.25, 0.5, 0.75].map((from) => between(from, from + 0.25).toFixed(0));
  console.log(
    `Memory of the page servers, ${minutes} min of light load (${samples.length} acts, ${failed} failed): ${samples[0]?.megabytes.toFixed(0)} MB at first, then by quarters ${parts.join(", ")} MB, ${samples.at(-1)?.megabytes.toFixed(0)} MB at last`,
  );
  const level = between(WARM, 0.5);
  goal("memory at the end of light load", between(0.75, 1), {
    ...{ most: level * 1.1, unit: "MB" },
    yardstick: `${level.toFixed(0)} MB in the second quarter`,
  });
}

function middle(numbers: readonly number[]): number {
  return numbers.toSorted((one, other) => one - other)[Math.floor(numbers.length / 2)] ?? 0;
}

/** Megabytes of processes that are in memory, together. */
function residentOf(pids: readonly number[]): number {
  const { stdout } = spawnSync("ps", ["-o", "rss=", "-p", pids.join(",")]);
  const each = stdout.toString().trim().split("\n").map(Number);
  return each.reduce((sum, one) => sum + one, 0) / 1024;
}
