import Database from "better-sqlite3";
import { expect, test } from "vitest";
import { guards } from "#db/guards.ts";
import { openDb } from "#db/open.ts";
import { insertRow } from "#db/queries/row.ts";
import { logSignIn } from "#db/queries/session.ts";
import { changeDelivery } from "#lib/operations/change-delivery.ts";
import { enterMoney } from "#lib/operations/enter-money.ts";
import { recordConsent } from "#lib/operations/record-consent.ts";
import { recordReply } from "#lib/operations/record-reply.ts";
import { signByLink } from "#lib/operations/sign-by-link.ts";
import {
  aHouseholdCall,
  anUpload,
  aPermit,
  aPermitStep,
  aRollCallWord,
  aWaiver,
} from "../support/file.ts";
import { aDoor, anOpenedLink, aSentLetter, aSplit } from "../support/link.ts";
import { aDesk, addRows, aFolder, fileOf, must } from "../support/office.ts";

/** A line with everything on it that counts as proof: told, answered, signed, paid, permitted. */
async function aProvenLine() {
  const desk = aDesk({ undocumented: true });
  const { act, lineId } = desk;
  const splitId = aSplit(desk);
  const noticeId = aSentLetter(desk, "entry-consent");
  const secret = await anOpenedLink(desk, noticeId);
  const signing = {
    ...{ secret, splitId: null, signedNames: ["Ottilie Brandvold"], capacity: "", drawing: null },
    ...{ kinds: ["enter"] as const, records: true, language: "en" as const },
  };
  must(await signByLink(aDoor(desk), signing));
  aSentLetter(desk, "proposed-split", { splitId });
  const { deliveries, uploads } = fileOf(act, lineId);
  const [deliveryId = "", proofUploadId = ""] = [deliveries[0]?.id, uploads[0]?.id];
  const delivered = { outcome: "unclaimed", outcomeOn: act.today, tracking: "", note: "" } as const;
  must(changeDelivery(act, { lineId, deliveryId, ...delivered, proofUploadId }));
  const answer = { kind: "disagrees", receivedOn: act.today, uploadId: proofUploadId } as const;
  must(recordReply(act, { lineId, noticeId, words: "Not like this", ...answer }));
  const word = { kind: "pay", partyId: "owner-12", propertyId: "12", state: "given" } as const;
  const terms = { stateOn: act.today, splitId, amount: 10_000, recordingNumber: "", note: "" };
  must(recordConsent(act, { lineId, ...word, ...terms, uploadId: proofUploadId }));
  const payer = { partyId: "owner-12", propertyId: "12", on: act.today, uploadId: null } as const;
  const paid = { kind: "payment", amount: 5_000, method: "check", reference: "1" } as const;
  must(enterMoney(act, { lineId, ...payer, ...paid, note: "", beyond: false }));
  addRows(act, { lineId, table: "permits" }, [aPermit("permit")]);
  insertRow(act.db, "permitSteps", { lineId, row: aPermitStep("step", "permit") });
  const call = aHouseholdCall("call", { partyId: "owner-12", propertyId: "12" });
  insertRow(act.db, "householdCalls", { lineId, row: call });
  const told = aRollCallWord("told", { propertyId: "12" });
  insertRow(act.db, "rollCall", { lineId, row: told });
  const meeting = { id: "m", on: "2026-11-24", at: "", until: "", place: "", note: "" };
  insertRow(act.db, "meetings", { lineId, row: meeting });
  const came = {
    ...{ id: "came", meetingId: "m", partyId: "owner-12", propertyId: "12", came: true },
    ...{ wishes: [], words: "", by: "Dana Okafor", at: act.now },
  };
  insertRow(act.db, "meetingWords", { lineId, row: came });
  const tried = { at: act.now, what: "refused", account: "a@example.com", agent: "" } as const;
  logSignIn(act.db, { ...tried, address: "192.0.2.1" });
  insertRow(act.db, "waivers", { lineId, row: aWaiver("some-hold") });
  return desk;
}

/** What of a kept row may still change: filled in once, or no proof of anything. */
const FREE: Readonly<Record<string, readonly string[]>> = {
  history: [],
  ledger_entries: [],
  signatures: [],
  link_visits: [],
  sign_ins: [],
  permit_steps: [],
  consents: ["recording_number"],
  replies: ["dealt_by", "dealt_on", "dealt_words"],
  roll_call: [],
  meeting_words: [],
  household_calls: [],
  notices: ["position"],
  deliveries: ["position", "tracking", "note", "declared_upload_id"],
  splits: ["position"],
  waivers: ["position"],
  uploads: ["position", "note"],
  links: ["revoked_at", "revoked_by"],
};

test("of what counts as proof, the database changes nothing and removes nothing, whoever asks", async () => {
  const { act } = await aProvenLine();
  const { $client: client } = act.db;
  client.pragma("foreign_keys = OFF");
  for (const [table, free] of Object.entries(FREE)) {
    const columns = client.pragma(`table_info(${table})`) as { name: string; type: string }[];
    const rows = client.prepare(`select count(*) from "${table}"`).pluck().get();
    expect(rows, `rows in ${table}`).toBeGreaterThan(0);
    const changeable = columns.filter(({ name }) =>
      changes(client, `update "${table}" set "${name}" = ${otherThan(name)}`),
    );
    expect(changeable.map(({ name }) => name).sort(), table).toEqual([...free].sort());
    const emptied = columns.filter(({ name }) =>
      changes(client, `update "${table}" set "${name}" = null where "${name}" is not null`),
    );
    expect(
      emptied.map(({ name }) => name).filter((name) => !free.includes(name)),
      `${table}, emptied`,
    ).toEqual([]);
    expect(changes(client, `delete from "${table}"`), `remove from ${table}`).toBe(
      table === "waivers",
    );
  }
});

