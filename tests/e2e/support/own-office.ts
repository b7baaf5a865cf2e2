import { type ChildProcess, execFileSync, spawn } from "node:child_process";
import fs from "node:fs";
import http from "node:http";
import path from "node:path";
import Database from "better-sqlite3";
import { freePort } from "./free-port.ts";

const ROOT = path.resolve(import.meta.dirname, "../../..");

/** A demo office of its own behind the page server, and a look at its database. */
export interface OwnOffice {
  readonly port: number;
  readonly origin: string;
  readonly db: Database.Database;
  readonly folder: string;
  readonly stop: () => Promise<void>;
}

type Env = Readonly<Record<string, string>>;

interface Starting {
  readonly folder: string;
  readonly env?: Env | ((port: number) => Env);
  /** With the worker beside it, which makes PDFs and sends mail. */
  readonly worker?: boolean;
}

export async function startOwnOffice({
  folder,
  env = {},
  worker = false,
}: Starting): Promise<OwnOffice> {
  const all = { ...process.env, WYEBOOK_DATA: folder, WYEBOOK_TODAY: "2026-11-25" };
  execFileSync(process.execPath, ["--import", "tsx", "seed/index.ts"], { cwd: ROOT, env: all });
  const port = await freePort();
  const more = typeof env === "function" ? env(port) : env;
  const pages = spawn(process.execPath, ["lib/commands/pages.mjs", String(port), "127.0.0.1"], {
    cwd: ROOT,
    env: { ...all, NODE_ENV: "production", PORT: String(port), ...more },
    stdio: ["ignore", "ignore", "inherit"],
  });
  await untilAnswering(port, pages);
  const helper = worker
    ? spawn(process.execPath, ["--import", "tsx", "lib/commands/worker.ts"], {
        cwd: ROOT,
        env: { ...all, NODE_ENV: "production", ...more },
        stdio: ["ignore", "ignore", "inherit"],
      })
    : null;
  const db = new Database(path.join(folder, "wyebook.db"), { readonly: true });
  const stop = async () => {
    db.close();
    for (const process of [pages, helper]) await ended(process);
    fs.rmSync(folder, { recursive: true, force: true });
  };
  return { port, origin: `http://localhost:${port}`, db, folder, stop };
}

/** Told to stop, and gone. */
async function ended(process: ChildProcess | null): Promise<void> {
  if (process === null || process.exitCode !== null) return;
  const gone = new Promise((resolve) => process.once("exit", resolve));
  process.kill("SIGTERM");
  await gone;
}

async function untilAnswering(port: number, pages: ChildProcess): Promise<void> {
  const until = Date.now() + 60_000;
  while (Date.now() < until) {
    if (pages.exitCode !== null) throw new Error("The page server ended before it answered");
    const answer = await ask(port, { method: "GET", path: "/sign-in" }).catch(() => null);
    if (answer !== null) return;
    await new Promise((resolve) => setTimeout(resolve, 200));
  }
  throw new Error(`Nothing answered on port ${port} within a minute`);
}

interface Question {
  readonly method: string;
  readonly path: string;
  readonly headers?: Readonly<Record<string, string>>;
  readonly body?: Buffer;
  /** The address that the request comes from, of this machine's own: `127.0.0.2`. */
  readonly from?: string;
}

interface Answer {
  readonly status: number;
  readonly headers: http.IncomingHttpHeaders;
  readonly text: string;
}

/** One request with exactly these headers; nothing is followed and no cookie is kept. */
export function ask(port: number, question: Question): Promise<Answer> {
  const { method, path: at, headers = {}, body, from } = question;
  return new Promise((resolve, reject) => {
    const request = http.request(
      {
        host: "127.0.0.1",
        port,
        method,
        path: at,
        headers,
        ...(from ? { localAddress: from } : {}),
      },
      (response) => {
        const chunks: Buffer[] = [];
        response.on("data", (chunk: Buffer) => chunks.push(chunk));
        response.on("error", reject);
        response.on("end", () =>
          resolve({
            status: response.statusCode ?? 0,
            headers: response.headers,
            text: Buffer.concat(chunks).toString("utf8"),
          }),
        );
      },
    );
    request.on("error", reject);
    request.end(body);
  });
}

/** One server action of the built program, and a page that knows it. */
export interface BuiltAction {
  readonly name: string;
  readonly id: string;
  /** As `app/lines/[lineId]/record/page`. */
  readonly page: string;
}

