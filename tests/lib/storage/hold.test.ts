import { spawn } from "node:child_process";
import { once } from "node:events";
import fs from "node:fs";
import path from "node:path";
import { expect, onTestFinished, test, vi } from "vitest";
import { hold } from "#lib/storage/hold.ts";
import { aFolder } from "../../support/office.ts";

test("what is held is held once, and can be held again when it was let go of", async () => {
  const file = path.join(aFolder(), "part-sending");
  const letGo = await hold(file);
  expect(letGo).not.toBeNull();
  expect(await hold(file)).toBeNull();
  await letGo?.();
  expect(fs.existsSync(file)).toBe(false);
  expect(await hold(file)).not.toBeNull();
});

test("another process holds it while it lives, and nothing when it is gone", async () => {
  const file = path.join(aFolder(), "part-sending");
  const other = spawn(process.execPath, ["-e", "setInterval(() => {}, 1000)"]);
  await once(other, "spawn");
  fs.writeFileSync(file, String(other.pid));
  expect(await hold(file)).toBeNull();
  other.kill("SIGKILL");
  await once(other, "exit");
  expect(await hold(file)).not.toBeNull();
});

test("what fell silent two minutes ago holds nothing, whoever has that number now", async () => {
  const file = path.join(aFolder(), "part-sending");
  fs.writeFileSync(file, String(process.ppid));
  expect(await hold(file)).toBeNull();
  const before = new Date(Date.now() - 2 * 60 * 1000);
  fs.utimesSync(file, before, before);
  expect(await hold(file)).not.toBeNull();
});

test("as long as it is held, others hear of it", async () => {
  vi.useFakeTimers({ toFake: ["setInterval", "clearInterval"] });
  onTestFinished(() => void vi.useRealTimers());
  const file = path.join(aFolder(), "part-sending");
  const letGo = await hold(file);
  const before = new Date(Date.now() - 2 * 60 * 1000);
  fs.utimesSync(file, before, before);
  vi.advanceTimersByTime(5_000);
  await vi.waitFor(() => expect(fs.statSync(file).mtimeMs).toBeGreaterThan(before.getTime()));
  await letGo?.();
});

test("who lets go late lets go of no one else’s", async () => {
  const file = path.join(aFolder(), "part-sending");
  const letGo = await hold(file);
  fs.writeFileSync(file, `${process.ppid} another`);
  await letGo?.();
  expect(fs.readFileSync(file, "utf8")).toBe(`${process.ppid} another`);
});

test("of many that want it at once one gets it", async () => {
  const file = path.join(aFolder(), "part-sending");
  fs.writeFileSync(file, String(process.pid));
  const each = await Promise.all(Array.from({ length: 20 }, () => hold(file)));
  expect(each.filter((one) => one !== null)).toHaveLength(1);
});

test("a file that couldn't be made is not held: the next one to ask can hold it", async () => {
  const folder = path.join(aFolder(), "later");
  const file = path.join(folder, "part-sending");
  await expect(hold(file)).rejects.toThrow(/ENOENT/);
  fs.mkdirSync(folder);
  const letGo = await hold(file);
  expect(letGo).not.toBeNull();
  await letGo?.();
});