/** Another value of the same kind, so that a refusal is the guard's and no closed set's. */
function otherThan(column: string): string {
  if (column === "outcome") return "'returned'";
  if (column === "what") return "'signed-out'";
  if (column === "state") return `case state when 'given' then 'refused' else 'draft' end`;
  return /_(json)$/.test(column)
    ? `"${column}" || ' '`
    : `case typeof("${column}") when 'integer' then "${column}" + 1 else coalesce("${column}", '') || 'x' end`;
}

/** Whether a statement changes anything; nothing of it stays. */
function changes(client: Database.Database, sql: string): boolean {
  client.exec("begin");
  try {
    return client.prepare(sql).run().changes > 0;
  } catch {
    return false;
  } finally {
    client.exec("rollback");
  }
}

test("an insert that would replace a kept row is refused, also by a program without our settings", async () => {
  const { act } = await aProvenLine();
  const file = `${aFolder()}/wyebook.db`;
  await act.db.$client.backup(file);
  const client = new Database(file);
  expect(client.pragma("recursive_triggers", { simple: true })).toBe(0);
  for (const table of Object.keys(FREE)) {
    const before = client.prepare(`select * from "${table}"`).all();
    expect(
      () => client.prepare(`insert or replace into "${table}" select * from "${table}"`).run(),
      table,
    ).toThrow();
    expect(client.prepare(`select * from "${table}"`).all(), table).toEqual(before);
  }
  client.close();
});

test("a signature is only ever added at the end of its line's chain, once a consent", async () => {
  const { act } = await aProvenLine();
  const { $client: client } = act.db;
  client.pragma("foreign_keys = OFF");
  const one = client.prepare("select * from signatures").get() as Record<string, unknown>;
  const names = Object.keys(one);
  const insert = client.prepare(
    `insert into signatures (${names.join(", ")}) values (${names.map((name) => `@${name}`).join(", ")})`,
  );
  const forged = { ...one, id: "forged", consent_id: "another", position: 9 };
  expect(() => insert.run({ ...forged, previous_hash: "0".repeat(64) })).toThrow("follows");
  expect(() => insert.run({ ...forged, previous_hash: one["hash"], position: 0 })).toThrow(
    "follows",
  );
  expect(() =>
    insert.run({ ...forged, previous_hash: one["hash"], consent_id: one["consent_id"] }),
  ).toThrow("append-only");
  expect(insert.run({ ...forged, previous_hash: one["hash"] }).changes).toBe(1);
});

test("a recorded outcome or proof is corrected with a word more on the delivery, and not without", async () => {
  const { act, lineId } = await aProvenLine();
  const { deliveries, uploads } = fileOf(act, lineId);
  const [delivery] = deliveries;
  const deliveryId = delivery?.id ?? "";
  const correction = { outcome: "returned", outcomeOn: act.today, tracking: "" } as const;
  const proof = { proofUploadId: uploads[0]?.id ?? null };
  expect(
    changeDelivery(act, {
      lineId,
      deliveryId,
      ...correction,
      ...proof,
      note: delivery?.note ?? "",
    }),
  ).toMatchObject({ error: { reason: "missing-value", path: "note" } });
  must(
    changeDelivery(act, {
      ...{ lineId, deliveryId, ...correction, ...proof },
      note: "The receipt was another letter’s",
    }),
  );
  expect(fileOf(act, lineId).deliveries[0]).toMatchObject({
    outcome: "returned",
    note: "The receipt was another letter’s",
  });
  // The word that explained the correction stays, too.
  expect(
    changeDelivery(act, { lineId, deliveryId, ...correction, proofUploadId: null, note: "Sorry" }),
  ).toMatchObject({ error: { path: "note" } });
});

test("openDb() puts guards back that another program took away", async () => {
  const file = `${aFolder()}/wyebook.db`;
  openDb(file).$client.close();
  const other = new Database(file);
  for (const { name } of guards()) other.exec(`drop trigger "${name}"`);
  other.close();
  const again = openDb(file);
  const there = again.$client.prepare("select name from sqlite_master where type = 'trigger'");
  expect(there.pluck().all()).toEqual(expect.arrayContaining(guards().map(({ name }) => name)));
  again.$client.close();
});

test("what was consented to is corrected by its paper once, and a second paper is a word of its own", async () => {
  const { act, lineId } = await aProvenLine();
  const file = fileOf(act, lineId);
  const paper = file.consents.find(({ kind }) => kind === "pay");
  if (paper === undefined) throw new Error("There is no consent to pay");
  const { id: _id, restsOnId: _rest, enteredBy: _by, state: _state, ...said } = paper;
  const word = { ...said, state: "given" } as const;
  // Recorded again without its paper: the paper stays.
  must(recordConsent(act, { lineId, ...word, uploadId: null, note: "Signed at the meeting" }));
  expect(fileOf(act, lineId).consents.filter(({ kind }) => kind === "pay")).toEqual([
    { ...paper, note: "Signed at the meeting" },
  ]);
  const other = "another-scan";
  insertRow(act.db, "uploads", { lineId, row: anUpload(other) });
  must(recordConsent(act, { lineId, ...word, uploadId: other }));
  expect(fileOf(act, lineId).consents.filter(({ kind }) => kind === "pay")).toMatchObject([
    { uploadId: paper.uploadId },
    { uploadId: other },
  ]);
});
