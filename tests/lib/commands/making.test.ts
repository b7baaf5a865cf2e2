import { type ChildProcess, spawn } from "node:child_process";
import { once } from "node:events";
import path from "node:path";
import { text } from "node:stream/consumers";
import { expect, onTestFinished, test } from "vitest";
import { aFolder } from "../../support/office.ts";

const MAKING = path.resolve(import.meta.dirname, "../../../lib/commands/making.mjs");

/** A start that says “making”, and makes until a line comes in. */
function aStart(root: string, dataFolder: string): ChildProcess {
  const program = `
    import { once } from "node:events";
    import { making } from ${JSON.stringify(MAKING)};
    await making(${JSON.stringify({ root, dataFolder })}, async () => {
      console.log("making");
      await once(process.stdin, "data");
    });
    console.log("made");
    process.exit(0);
  `;
  const start = spawn(process.execPath, ["--input-type=module", "-e", program], {
    stdio: ["pipe", "pipe", "pipe"],
  });
  onTestFinished(() => void start.kill("SIGKILL"));
  return start;
}

async function saysNext({ stdout }: ChildProcess): Promise<string> {
  const [said] = await once(stdout as NonNullable<typeof stdout>, "data");
  return String(said);
}

test("a second start of the same office is refused in words while the first is building", async () => {
  const root = aFolder();
  const first = aStart(root, "/srv/office");
  expect(await saysNext(first)).toContain("making");
  const second = aStart(root, "/srv/office");
  const words = text(second.stderr as NonNullable<typeof second.stderr>);
  expect(await once(second, "exit")).toEqual([1, null]);
  expect(await words).toContain("Wyebook is already being started for /srv/office");
  expect(await words).toContain(`process ${first.pid}`);
  first.stdin?.write("\n");
  expect(await saysNext(first)).toContain("made");
});

test("one for another office waits until the first has built, and says so", async () => {
  const root = aFolder();
  const first = aStart(root, "/srv/office");
  await saysNext(first);
  const second = aStart(root, "/srv/demo");
  expect(await saysNext(second)).toContain(`Another Wyebook (process ${first.pid})`);
  first.stdin?.write("\n");
  expect(await saysNext(second)).toContain("making");
});

test("what a killed one left behind stops nobody", async () => {
  const root = aFolder();
  const first = aStart(root, "/srv/office");
  await saysNext(first);
  first.kill("SIGKILL");
  await once(first, "exit");
  const second = aStart(root, "/srv/office");
  expect(await saysNext(second)).toContain("making");
});
