import { execFileSync } from "node:child_process";
import fs from "node:fs";
import path from "node:path";
import Database from "better-sqlite3";
import { expect, test } from "vitest";
import { isGuard } from "#db/guards.ts";
import { insertRow } from "#db/queries/row.ts";
import { checkOffice } from "#lib/operations/check-office.ts";
import { enterMoney } from "#lib/operations/enter-money.ts";
import { recordInvoiceReply } from "#lib/operations/record-invoice-reply.ts";
import { recordReply } from "#lib/operations/record-reply.ts";
import { signByLink } from "#lib/operations/sign-by-link.ts";
import { storedPath } from "#lib/storage/store.ts";
import { aLedgerEntry } from "../../support/ledger.ts";
import { aDoor, anOpenedLink, aSentLetter, aSplit } from "../../support/link.ts";
import { aDesk, aFolder, fileOf, must } from "../../support/office.ts";

/** An office's data on disk, with letters, a signature and money, as nobody touched it. */
async function anOfficeOnDisk() {
  const desk = aDesk();
  const { act, lineId } = desk;
  const splitId = aSplit(desk);
  const noticeId = aSentLetter(desk, "proposed-split", { splitId });
  const secret = await anOpenedLink(desk, noticeId);
  const signing = { secret, splitId, signedNames: ["Ottilie Brandvold"], capacity: "" };
  const ticked = { kinds: ["pay"] as const, drawing: null, records: true, language: "en" as const };
  must(await signByLink(aDoor(desk), { ...signing, ...ticked }));
  const payer = { partyId: "owner-12", propertyId: "12", on: act.today, uploadId: null } as const;
  const paid = { kind: "payment", amount: 5_000, method: "check", reference: "1" } as const;
  must(enterMoney(act, { lineId, ...payer, ...paid, note: "", beyond: false }));
  const reply = { kind: "asks", receivedOn: act.today, words: "When?", uploadId: null } as const;
  must(recordReply(act, { lineId, noticeId, ...reply, suitsOn: null }));
  insertRow(act.db, "ledger", { lineId, row: aLedgerEntry(2) });
  must(recordInvoiceReply(act, { lineId, entryId: "entry-2", ...reply, words: "Paid" }));
  const file = path.join(act.dataFolder, "wyebook.db");
  await act.db.$client.backup(file);
  return { dataFolder: act.dataFolder, file, documentHash: fileOf(act, lineId).uploads[0]?.sha256 };
}

/** What another program does that takes the guards away first, and puts them back or does not. */
function meddle(file: string, sql: string, { andHide = true } = {}): void {
  const client = new Database(file);
  const triggers = client.prepare("select name, sql from sqlite_master where type = 'trigger'");
  const away = (triggers.all() as { name: string; sql: string }[]).filter(
    ({ name }) => isGuard(name) || name.includes("_no_"),
  );
  for (const { name } of away) client.exec(`drop trigger "${name}"`);
  client.exec(sql);
  if (andHide) for (const { sql: trigger } of away) client.exec(trigger);
  client.close();
}

const wordsIn = (dataFolder: string) =>
  must(checkOffice({ dataFolder }))
    .faults.map(({ words }) => words)
    .join("\n");

test("checkOffice() finds nothing in data that nobody touched", async () => {
  const { dataFolder } = await anOfficeOnDisk();
  expect(must(checkOffice({ dataFolder }))).toMatchObject({
    ...{ lines: 1, signatures: 1, letters: 1, faults: [] },
  });
});

const MEDDLING: readonly (readonly [string, string])[] = [
  ["update ledger_entries set amount_cents = 1", "is not as it was recorded: amount"],
  [
    "delete from ledger_entries where kind = 'payment'",
    "A row of ledger that was recorded is gone",
  ],
  ["update consents set amount_cents = 1", "not what was signed"],
  ["update signatures set signed_name = 'Eve'", "not what was signed"],
  ["delete from signatures", "A row of signatures that was recorded is gone"],
  [
    "update replies set words = 'I agree', kind = 'agrees'",
    "is not as it was recorded: kind, words",
  ],
  [
    "update replies set entry_id = null, notice_id = (select id from notices) where notice_id is null",
    "is not as it was recorded: noticeId, entryId",
  ],
  ["update splits set total_cents = 1", "is not as it was recorded: total"],
  ["update deliveries set outcome = 'delivered'", "is not as it was recorded: outcome"],
  [
    "update notices set frozen_json = replace(frozen_json, '100.00', '400.00')",
    "not those that were sent",
  ],
  ["delete from history where position = 3", "1 entry was removed from the history"],
  ["delete from link_visits where position = 1", "1 entry was removed from the visits of links"],
];

test("checkOffice() finds what was done behind the guards, one thing at a time", async () => {
  const { dataFolder: untouched } = await anOfficeOnDisk();
  const beside = aFolder();
  for (const [at, [sql, words]] of MEDDLING.entries()) {
    const dataFolder = path.join(beside, String(at));
    fs.cpSync(untouched, dataFolder, { recursive: true });
    meddle(path.join(dataFolder, "wyebook.db"), sql);
    expect(wordsIn(dataFolder), sql).toContain(words);
  }
});

test("checkOffice() says that guards were taken away, and they are there again", async () => {
  const { dataFolder, file } = await anOfficeOnDisk();
  meddle(file, "select 1", { andHide: false });
  expect(wordsIn(dataFolder)).toContain("of the database's guards were missing");
  expect(wordsIn(dataFolder)).toBe("");
});

test("checkOffice() finds a stored file whose bytes are others, and one that is gone", async () => {
  const { dataFolder, documentHash = "" } = await anOfficeOnDisk();
  const place = storedPath(dataFolder, documentHash);
  fs.chmodSync(place, 0o600);
  fs.writeFileSync(place, "%PDF-1.7 another");
  expect(wordsIn(dataFolder)).toContain("are not those that came in");
  fs.rmSync(place);
  expect(wordsIn(dataFolder)).toContain("its bytes are missing");
});

test("the command says what is wrong and ends with 1, or that nothing is and ends with 0", async () => {
  const { dataFolder, file } = await anOfficeOnDisk();
  const run = () => {
    try {
      const env = { ...process.env, WYEBOOK_DATA: dataFolder };
      const args = ["--import", "tsx", "lib/commands/check-data.ts"];
      const words = execFileSync(process.execPath, args, { env, encoding: "utf8", stdio: "pipe" });
      return { code: 0, words };
    } catch (error) {
      const { status, stderr } = error as { status: number; stderr: string };
      return { code: status, words: stderr };
    }
  };
  expect(run()).toMatchObject({ code: 0, words: expect.stringContaining("No problems found.") });
  meddle(file, "update ledger_entries set amount_cents = 1");
  expect(run()).toMatchObject({ code: 1, words: expect.stringContaining("amount") });
});
