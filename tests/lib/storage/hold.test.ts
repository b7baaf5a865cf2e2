import { spawn } from "node:child_process";
import { once } from "node:events";
import fs from "node:fs";
import path from "node:path";
import { expect, test } from "vitest";
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

test("what was left behind hours ago holds nothing, whoever has that number now", async () => {
  const file = path.join(aFolder(), "part-sending");
  fs.writeFileSync(file, String(process.ppid));
  expect(await hold(file)).toBeNull();
  const hoursAgo = new Date(Date.now() - 2 * 60 * 60 * 1000);
  fs.utimesSync(file, hoursAgo, hoursAgo);
  expect(await hold(file)).not.toBeNull();
});

test("of many that want it at once one gets it", async () => {
  const file = path.join(aFolder(), "part-sending");
  fs.writeFileSync(file, String(process.pid));
  const each = await Promise.all(Array.from({ length: 20 }, () => hold(file)));
  expect(each.filter((one) => one !== null)).toHaveLength(1);
});
