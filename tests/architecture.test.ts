import fs from "node:fs";
import path from "node:path";
import { cruise } from "dependency-cruiser";
import { expect, test } from "vitest";
import boundaries from "./boundaries.mjs";
import { FLOORS } from "./floors.mjs";

const ROOT = path.resolve(import.meta.dirname, "..");
const ROOMS = ["app", "lib", "db", "seed"];

function sources(): string[] {
  return ROOMS.flatMap((room) =>
    fs
      .readdirSync(path.join(ROOT, room), { recursive: true, encoding: "utf8" })
      .filter((name) => /\.(ts|tsx|mjs)$/.test(name))
      .map((name) => `${room}/${name}`),
  );
}

function read(file: string): string {
  return fs.readFileSync(path.join(ROOT, file), "utf8");
}

test('"use client" stands exactly in the files that end in .client.tsx, and in error pages', () => {
  const wrong = sources().filter((file) => {
    const says = /^["']use client["']/m.test(read(file));
    const named = /\.client\.tsx$/.test(file) || /(^|\/)(error|global-error)\.tsx$/.test(file);
    return says !== named;
  });
  expect(wrong).toEqual([]);
});

test("the boundary check sees every source file", async () => {
  const { tsConfig: _tsConfig, ...options } = boundaries.options;
  const result = await cruise(ROOMS, { ...options, baseDir: ROOT } as Parameters<typeof cruise>[1]);
  if (typeof result.output === "string") throw new Error("Expected modules, got text");
  const seen = new Set(result.output.modules.map((module) => module.source));
  expect(sources().filter((file) => !seen.has(file))).toEqual([]);
});

test("every room of the core has its floor, and every floor its room", () => {
  const domain = path.join(ROOT, "lib/domain");
  const parted = new Set(
    FLOORS.flatMap((floor) => (floor.includes("/") ? floor.split("/", 1) : [])),
  );
  const rooms = fs
    .readdirSync(domain)
    .flatMap((room) =>
      parted.has(room)
        ? fs.readdirSync(path.join(domain, room)).map((part) => `${room}/${part}`)
        : [room],
    );
  expect([...rooms].sort()).toEqual([...FLOORS].sort());
});

test("the boundary check refuses an arrow that points up, whatever room it comes from", async () => {
  const { tsConfig: _tsConfig, ...options } = boundaries.options;
  const [ground = "", ...above] = FLOORS;
  for (const [at, room] of above.entries()) {
    const rule = boundaries.forbidden.find(
      ({ name }) => name === `${FLOORS[at]}-knows-nothing-above-it`,
    );
    expect(new RegExp(rule?.to.path ?? "never").test(`lib/domain/${room}/any.ts`), room).toBe(true);
    expect(new RegExp(rule?.to.path ?? "").test(`lib/domain/${ground}/any.ts`), room).toBe(false);
  }
  expect(options.tsPreCompilationDeps).toBe(true);
});

test("no transaction has an async callback: its writes would leak", () => {
  const wrong = sources().filter((file) => /transaction\(\s*async/.test(read(file)));
  expect(wrong).toEqual([]);
});

test("pages and actions read rows together with their revision, never the revision by itself", () => {
  const wrong = sources().filter(
    (file) =>
      file.startsWith("app/") && /getRevisions|countOfficeEntries|getLastSave/.test(read(file)),
  );
  expect(wrong).toEqual([]);
});

test("only tests, commands and lib/env.ts read the environment", () => {
  const wrong = sources().filter(
    (file) => /process\.env/.test(read(file)) && !/^(lib\/env\.ts|lib\/commands\/)/.test(file),
  );
  expect(wrong).toEqual([]);
});
