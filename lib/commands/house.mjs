// What the commands share. Plain JavaScript on Node alone: it runs before anything is installed.
import { spawnSync } from "node:child_process";
import { createHash } from "node:crypto";
import fs from "node:fs";
import net from "node:net";
import path from "node:path";

export const ROOT = path.resolve(import.meta.dirname, "../..");

const NEXT = path.join(ROOT, "node_modules/next/dist/bin/next");

/** Says a sentence to the person at the keyboard. */
export function say(words) {
  console.log(words);
}

/** Stops with words instead of a stack. */
export function stop(words) {
  console.error(`\n${words}\n`);
  process.exit(1);
}

/** Refuses a Node that the libraries do not run on. */
export function requireNode() {
  const [major = 0, minor = 0] = process.versions.node.split(".").map(Number);
  if (major > 20 || (major === 20 && minor >= 19)) return;
  stop(
    `Wyebook needs Node 20.19 or newer; this is Node ${process.versions.node}. Install Node 20 and run the command again.`,
  );
}

/** Runs a command to its end; stops with `words` if it fails. Returns what it printed when `quiet`. */
export function run(command, args, { env = {}, words, quiet = false } = {}) {
  const done = spawnSync(command, args, {
    cwd: ROOT,
    env: { ...process.env, NEXT_TELEMETRY_DISABLED: "1", ...env },
    stdio: quiet ? ["ignore", "pipe", "pipe"] : ["ignore", "inherit", "inherit"],
    encoding: "utf8",
    maxBuffer: 256 * 1024 * 1024,
  });
  if (done.status !== 0 && words) {
    if (quiet) console.error(`${done.stdout ?? ""}${done.stderr ?? ""}`);
    stop(words);
  }
  return { status: done.status ?? 1, output: `${done.stdout ?? ""}${done.stderr ?? ""}` };
}

/** Installs the packages named in the lock file, unless exactly these are installed already. */
export function install() {
  const lock = fs.readFileSync(path.join(ROOT, "package-lock.json"));
  const wanted = createHash("sha256").update(lock).update(process.versions.modules).digest("hex");
  const stamp = path.join(ROOT, "node_modules/.wyebook-installed");
  if (fs.existsSync(stamp) && fs.readFileSync(stamp, "utf8") === wanted) return;
  say("Installing packages (one to three minutes) …");
  run("npm", ["ci", "--no-fund", "--no-audit", "--loglevel=error"], {
    words:
      "The packages could not be installed; see npm's output above. Check the network, and that a C++ compiler, make and python3 are there (Debian: apt-get install g++ make python3), then run the command again.",
  });
  fs.writeFileSync(stamp, wanted);
}

/** Builds the pages, unless nothing changed since the last build. */
export function build() {
  const wanted = fingerprint(
    ["app", "lib", "db"],
    ["next.config.mjs", "package-lock.json", "tsconfig.json"],
  );
  const stamp = path.join(ROOT, ".next/wyebook-built");
  if (fs.existsSync(stamp) && fs.readFileSync(stamp, "utf8") === wanted) return;
  say("Building (about a minute) …");
  run(process.execPath, [NEXT, "build"], {
    quiet: true,
    words: "The build failed; see its output above. If you changed nothing, run: npm run verify",
  });
  fs.writeFileSync(stamp, wanted);
}

function fingerprint(folders, files) {
  const hash = createHash("sha256");
  for (const folder of folders) {
    for (const name of fs.readdirSync(path.join(ROOT, folder), { recursive: true }).sort()) {
      const file = path.join(ROOT, folder, String(name));
      if (fs.statSync(file).isFile()) hash.update(String(name)).update(fs.readFileSync(file));
    }
  }
  for (const file of files) hash.update(fs.readFileSync(path.join(ROOT, file)));
  return hash.digest("hex");
}

/** The port to serve on, or stops in words when it is not one or is taken. */
export async function requirePort(command) {
  const asked = process.env.PORT ?? "3200";
  const port = Number(asked);
  if (!Number.isInteger(port) || port < 1 || port > 65_535) {
    stop(
      `PORT is "${asked}", which is not a port number. Use a whole number from 1 to 65535, for example: PORT=3201 ${command}`,
    );
  }
  if (await portIsFree(port)) return port;
  if (await answersAsWyebook(port))
    return stop(
      `Wyebook is already running at http://localhost:${port}, so it was not started again. Use that one, or stop it first (Ctrl+C where it runs). To run another office beside it: PORT=${port + 1} WYEBOOK_DATA=FOLDER ${command}`,
    );
  return stop(
    `Port ${port} is in use by another program, so Wyebook was not started. Choose another port: PORT=${port + 1} ${command}`,
  );
}

/** Whether what listens there is a Wyebook, by its sign-in page. */
async function answersAsWyebook(port) {
  const page = `http://127.0.0.1:${port}/sign-in`;
  try {
    const answer = await fetch(page, { signal: AbortSignal.timeout(5_000) });
    return (await answer.text()).includes("Wyebook");
  } catch {
    return false;
  }
}

/** Who serves a data folder, in the folder itself. */
function servingFile(dataFolder) {
  return path.join(dataFolder, "serving.json");
}

/** Stops in words where another Wyebook serves this data folder, on whatever port. */
export async function requireFolder(dataFolder) {
  const file = servingFile(dataFolder);
  if (!fs.existsSync(file)) return;
  const [, pid, port] = /"pid":(\d+),"port":(\d+)/.exec(fs.readFileSync(file, "utf8")) ?? [];
  // After a crash the file is left, and its number may be another program's by now.
  if (pid === undefined || !isAlive(Number(pid)) || (await portIsFree(Number(port)))) return;
  stop(
    `Wyebook is already serving ${dataFolder} at http://localhost:${port} (process ${pid}), so it was not started again. Use that one, or stop it first (Ctrl+C where it runs).`,
  );
}

/** Notes that this process serves the folder; returns what takes the note away. */
export function noteServing(dataFolder, port) {
  fs.mkdirSync(dataFolder, { recursive: true });
  fs.writeFileSync(servingFile(dataFolder), `{"pid":${process.pid},"port":${port}}\n`);
  return () => fs.rmSync(servingFile(dataFolder), { force: true });
}

/** Whether a process of this number runs. */
export function isAlive(pid) {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return error.code === "EPERM";
  }
}

function portIsFree(port) {
  return new Promise((resolve) => {
    const probe = net.createServer();
    probe.once("error", () => resolve(false));
    probe.once("listening", () => probe.close(() => resolve(true)));
    probe.listen(port, host());
  });
}

/** Loopback unless the office opens it to its own network with WYEBOOK_HOST=0.0.0.0. */
export function host() {
  return process.env.WYEBOOK_HOST ?? "127.0.0.1";
}
