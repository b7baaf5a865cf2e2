import { type ChildProcess, spawn } from "node:child_process";
import { expect, onTestFinished, test } from "vitest";
import { keep } from "#lib/commands/keep.mjs";

/** A program that ends at once with a code, or stays until it is told to end. */
function program(code: number | null): ChildProcess {
  const script = code === null ? "setInterval(() => {}, 1000)" : `process.exit(${code})`;
  const child = spawn(process.execPath, ["-e", script], { stdio: "ignore" });
  onTestFinished(() => void child.kill("SIGKILL"));
  return child;
}

test("keep() starts a program again when it is killed, and says so", async () => {
  const said: string[] = [];
  const started: ChildProcess[] = [];
  let again = () => {};
  const second = new Promise<void>((resolve) => {
    again = resolve;
  });
  const kept = keep({
    name: "The web server",
    pauses: [1],
    tell: (words: string) => said.push(words),
    start: () => {
      const child = program(null);
      started.push(child);
      if (started.length === 2) again();
      return child;
    },
  });
  started[0]?.kill("SIGKILL");
  await second;
  expect(said).toEqual(["The web server ended with SIGKILL; restarting at once."]);
  kept.stop();
  expect(await kept.over).toBe(true);
  expect(started).toHaveLength(2);
});

test("keep() gives a program up that dies again and again, and says how often", async () => {
  const said: string[] = [];
  let starts = 0;
  const kept = keep({
    name: "The web server",
    most: 4,
    pauses: [1, 2],
    tell: (words: string) => said.push(words),
    start: () => {
      starts += 1;
      return program(7);
    },
  });
  expect(await kept.over).toBe(false);
  expect(starts).toBe(4);
  expect(said.at(-1)).toBe(
    "The web server ended 4 times, the last time with 7. See its output above.",
  );
});

test("keep() adds nothing to the words of a program that said itself what is wrong", async () => {
  const said: string[] = [];
  let starts = 0;
  let again = () => {};
  const second = new Promise<void>((resolve) => {
    again = resolve;
  });
  const kept = keep({
    name: "The worker",
    pauses: [1],
    tell: (words: string) => said.push(words),
    start: () => {
      starts += 1;
      if (starts === 2) again();
      return program(starts === 1 ? 3 : null);
    },
  });
  await second;
  kept.stop();
  expect(await kept.over).toBe(true);
  expect(said).toEqual([]);
});
