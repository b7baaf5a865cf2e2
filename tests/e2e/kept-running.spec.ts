import { type ChildProcess, spawn } from "node:child_process";
import fs from "node:fs";
import os from "node:os";
import path from "node:path";
import { expect, test } from "@playwright/test";
import Database from "better-sqlite3";
import { type OpenDb, openDb } from "#db/open.ts";
import { freePort } from "./support/free-port.ts";

const PORT = await freePort();
const SIGN_IN = `http://localhost:${PORT}/sign-in`;

interface Running {
  readonly command: ChildProcess;
  readonly said: () => string;
  readonly ended: Promise<number | null>;
}

let dataFolder: string;
const started: Running[] = [];

test.beforeEach(() => {
  dataFolder = path.join(fs.mkdtempSync(path.join(os.tmpdir(), "wyebook-kept-")), "data");
});

test.afterEach(async () => {
  for (const { command, ended } of started.splice(0)) {
    command.kill("SIGTERM");
    await ended;
  }
  fs.rmSync(path.dirname(dataFolder), { recursive: true, force: true });
});

/** The command as a person types it. */
function start(pageServers = "2"): Running {
  const command = spawn(process.execPath, ["lib/commands/start.mjs"], {
    env: {
      ...process.env,
      PORT: String(PORT),
      WYEBOOK_DATA: dataFolder,
      WYEBOOK_PAGE_SERVERS: pageServers,
    },
    stdio: ["ignore", "pipe", "pipe"],
  });
  let said = "";
  for (const stream of [command.stdout, command.stderr])
    stream.on("data", (chunk: Buffer) => {
      said += chunk.toString();
    });
  const ended = new Promise<number | null>((resolve) => command.once("exit", resolve));
  const running = { command, said: () => said, ended };
  started.push(running);
  return running;
}

async function untilSaid(running: Running, words: string | RegExp): Promise<void> {
  await expect.poll(running.said, { timeout: 60_000 }).toMatch(words);
}

/** The processes that a process started, by the first word of what they run that tells them apart. */
function childrenOf({ command }: Running): { readonly pages: number[]; readonly worker: number } {
  const found = { pages: [] as number[], worker: 0 };
  for (const name of fs.readdirSync("/proc").filter((each) => /^\d+$/.test(each))) {
    const text = (file: string) => {
      try {
        return fs.readFileSync(`/proc/${name}/${file}`, "utf8");
      } catch {
        return "";
      }
    };
    if (Number(/^PPid:\s*(\d+)/m.exec(text("status"))?.[1]) !== command.pid) continue;
    if (text("cmdline").includes("pages.mjs")) found.pages.push(Number(name));
    if (text("cmdline").includes("worker.ts")) found.worker = Number(name);
  }
  return found;
}

function isAlive(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch {
    return false;
  }
}

async function textOf(address: string): Promise<string> {
  // A connection of its own: one that was kept may lead to a server that was killed since.
  return await (await fetch(address, { headers: { connection: "close" } })).text();
}

/** A database in which an office was set up. */
function setUp(): void {
  const db: OpenDb = openDb(path.join(dataFolder, "wyebook.db"));
  db.$client.exec(
    'INSERT INTO office (id, name, license, bond, insurance, address_json, phone, email, zone) SELECT 1, \'Tallowmere Drain\', \'\', \'\', \'\', \'{"street":"","unit":"","city":"","state":"","zip":""}\', \'\', \'\', \'America/Los_Angeles\'',
  );
  db.$client.close();
}

test("of two page servers one goes on answering while the other is dead", async () => {
  setUp();
  const running = start();
  await untilSaid(running, `Wyebook is at http://localhost:${PORT}`);
  expect(childrenOf(running).pages).toHaveLength(2);
  for (const killed of [1, 2]) {
    const [pages = 0] = childrenOf(running).pages;
    process.kill(pages, "SIGKILL");
    await expect.poll(() => isAlive(pages)).toBe(false);
    expect(await textOf(SIGN_IN)).toContain("Sign in");
    const comebacks = () => running.said().split("running again").length - 1;
    await expect.poll(comebacks, { timeout: 60_000 }).toBe(killed);
  }
});

