import fs from "node:fs";
import os from "node:os";
import path from "node:path";
import fc from "fast-check";
import { afterAll, expect, test, vi } from "vitest";
import { reportOn } from "#lib/domain/report/report-on.ts";
import { idsBeside, withSightings } from "#lib/domain/report/with-sightings.ts";
import { latestDay } from "#lib/exchange/latest-day.ts";
import { type ReadFile, readLineFile, writeLineFile } from "#lib/exchange/line-file.ts";
import { reportJson } from "#lib/exchange/report-json.ts";
import type { Act } from "#lib/operations/act.ts";
import { exportLine } from "#lib/operations/export-line.ts";
import { importLine } from "#lib/operations/import-line.ts";
import { anyLineFile, mended } from "../../support/any-line-file.ts";
import { aDb, anAct } from "../../support/office.ts";

vi.setConfig({ testTimeout: 1_200_000 });

/** Looks again until the reader takes it: each time without what it refused. */
function readable(file: object): ReadFile | null {
  let next = file;
  for (let times = 0; times < 40; times += 1) {
    const read = readLineFile(JSON.stringify(next));
    if (read.ok) return read.value;
    for (const { path, reason } of read.error) expect(path === "" || reason === "").toBe(false);
    next = mended(next, read.error);
  }
  return null;
}

/** Reports on it, takes it into a real database and out again. */
function keep(read: ReadFile): void {
  const file = withSightings(read.file, idsBeside(read.file));
  JSON.stringify(reportJson(file, reportOn(file, latestDay(file))));
  const db = aDb();
  const act = anAct(db, { role: "admin", dataFolder });
  const lineId = takenIn(act, JSON.parse(writeLineFile(read)) as object);
  const out = exportLine({ db, dataFolder }, lineId) ?? "";
  db.$client.close();
  const again = readLineFile(out);
  if (!again.ok) throw new Error(`Not read again: ${JSON.stringify(again.error)}`);
  expect(writeLineFile(again.value)).toBe(out);
}

/** Taken in without the signatures that nobody gave: made up, they are sealed by nothing. */
function takenIn(act: Act, file: object): string {
  const taken = importLine(act, JSON.stringify(file));
  if (taken.ok) return taken.value.lineId;
  const { problems } = taken.error;
  if (problems.length === 0 || !problems.every(({ path: at }) => /^signatures\.\d+$/.test(at)))
    throw new Error(`Read but not taken in: ${taken.error.detail}`);
  return takenIn(act, { ...file, signatures: [] });
}

const dataFolder = fs.mkdtempSync(path.join(os.tmpdir(), "wyebook-any-"));
afterAll(() => fs.rmSync(dataFolder, { recursive: true, force: true }));

test("whatever is right by the schema is refused with path and reason, or read, reported on, kept and given back", () => {
  let rows = 0;
  let files = 0;
  fc.assert(
    fc.property(anyLineFile(), (file) => {
      const read = readable(file);
      if (read === null) return;
      keep(read);
      files += 1;
      rows += Object.values(read.file).flat().length;
    }),
  );
  // It would prove little if nothing were left of them.
  expect(files).toBeGreaterThan(0);
  expect(rows / files).toBeGreaterThan(15);
});
