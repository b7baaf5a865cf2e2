import { spawnSync } from "node:child_process";
import fs from "node:fs";
import path from "node:path";
import { expect, test } from "vitest";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import { reportOn } from "#lib/domain/report/report-on.ts";
import { EXAMPLE } from "#lib/exchange/example.ts";
import { latestDay } from "#lib/exchange/latest-day.ts";
import { readLineFile } from "#lib/exchange/line-file.ts";
import { reportJson } from "#lib/exchange/report-json.ts";
import { theLongLine } from "#tests/bench/long-line.ts";
import { aFolder } from "#tests/support/office.ts";

const TODAY = "2026-11-25";
const said = (file: LineFile) => JSON.stringify(reportJson(file, reportOn(file, TODAY)));

/** The same facts in objects of their own, the fields of each in another order. */
function turned<T>(value: T): T {
  if (Array.isArray(value)) return value.map(turned) as T;
  if (typeof value !== "object" || value === null) return value;
  const entries = Object.entries(value).map(([name, one]) => [name, turned(one)]);
  return Object.fromEntries(entries.toReversed()) as T;
}

function example(): LineFile {
  const read = readLineFile(JSON.stringify(EXAMPLE));
  if (!read.ok) throw new Error("the example is no line file");
  return read.value.file;
}

test("the same line file gives the same report, whatever was reported on before it", () => {
  const [small, long] = [example(), theLongLine("long")];
  const first = [said(small), said(long)];
  expect([said(long), said(small)].toReversed()).toEqual(first);
  expect([said(turned(small)), said(turned(long))]).toEqual(first);
});

test("a file that changed is never told what was kept of it before", () => {
  const file = theLongLine("long");
  const before = said(file);
  const observations = file.observations.map((seen, at) =>
    at === 3 ? { ...seen, counter: seen.counter + 80 } : seen,
  );
  const after = said({ ...file, observations });
  expect(after).not.toBe(before);
  expect(said(turned({ ...file, observations }))).toBe(after);
  expect(said(file)).toBe(before);
});

test("the command, bundled, says what the modules say", () => {
  const file = example();
  const name = path.join(aFolder(), "example.json");
  fs.writeFileSync(name, JSON.stringify(EXAMPLE));
  const { stdout } = spawnSync(process.execPath, ["lib/commands/line.mjs", "report", name]);
  const own = reportJson(file, reportOn(file, latestDay(file)));
  expect(JSON.parse(String(stdout)).stations).toEqual(JSON.parse(JSON.stringify(own)).stations);
  expect(JSON.parse(String(stdout)).splits).toEqual(JSON.parse(JSON.stringify(own)).splits);
});
