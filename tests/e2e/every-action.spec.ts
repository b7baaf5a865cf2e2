import fs from "node:fs";
import os from "node:os";
import path from "node:path";
import { expect, test } from "@playwright/test";
import { ACTION_CALLS } from "./support/action-calls.ts";
import {
  aForm,
  ask,
  type BuiltAction,
  builtActions,
  callAction,
  changedTables,
  contentsOf,
  IDLE,
  type OwnOffice,
  signInTo,
  startOwnOffice,
} from "./support/own-office.ts";

// Every server action over HTTP, as a browser calls it and as somebody would who writes the request
// by hand: real sign-ins, cookies and origins, and the database before and after. No browser is needed.

const LINE = "fennel-0001";
const PEOPLE = {
  viewer: "ines@example.com",
  field: "marek@example.com",
  office: "ruth@example.com",
  admin: "demo@example.com",
} as const;
type Role = keyof typeof PEOPLE;

/** What a technician may do; all else is office work, and the office itself an admin's. */
const FIELD_ACTIONS = [
  "saveRowsAction",
  "addTestAction",
  "planDayAction",
  "dropDayAction",
  "recordResultAction",
  "moveSightingAction",
  "mergeTieInsAction",
  "undoSightingsAction",
  "addObservationAction",
  "addRunAction",
  "saveRunWayAction",
  "startTallyAction",
  "startMeasuringAction",
  "recordDoorAction",
  "removeVideoAction",
  "setPictureAction",
  "addNarrationAction",
  "decideDraftsAction",
  "takeBackDraftAction",
  "tieAtMainAction",
  "measureFromMainAction",
  "bringInAction",
];
const ADMIN_ACTIONS = [
  "saveOfficeAction",
  "addUserAction",
  "changeUserAction",
  "addAuthorityAction",
  "savePartAction",
  "saveAuthorityFactsAction",
  "bringInHolidaysAction",
  "importAuthorityAction",
  "saveDailyMailAction",
  "saveMailRulesAction",
  "saveReminderRuleAction",
  "removeAuthorityAction",
  "savePaperTextAction",
  "confirmPaperTextAction",
  "saveFormFactsAction",
  "saveMappingsAction",
  "takeSuggestionsAction",
  "saveBoxAction",
  "saveWordingAction",
  "useWordingAction",
  "removeBoxAction",
];
/** Of a person's own account; of whoever holds a link; of a new office. */
const OWN_ACTIONS = [
  "changeOwnPasswordAction",
  "makeFeedAction",
  "revokeFeedAction",
  "signInAction",
  "signOutAction",
];

let office: OwnOffice;
const cookies = new Map<Role, string>();

test.setTimeout(600_000);

test.beforeAll(async () => {
  const folder = fs.mkdtempSync(path.join(os.tmpdir(), "wyebook-actions-"));
  fs.rmSync(folder, { recursive: true });
  office = await startOwnOffice({ folder });
  for (const [role, email] of Object.entries(PEOPLE)) {
    const { cookie } = await signInTo(office, email);
    expect(cookie, `${role} signs in`).toMatch(/^wyebook=.+/);
    cookies.set(role as Role, cookie);
  }
});

test.afterAll(async () => {
  await office?.stop();
});

function actionNamed(name: string): BuiltAction {
  const action = builtActions().find((each) => each.name === name);
  if (action === undefined) throw new Error(`There is no action ${name}`);
  return action;
}

/** A page of the demo on which an action is. */
function pathOf({ page }: BuiltAction): string {
  const known: Record<string, string> = {
    "[lineId]": LINE,
    "[noticeId]": "fennel-0039",
    "[authorityId]": "authority-quillhaven",
    "[formId]": "none",
    "[userId]": "none",
    "[propertyId]": "none",
    "[token]": "x".repeat(43),
  };
  const at = page.replace(/^app/, "").replace(/\/page$/, "");
  return at === "/_not-found" ? "/sign-in" : at.replace(/\[\w+\]/g, (part) => known[part] ?? part);
}

function argsOf(action: BuiltAction): readonly unknown[] {
  const call = ACTION_CALLS[action.name];
  if (call !== undefined) return call.args(office.db);
  if (action.name.startsWith("link:"))
    return [{ token: "x".repeat(43), language: "en", consentId: "none" }, IDLE, aForm({})];
  return [LINE, IDLE, aForm({})];
}

function mayWrite(name: string, role: Role): boolean {
  if (role === "admin") return true;
  if (role === "office") return !ADMIN_ACTIONS.includes(name);
  return role === "field" && FIELD_ACTIONS.includes(name);
}

