import fs from "node:fs";
import path from "node:path";
import { expect, test } from "vitest";
import { unstorableWords } from "#lib/storage/store.ts";
import { sweepParts } from "#lib/storage/sweep.ts";
import { aFolder } from "../../support/office.ts";

const HASH = "ab".repeat(32);
const HOUR = 60 * 60 * 1_000;

test("sweepParts() removes what was left half written, and nothing that is whole or on its way", () => {
  const dataFolder = aFolder();
  const now = Date.now();
  const put = (place: string, hoursAgo: number) => {
    const file = path.join(dataFolder, place);
    fs.mkdirSync(path.dirname(file), { recursive: true });
    fs.writeFileSync(file, "bytes");
    fs.utimesSync(file, new Date(now - hoursAgo * HOUR), new Date(now - hoursAgo * HOUR));
  };
  put("files/incoming/3f0e", 2);
  put("files/incoming/coming-in", 0);
  put("files/incoming/video-old", 8 * 24);
  put("files/incoming/video-yesterday", 24);
  put(`files/ab/${HASH}`, 900);
  put(`files/ab/${HASH}.0b7c`, 2);
  put("backups/2026-11-01.part", 9 * 24);
  put("backups/2026-11-01/wyebook.db", 9 * 24);
  expect(sweepParts(dataFolder, now)).toBe(4);
  const left = fs.readdirSync(dataFolder, { recursive: true, withFileTypes: true });
  expect(left.flatMap((each) => (each.isFile() ? [each.name] : [])).sort()).toEqual(
    [HASH, "coming-in", "video-yesterday", "wyebook.db"].sort(),
  );
  expect(sweepParts(path.join(dataFolder, "nowhere"), now)).toBe(0);
});

test("unstorableWords() says what a full or shut disk wants, and leaves other mistakes alone", () => {
  const coded = (code: string) => Object.assign(new Error(code), { code });
  expect(unstorableWords(coded("ENOSPC"))).toMatch(/disk .* is full; make room/);
  expect(unstorableWords(coded("EROFS"))).toMatch(/can’t be written to/);
  expect(unstorableWords(coded("EISDIR"))).toBeNull();
});
