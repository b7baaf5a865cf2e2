import { type ChildProcess, spawn, spawnSync } from "node:child_process";
import { createHash } from "node:crypto";
import fs from "node:fs";
import os from "node:os";
import path from "node:path";
import { openDb } from "#db/open.ts";
import { insertLine } from "#db/queries/line.ts";
import { insertRow, ROW_LISTS } from "#db/queries/row.ts";
import { listUsers } from "#db/queries/user.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import { startSession } from "#lib/operations/sign-in.ts";
import { freePort } from "#tests/e2e/support/free-port.ts";
import { theLongLine } from "./long-line.ts";

/** The demo's office and the long line, served as an office has it, with somebody signed in. */
export interface Served {
  readonly base: string;
  readonly cookie: string;
  /** The small line's first account, as the form for money names it. */
  readonly account: string;
  /** The page servers’ processes. */
  readonly pids: readonly number[];
  readonly stop: () => void;
}

const TOKEN = "bench";
const TODAY = "2026-11-25";
export const LONG = "long-0001";
export const SMALL = "fennel-0001";

export async function serveLongLine(): Promise<Served> {
  const house = await import("../../lib/commands/house.mjs");
  house.build();
  const root = fs.mkdtempSync(path.join(os.tmpdir(), "wyebook-bench-"));
  const folder = path.join(root, "office");
  const env = { ...process.env, WYEBOOK_DATA: folder, WYEBOOK_TODAY: TODAY };
  spawnSync(process.execPath, ["--import", "tsx", "seed/index.ts"], { env, stdio: "ignore" });
  const account = fill(path.join(folder, "wyebook.db"));
  const port = await freePort();
  // As an office is served: several page servers behind one port, and the worker.
  const office = spawn(process.execPath, ["lib/commands/start.mjs"], {
    env: { ...env, PORT: String(port) },
    stdio: ["ignore", "pipe", "inherit"],
  });
  await ready(office);
  const stop = () => {
    office.once("exit", () => fs.rmSync(root, { recursive: true, force: true }));
    office.kill("SIGTERM");
  };
  const pids = pageServersOf(office.pid ?? 0);
  return { base: `http://localhost:${port}`, cookie: `wyebook=${TOKEN}`, account, pids, stop };
}

function ready(office: ChildProcess): Promise<void> {
  return new Promise((done, fail) => {
    office.stdout?.on("data", (said: Buffer) => {
      if (said.includes("Wyebook is at")) done();
    });
    office.once("exit", () => fail(new Error("the pages could not be served")));
  });
}

/** The page servers among the processes that an office's command started. */
function pageServersOf(parent: number): number[] {
  const { stdout } = spawnSync("ps", ["-o", "pid=,args=", "--ppid", String(parent)]);
  const lines = stdout.toString().split("\n");
  return lines
    .filter((line) => line.includes("pages.mjs"))
    .map((line) => Number.parseInt(line, 10));
}

/** Adds the long line and a session; gives the small line's first account. */
function fill(file: string): string {
  const db = openDb(file);
  putLine(db, theLongLine(LONG));
  const admin = listUsers(db).find(({ role }) => role === "admin");
  const tokenHash = createHash("sha256").update(TOKEN).digest("hex");
  startSession({ db, now: new Date().toISOString() } as Parameters<typeof startSession>[0], {
    userId: admin?.id ?? "",
    tokenHash,
  });
  const account = db.$client
    .prepare("SELECT party_id || ' ' || property_id FROM roles WHERE line_id = ? ORDER BY position")
    .pluck()
    .get(SMALL);
  db.$client.close();
  return String(account);
}

function putLine(db: ReturnType<typeof openDb>, file: LineFile): void {
  db.transaction((tx) => {
    insertLine(tx, { ...file.line, authorityId: null, ruleId: null });
    for (const list of ROW_LISTS)
      file[list].forEach((row, position) => {
        insertRow(tx, list, { lineId: file.line.id, position, row: row as never });
      });
  });
}