async function call(action: BuiltAction, role: Role | "anonymous") {
  const cookie = role === "anonymous" ? undefined : cookies.get(role);
  return await callAction(office, {
    ...{ action, path: pathOf(action), args: argsOf(action) },
    ...(cookie === undefined ? {} : { cookie }),
  });
}

test("no action writes anything for who may not, by whichever request", async () => {
  const actions = builtActions().filter(({ name }) => !OWN_ACTIONS.includes(name));
  expect(actions.length).toBeGreaterThan(80);
  const before = contentsOf(office);
  for (const action of actions) {
    for (const role of ["anonymous", "viewer", "field", "office"] as const) {
      if (role !== "anonymous" && mayWrite(action.name, role)) continue;
      const answer = await call(action, role);
      const what = `${action.name} as ${role}`;
      expect(answer.status, what).toBeLessThan(500);
      expect(changedTables(before, contentsOf(office)), what).toEqual([]);
    }
  }
});

test("the same calls write for who may, each with its entry in the history", async () => {
  const told = () => Number(office.db.prepare("select count(*) from history").pluck().get());
  for (const [name, { writes }] of Object.entries(ACTION_CALLS)) {
    if (writes !== true) continue;
    const action = actionNamed(name);
    const before = contentsOf(office);
    const entries = told();
    const role = ADMIN_ACTIONS.includes(name) ? "admin" : "office";
    const answer = await call(action, role);
    expect(answer.status, name).toBeLessThan(400);
    expect
      .soft(
        changedTables(before, contentsOf(office)),
        `${name}: ${/^1:.*$/m.exec(answer.text)?.[0]}`,
      )
      .not.toEqual([]);
    expect.soft(told(), name).toBeGreaterThan(entries);
  }
});

test("a grid's endpoint writes tables of its own, whatever list is named and whoever asks", async () => {
  const action = actionNamed("saveRowsAction");
  const lists = office.db
    .prepare("select name from sqlite_master where type = 'table' and name not like 'sqlite_%'")
    .pluck()
    .all() as string[];
  const named = lists.map((name) => name.replace(/_(\w)/g, (_all, next) => next.toUpperCase()));
  const forged = ["ledger", "scope", "events", "fixtures", "options", "line", "authority"];
  const names = [...new Set([...lists, ...named, ...forged, "__proto__", "constructor", ""])];
  const KEPT = [
    ...["consents", "signatures", "ledger_entries", "notices", "splits", "deliveries", "replies"],
    ...["permit_steps", "agreement_steps", "waivers", "uploads", "links", "users", "office"],
  ];
  const before = contentsOf(office);
  for (const role of ["field", "office", "admin"] as const)
    for (const table of names)
      for (const base of [undefined, "0"]) {
        const answer = await callAction(office, {
          ...{ action, path: `/lines/${LINE}/record`, args: [LINE, table, base, []] },
          cookie: cookies.get(role) ?? "",
        });
        expect(answer.status, `${table} as ${role}`).toBe(200);
      }
  // Nothing at all without a revision; with one, still nothing that counts as proof.
  expect(changedTables(before, contentsOf(office))).toEqual([]);
  for (const table of names) {
    await callAction(office, {
      ...{ action, path: `/lines/${LINE}/record`, args: [LINE, table, 0, []] },
      cookie: cookies.get("admin") ?? "",
    });
  }
  const after = contentsOf(office);
  expect(changedTables(before, after).filter((table) => KEPT.includes(table))).toEqual([]);
});

test("a forged consent, payment, signature, split or letter is refused in words", async () => {
  const action = actionNamed("saveRowsAction");
  const before = contentsOf(office);
  const party = { partyId: "fr-ottilie", propertyId: "fr-12" };
  const rows = {
    consents: { id: "x1", kind: "pay", state: "given", stateOn: "2026-11-25", ...party },
    ledger: { id: "x2", number: 99, kind: "payment", amount: 500_000, on: "2026-11-25", ...party },
    signatures: { id: "x3", consentId: "x1", signedName: "The Owner Himself" },
    waivers: {
      id: "x4",
      holdKey: "any",
      reason: "Fine",
      by: "The Owner Himself",
      on: "2026-11-25",
    },
    splits: { id: "x5", number: 9, rule: "equal", total: 1, shares: [] },
    notices: { id: "fennel-0039", state: "sent", frozen: "{}" },
  };
  for (const [table, row] of Object.entries(rows)) {
    const answer = await callAction(office, {
      ...{ action, path: `/lines/${LINE}/record`, args: [LINE, table, undefined, [row]] },
      cookie: cookies.get("office") ?? "",
    });
    expect(answer.text, table).toContain("no table that is saved as rows");
  }
  expect(changedTables(before, contentsOf(office))).toEqual([]);
});

