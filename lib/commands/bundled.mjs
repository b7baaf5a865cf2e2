// Runs a command that is written in TypeScript as one JavaScript file: starting it takes a quarter of
// the time that loading its modules one by one does.
import { createHash, randomUUID } from "node:crypto";
import fs from "node:fs";
import { createRequire } from "node:module";
import path from "node:path";
import { pathToFileURL } from "node:url";
import { ROOT } from "./house.mjs";

/** Goes with the packages: a fresh installation makes its own. */
const FOLDER = "node_modules/.cache/wyebook";

/**
 * Runs `lib/commands/<name>.ts`, bundled once for as long as nothing that it is made from changes.
 * Where no bundle can be made or kept, a read-only folder say, it runs from its modules as ever.
 */
export async function runBundled(name, root = ROOT) {
  const file = fresh(name, root) ?? (await bundle(name, root).catch(() => null));
  if (file !== null) return import(pathToFileURL(file).href);
  const { register } = await import("tsx/esm/api");
  register();
  return import(pathToFileURL(path.join(root, `lib/commands/${name}.ts`)).href);
}

/** The bundle made from exactly the files that are there now, or null. */
function fresh(name, root) {
  try {
    const list = path.join(root, FOLDER, `${name}.json`);
    const file = bundleFile(name, JSON.parse(fs.readFileSync(list, "utf8")), root);
    return fs.existsSync(file) ? file : null;
  } catch {
    return null;
  }
}

async function bundle(name, root) {
  const done = await esbuild().build({
    entryPoints: [path.join(root, `lib/commands/${name}.ts`)],
    absWorkingDir: root,
    bundle: true,
    platform: "node",
    format: "esm",
    target: "node20",
    write: false,
    metafile: true,
    logLevel: "silent",
    banner: {
      js: 'import { createRequire as requireFrom } from "node:module"; const require = requireFrom(import.meta.url);',
    },
  });
  const inputs = Object.keys(done.metafile.inputs).filter((input) => !input.includes(":"));
  const file = bundleFile(name, inputs, root);
  const folder = path.dirname(file);
  fs.mkdirSync(folder, { recursive: true });
  put(file, done.outputFiles[0].contents);
  put(path.join(folder, `${name}.json`), JSON.stringify(inputs));
  for (const old of fs.readdirSync(folder))
    if (old.startsWith(`${name}-`) && old.endsWith(".mjs") && old !== path.basename(file))
      fs.rmSync(path.join(folder, old), { force: true });
  return file;
}

/** Named for the size and the last change of everything in it, and for who made it. */
function bundleFile(name, inputs, root) {
  const hash = createHash("sha256").update(process.version).update(root);
  for (const file of [...inputs.map((input) => path.join(root, input)), import.meta.filename]) {
    const { size, mtimeMs } = fs.statSync(file);
    hash.update(`\n${file} ${size} ${mtimeMs}`);
  }
  return path.join(root, FOLDER, `${name}-${hash.digest("hex").slice(0, 24)}.mjs`);
}

/** Whole or not at all, also where two start at once. */
function put(file, content) {
  const draft = `${file}.${randomUUID()}`;
  fs.writeFileSync(draft, content);
  fs.renameSync(draft, file);
}

/** The one that tsx brings, and compiles the same files with. */
function esbuild() {
  const require = createRequire(import.meta.url);
  return createRequire(require.resolve("tsx/package.json"))("esbuild");
}