/** Every server action, as the build lists them. */
export function builtActions(): BuiltAction[] {
  const file = path.join(ROOT, ".next/server/server-reference-manifest.json");
  const { node } = JSON.parse(fs.readFileSync(file, "utf8")) as {
    node: Record<string, { exportedName: string; filename: string; workers: object }>;
  };
  return Object.entries(node).map(([id, { exportedName, filename, workers }]) => ({
    // Two actions share a name: the private page has its own `withdrawAction`.
    name: filename.startsWith("app/n/") ? `link:${exportedName}` : exportedName,
    id,
    page: Object.keys(workers).at(-1) ?? "",
  }));
}

interface Call {
  readonly action: BuiltAction;
  readonly path: string;
  readonly args: readonly unknown[];
  readonly cookie?: string;
  /** What the browser names as the page's origin; null: it names none. */
  readonly origin?: string | null;
  readonly headers?: Readonly<Record<string, string>>;
  readonly from?: string;
}

/** Calls a server action over HTTP the way the browser's own code does. */
export async function callAction(
  office: Pick<OwnOffice, "port" | "origin">,
  call: Call,
): Promise<Answer> {
  const { action, path: at, args, cookie, headers = {}, from } = call;
  const origin = call.origin === undefined ? office.origin : call.origin;
  const sent = new Response(encoded(args));
  return ask(office.port, {
    method: "POST",
    path: at,
    headers: {
      Host: `localhost:${office.port}`,
      Accept: "text/x-component",
      "Next-Action": action.id,
      "Content-Type": sent.headers.get("content-type") ?? "",
      ...(origin === null ? {} : { Origin: origin }),
      ...(cookie === undefined ? {} : { Cookie: cookie }),
      ...headers,
    },
    body: Buffer.from(await sent.arrayBuffer()),
    ...(from === undefined ? {} : { from }),
  });
}

/** Arguments as React writes them: JSON, with forms as numbered parts beside it. */
function encoded(args: readonly unknown[]): FormData {
  const body = new FormData();
  let forms = 0;
  const root = JSON.stringify(args, (_key, value: unknown) => {
    if (value === undefined) return "$undefined";
    if (typeof value === "string") return value.startsWith("$") ? `$${value}` : value;
    if (!(value instanceof FormData)) return value;
    forms += 1;
    for (const [name, entry] of value) body.append(`_${forms}_${name}`, entry);
    return `$K${forms}`;
  });
  body.append("0", root);
  return body;
}

/** Signs in through the form's own action; the cookie that came back. */
export async function signInTo(
  office: OwnOffice,
  email: string,
  { password = "demo-office-2026", from, headers = {} }: SignInWords = {},
): Promise<{ readonly cookie: string; readonly answer: Answer }> {
  const action = builtActions().find(({ name }) => name === "signInAction");
  if (action === undefined) throw new Error("There is no sign-in");
  const answer = await callAction(office, {
    ...{ action, path: "/sign-in", args: [IDLE, aForm({ email, password })], headers },
    ...(from === undefined ? {} : { from }),
  });
  const [set = ""] = answer.headers["set-cookie"] ?? [];
  return { cookie: set.split(";")[0] ?? "", answer };
}

interface SignInWords {
  readonly password?: string;
  readonly from?: string;
  readonly headers?: Readonly<Record<string, string>>;
}

/** What a form shows before it was sent. */
export const IDLE = { status: "idle", message: "", path: "", values: {} };

export function aForm(fields: Readonly<Record<string, string | readonly string[]>>): FormData {
  const form = new FormData();
  for (const [name, value] of Object.entries(fields))
    for (const each of typeof value === "string" ? [value] : value) form.append(name, each);
  return form;
}

/** Every table as it stands, but what the doors note by themselves. */
export function contentsOf({ db }: OwnOffice): Map<string, string> {
  const apart = ["sessions", "sign_in_tries", "sign_ins", "migrations"];
  const names = db
    .prepare("select name from sqlite_master where type = 'table' and name not like 'sqlite_%'")
    .pluck()
    .all() as string[];
  return new Map(
    names
      .filter((name) => !apart.includes(name))
      .map((name) => [name, JSON.stringify(db.prepare(`select * from "${name}"`).all())]),
  );
}

/** The tables that differ between two such looks. */
export function changedTables(
  before: ReadonlyMap<string, string>,
  after: ReadonlyMap<string, string>,
): string[] {
  return [...after].flatMap(([name, rows]) => (before.get(name) === rows ? [] : [name])).sort();
}