test("nonsense is answered in words, not with a bare error", async () => {
  const cookie = cookies.get("office") ?? "";
  const rows = actionNamed("saveRowsAction");
  const nonsense: [BuiltAction, readonly unknown[]][] = [
    [rows, [LINE, "properties", 0, null]],
    [rows, [LINE, "no such list", 0, []]],
    [rows, [LINE, "runs", 1.5, "rows"]],
    [rows, [LINE, "runs", 0, [], { length: 2 }]],
    [rows, ["no such line", "runs", 0, []]],
    [actionNamed("savePeopleAction"), [LINE, 0, null]],
    [actionNamed("savePartAction"), ["authority-quillhaven", "id", "x", null]],
    [
      actionNamed("link:answerAction"),
      [{ token: 7, language: "zz" }, IDLE, aForm({ kind: "asks" })],
    ],
    [actionNamed("link:signAction"), [null, IDLE, aForm({})]],
    [actionNamed("link:paperAction"), [{ token: "x", language: "zz" }, IDLE, aForm({})]],
    [actionNamed("link:withdrawAction"), [{ token: "x", language: "zz" }, IDLE, aForm({})]],
  ];
  for (const [action, args] of nonsense) {
    const answer = await callAction(office, { action, path: pathOf(action), args, cookie });
    expect(answer.status, action.name).toBeLessThan(500);
    expect(answer.text, action.name).toMatch(
      /Not saved|Nothing was saved|Ask the office for a new one|reload|Sign out of the office first/i,
    );
  }
});

test("what a page packs into a field is refused in words where something else was sent", async () => {
  const cookie = cookies.get("office") ?? "";
  const letters = actionNamed("draftLettersAction");
  const day = actionNamed("planDayAction");
  const before = contentsOf(office);
  const packs = ["", "{", "null", "7", "[1, 2, 3]", '{"partyId": 7}', '["x"]', '"__proto__"'];
  for (const pack of packs) {
    const forms: [BuiltAction, ReturnType<typeof aForm>][] = [
      [letters, aForm({ kind: "finding", replyBy: "", recipient: pack })],
      [letters, aForm({ kind: "finding", replyBy: "", recipient: [pack, pack] })],
      [day, aForm({ on: "2026-12-01", count: "1", "stops.0.place": pack === "" ? "x" : pack })],
    ];
    for (const [action, form] of forms) {
      const args = [LINE, IDLE, form];
      const answer = await callAction(office, { action, path: pathOf(action), args, cookie });
      expect(answer.status, `${action.name} ${pack}`).toBeLessThan(400);
      expect(answer.text, `${action.name} ${pack}`).toMatch(
        /This page is out of date|is not found/,
      );
    }
  }
  expect(changedTables(before, contentsOf(office))).toEqual([]);
});

test("a change that names another page's origin, or none, is refused", async () => {
  const action = actionNamed("proposeChangeOrderAction");
  const args = argsOf(action);
  const asked = { action, path: pathOf(action), args, cookie: cookies.get("office") ?? "" };
  const before = contentsOf(office);
  for (const origin of [null, "https://evil.example", "null"]) {
    const answer = await callAction(office, { ...asked, origin });
    expect(answer.status, String(origin)).toBeGreaterThanOrEqual(400);
    const forged = { "X-Forwarded-Host": "evil.example" };
    const again = await callAction(office, { ...asked, origin, headers: forged });
    expect(again.status, String(origin)).toBeGreaterThanOrEqual(400);
  }
  expect(changedTables(before, contentsOf(office))).toEqual([]);
});

test("what a request calls its host never decides where a private link leads", async () => {
  const action = actionNamed("makeLinkAction");
  const answer = await callAction(office, {
    ...{ action, path: pathOf(action), args: argsOf(action), cookie: cookies.get("office") ?? "" },
    ...{ origin: "http://evil.example", headers: { Host: "evil.example" } },
  });
  expect(answer.text).toContain(`"url":"http://localhost:${office.port}/n/`);
  expect(answer.text).not.toContain("evil.example/n/");
});