test("a page server that is killed comes back, and so does the worker; both end with their command", async () => {
  setUp();
  const first = start("1");
  await untilSaid(first, `Wyebook is at http://localhost:${PORT}`);
  const { pages, worker } = childrenOf(first);
  expect(pages).toHaveLength(1);
  process.kill(pages[0] ?? 0, "SIGKILL");
  await untilSaid(first, "The web server is running again.");
  expect(await textOf(SIGN_IN)).toContain("Sign in");
  process.kill(worker, "SIGKILL");
  await expect.poll(() => childrenOf(first).worker).not.toBe(worker);
  await expect.poll(() => childrenOf(first).worker).not.toBe(0);

  const second = start();
  expect(await second.ended).toBe(1);
  expect(second.said()).toContain(`Wyebook is already running at http://localhost:${PORT}`);

  const left = childrenOf(first);
  first.command.kill("SIGKILL");
  await first.ended;
  await expect
    .poll(() => [...left.pages, left.worker].some(isAlive), { timeout: 30_000 })
    .toBe(false);
  const third = start();
  await untilSaid(third, `Wyebook is at http://localhost:${PORT}`);
});

for (const signal of ["SIGINT", "SIGTERM"] as const)
  test(`a stop by ${signal} leaves the database whole in its one file`, async () => {
    setUp();
    const running = start();
    await untilSaid(running, `Wyebook is at http://localhost:${PORT}`);
    expect(await textOf(SIGN_IN)).toContain("Sign in");
    running.command.kill(signal);
    expect(await running.ended).toBe(0);
    expect(fs.readdirSync(dataFolder).sort()).toEqual(["office.json", "wyebook.db"]);
    const alone = new Database(path.join(dataFolder, "wyebook.db"), { readonly: true });
    expect(alone.prepare("SELECT name FROM office").pluck().get()).toBe("Tallowmere Drain");
    alone.close();
  });

test("an emptied database is no new office: start and pages say what is wrong and what to do", async ({
  page,
}) => {
  setUp();
  const before = start();
  await untilSaid(before, `Wyebook is at http://localhost:${PORT}`);
  await textOf(SIGN_IN);
  before.command.kill("SIGTERM");
  await before.ended;
  fs.truncateSync(path.join(dataFolder, "wyebook.db"), 0);
  const running = start();
  await untilSaid(running, /is empty, although an office was set up.*npm run restore/);
  await untilSaid(running, `Wyebook is at http://localhost:${PORT}`);
  for (const place of ["/", "/setup", "/sign-in", "/lines"]) {
    await page.goto(`http://localhost:${PORT}${place}`);
    await expect(page.getByRole("heading", { level: 1 })).toHaveText(
      place === "/sign-in" ? /can’t be read|Sign in/ : "The office’s records can’t be read",
    );
    await expect(page.getByLabel("Your name")).toHaveCount(0);
  }
  expect(fs.statSync(path.join(dataFolder, "wyebook.db")).size).toBe(0);
});

test("while another program writes to the database, readers go on and a writer is told in words", async ({
  page,
}) => {
  setUp();
  const running = start();
  await untilSaid(running, `Wyebook is at http://localhost:${PORT}`);
  const other = new Database(path.join(dataFolder, "wyebook.db"));
  await textOf(SIGN_IN);
  other.exec("BEGIN IMMEDIATE");
  await page.goto(SIGN_IN);
  await page.getByLabel(/mail address/i).fill("dana@example.com");
  await page.getByLabel("Password").fill("a long enough password");
  await page.getByRole("button", { name: "Sign in" }).click();
  const begun = Date.now();
  expect(await textOf(SIGN_IN)).toContain("Sign in");
  expect(Date.now() - begun).toBeLessThan(3_000);
  await expect(page.getByText("Another program is using the office’s database")).toBeVisible();
  await expect(page.getByLabel(/mail address/i)).toHaveValue("dana@example.com");
  other.exec("ROLLBACK");
  other.close();
});

test("what was typed stays where the page server dies under the press", async ({ page }) => {
  setUp();
  const running = start("1");
  await untilSaid(running, `Wyebook is at http://localhost:${PORT}`);
  await page.goto(SIGN_IN);
  await page.getByLabel(/mail address/i).fill("dana@example.com");
  await page.getByLabel("Password").fill("a long enough password");
  const [pages = 0] = childrenOf(running).pages;
  process.kill(pages, "SIGSTOP");
  await page.getByRole("button", { name: "Sign in" }).click();
  process.kill(pages, "SIGKILL");
  await expect(page.getByText("No answer came from the office’s computer")).toBeVisible();
  await expect(page.getByLabel(/mail address/i)).toHaveValue("dana@example.com");
  await untilSaid(running, "The web server is running again.");
  await page.getByRole("button", { name: "Sign in" }).click();
  await expect(page.getByText("No answer came from the office’s computer")).toHaveCount(0);
  await expect(page.getByLabel(/mail address/i)).toHaveValue("dana@example.com");
});
