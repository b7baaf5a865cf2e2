import { spawnSync } from "node:child_process";
import fs from "node:fs";
import path from "node:path";
import { pathToFileURL } from "node:url";
import { expect, test } from "vitest";
import { aFolder } from "#tests/support/office.ts";

const BUNDLED = pathToFileURL(path.resolve("lib/commands/bundled.mjs")).href;

/** A program of two modules that says `words`, and what it says when it is run. */
function aProgram() {
  const root = aFolder();
  fs.writeFileSync(path.join(root, "package.json"), `{ "type": "module" }`);
  const say = (words: string) =>
    fs.writeFileSync(path.join(root, "lib/words.ts"), `export const words: string = "${words}";\n`);
  fs.mkdirSync(path.join(root, "lib/commands"), { recursive: true });
  fs.writeFileSync(
    path.join(root, "lib/commands/hello.ts"),
    'import { words } from "../words.ts";\nconsole.log(words, process.argv.slice(2).join());\n',
  );
  return { root, say, run: () => runs(root) };
}

function runs(root: string): string {
  const code = `const { runBundled } = await import(${JSON.stringify(BUNDLED)}); await runBundled("hello", ${JSON.stringify(root)});`;
  const args = ["--input-type=module", "--eval", code, "--", "one", "two"];
  const { stdout, stderr } = spawnSync(process.execPath, args, { encoding: "utf8" });
  expect(stderr).toBe("");
  return stdout.trim();
}

const kept = (root: string) => fs.readdirSync(path.join(root, "node_modules/.cache/wyebook"));

test("a bundled command is never older than the files that it is made from", () => {
  const { root, say, run } = aProgram();
  say("first");
  expect(run()).toMatch(/^first/);
  const once = kept(root);
  expect(run()).toMatch(/^first/);
  expect(kept(root)).toEqual(once);
  say("second!");
  expect(run()).toMatch(/^second!/);
  expect(kept(root).filter((name) => name.endsWith(".mjs"))).toHaveLength(1);
});

test("a command runs from its modules where no bundle can be kept", () => {
  const { root, say, run } = aProgram();
  say("all the same");
  fs.mkdirSync(path.join(root, "node_modules"));
  fs.writeFileSync(path.join(root, "node_modules/.cache"), "a file, so no folder can be made");
  expect(run()).toMatch(/^all the same/);
});