test("wrong passwords are counted by the address that they come from, whatever a header says", async () => {
  const wrong = (at: number, from: string) =>
    signInTo(office, PEOPLE.admin, {
      ...{ from, password: "not the password" },
      headers: { "X-Forwarded-For": `198.51.100.${at}` },
    });
  const answers: string[] = [];
  for (let at = 0; at < 8; at += 1) answers.push((await wrong(at, "127.0.0.2")).answer.text);
  expect(answers.filter((text) => text.includes("too many attempts"))).toHaveLength(3);
  const log = office.db
    .prepare("select distinct address from sign_ins where what <> 'signed-in'")
    .pluck()
    .all();
  expect(log).toEqual(["127.0.0.2"]);
  // The right person comes in from elsewhere, as often as they like.
  for (let at = 0; at < 6; at += 1) {
    const { cookie } = await signInTo(office, PEOPLE.admin, { from: "127.0.0.3" });
    expect(cookie).toMatch(/^wyebook=.+/);
  }
});

test("signing out ends the session at once", async () => {
  const { cookie } = await signInTo(office, PEOPLE.office);
  const page = { method: "GET", path: `/lines/${LINE}/who`, headers: { Cookie: cookie } };
  expect((await ask(office.port, page)).status).toBe(200);
  const action = actionNamed("signOutAction");
  await callAction(office, { action, path: "/", args: [], cookie });
  expect((await ask(office.port, page)).status).toBe(307);
});

test("behind a proxy with https: its word on the address is taken, its own host does no harm", async () => {
  const folder = fs.mkdtempSync(path.join(os.tmpdir(), "wyebook-proxied-"));
  fs.rmSync(folder, { recursive: true });
  const env = { WYEBOOK_ADDRESS: "https://office.example.com", WYEBOOK_PROXY: "127.0.0.1" };
  const proxied = await startOwnOffice({ folder, env });
  try {
    const through = {
      Origin: "https://office.example.com",
      Host: "inside:3200",
      "X-Forwarded-For": "198.51.100.77, 203.0.113.7",
    };
    const { cookie, answer } = await signInTo(proxied, PEOPLE.office, { headers: through });
    expect(cookie).toMatch(/^__Host-wyebook=.+/);
    expect(answer.headers["set-cookie"]?.[0]).toMatch(/Secure/);
    expect(answer.headers["strict-transport-security"]).toBe("max-age=31536000");
    const seen = () => proxied.db.prepare("select address from sign_ins").pluck().all();
    expect(seen()).toEqual(["203.0.113.7"]);
    // Somebody who gets past the proxy is who they are, whatever they say.
    await signInTo(proxied, PEOPLE.office, { headers: through, from: "127.0.0.9" });
    expect(seen()).toEqual(["203.0.113.7", "127.0.0.9"]);
    const stranger = { ...through, Origin: "https://evil.example" };
    const forged = await signInTo(proxied, PEOPLE.office, { headers: stranger });
    expect(forged.answer.status).toBeGreaterThanOrEqual(400);
    const link = actionNamed("makeLinkAction");
    const made = await callAction(proxied, {
      ...{ action: link, path: pathOf(link), cookie, headers: through, origin: through.Origin },
      args: ACTION_CALLS["makeLinkAction"]?.args(proxied.db) ?? [],
    });
    expect(made.text).toContain('"url":"https://office.example.com/n/');
  } finally {
    await proxied.stop();
  }
});

test("a stored file is asked for again each time, and not shown after signing out", async () => {
  const { cookie } = await signInTo(office, PEOPLE.office);
  const place = `/lines/${LINE}/uploads/note.png`;
  const put = await ask(office.port, {
    ...{ method: "PUT", path: `/lines/${LINE}/uploads?name=note.png`, body: PICTURE },
    headers: { Cookie: cookie, Origin: office.origin, Host: `localhost:${office.port}` },
  });
  expect(put.status, put.text).toBe(201);
  const { id } = JSON.parse(put.text) as { id: string };
  const at = { method: "GET", path: place.replace("note.png", id) };
  const first = await ask(office.port, { ...at, headers: { Cookie: cookie } });
  expect(first.status).toBe(200);
  expect(first.headers["cache-control"]).toBe("private, no-cache");
  const etag = first.headers.etag ?? "";
  const again = { Cookie: cookie, "If-None-Match": etag };
  expect((await ask(office.port, { ...at, headers: again })).status).toBe(304);
  const action = actionNamed("signOutAction");
  await callAction(office, { action, path: "/", args: [], cookie });
  expect((await ask(office.port, { ...at, headers: again })).status).toBe(401);
});

/** One transparent pixel. */
const PICTURE = Buffer.from(
  "iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNkYPhfDwAChwGA60e6kgAAAABJRU5ErkJggg==",
  "base64",
);
