import fs from "node:fs";
import os from "node:os";
import path from "node:path";
import { onTestFinished } from "vitest";
import { type OpenDb, openDb } from "#db/open.ts";
import { getLineFile } from "#db/queries/line-file.ts";
import { putOffice } from "#db/queries/office.ts";
import { getRevisions } from "#db/queries/revision.ts";
import { insertRow } from "#db/queries/row.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import type { RowTable } from "#lib/domain/facts/row-table.ts";
import type { UserRole } from "#lib/domain/facts/user.ts";
import { reportOn } from "#lib/domain/report/report-on.ts";
import type { Act } from "#lib/operations/act.ts";
import { closeLine } from "#lib/operations/close-line.ts";
import { decidePairing } from "#lib/operations/decide-pairing.ts";
import { openLine } from "#lib/operations/open-line.ts";
import { saveRows } from "#lib/operations/save-rows.ts";
import type { Result } from "#lib/result.ts";
import {
  aConsent,
  aLocateTicket,
  anAnchor,
  anEntry,
  anObservation,
  anOffice,
  aParty,
  aProperty,
  aRecord,
  aRole,
  aRun,
} from "./file.ts";
import { aReconnection } from "./plan.ts";

/** An empty database with all its tables: to copy it is quicker than to make them for each test. */
let made: Buffer | undefined;

function empty(): Buffer {
  const db = openDb(":memory:");
  const bytes = db.$client.serialize();
  db.$client.close();
  return bytes;
}

/** A fresh database in memory, closed when the test ends. */
export function aDb(): OpenDb {
  made ??= empty();
  const db = openDb(made);
  onTestFinished(() => void db.$client.close());
  return db;
}

/** A folder that is gone when the test ends. */
export function aFolder(): string {
  const folder = fs.mkdtempSync(path.join(os.tmpdir(), "wyebook-test-"));
  onTestFinished(() => fs.rmSync(folder, { recursive: true, force: true }));
  return folder;
}

/** Somebody who acts on a database: an office worker on 25 November 2026, unless said otherwise. */
export function anAct(db: Act["db"], overrides: Partial<Act> & { role?: UserRole } = {}): Act {
  const { role = "office", ...rest } = overrides;
  let made = 0;
  return {
    db,
    actor: { id: "user-1", name: "Dana Okafor", role },
    now: "2026-11-25T18:00:00.000Z",
    today: "2026-11-25",
    dataFolder: "not-used",
    newId: () => {
      made += 1;
      return `${role}-new-${made}`;
    },
    ...rest,
  };
}

/** The value, or a failed test that shows the refusal. */
export function must<T>(result: Result<T, unknown>): T {
  if (result.ok) return result.value;
  throw new Error(`Refused: ${JSON.stringify(result.error)}`);
}

/** An open line with nothing on it. */
export function anOpenLine(act: Act): string {
  const line = { name: "Alley behind Fennel Row", town: "Quillhaven, WA", authorityId: null };
  return must(openLine(act, line)).lineId;
}

/** Adds rows at the end of a table. */
export function addRows(
  act: Act,
  { lineId, table }: { lineId: string; table: RowTable },
  rows: readonly object[],
): void {
  const there: readonly object[] = fileOf(act, lineId)[table];
  const base = getRevisions(act.db, lineId)[table];
  must(saveRows(act, { lineId, table, base, rows: [...there, ...rows] }));
}

export function fileOf(act: Act, lineId: string): LineFile {
  const file = getLineFile(act.db, lineId);
  if (file === null) throw new Error(`There is no line ${lineId}`);
  return file;
}

/**
 * A desk with an office set up and a line of three houses, on a card and on camera alike, each
 * accepted, with an owner each; with `undocumented`, a fourth tie-in that is on no record.
 */
export function aDesk({ undocumented = false }: { undocumented?: boolean } = {}): {
  act: Act & { readonly db: OpenDb };
  lineId: string;
} {
  const db = aDb();
  const act = { ...anAct(db, { dataFolder: aFolder() }), db };
  putOffice(act.db, anOffice());
  const lineId = anOpenLine(act);
  const add = (table: RowTable, rows: readonly object[]) => addRows(act, { lineId, table }, rows);
  const houses = ["12", "14", "16"];
  add(
    "properties",
    houses.map((house) => aProperty(house)),
  );
  add("parties", [
    aParty("owner-12", { name: "Ottilie Brandvold", email: "ottilie@example.com" }),
    aParty("owner-14", { name: "Jesús Peña", email: "jesus@example.org", language: "es" }),
    aParty("owner-16", { name: "Larkspur Holdings LLC", kind: "firm" }),
  ]);
  add(
    "roles",
    houses.map((house) => aRole(`owner-${house}`, house)),
  );
  add("records", [aRecord("card")]);
  add(
    "entries",
    houses.map((house, at) =>
      anEntry(house, { distance: 2_000 * (at + 1), propertyId: house, label: `House ${house}` }),
    ),
  );
  add("runs", [aRun("run")]);
  add("anchors", [anAnchor("run")]);
  const extra = undocumented ? [anObservation("extra", { counter: 5_000, clock: 3 })] : [];
  add("observations", [
    ...houses.map((house, at) => anObservation(`o-${house}`, { counter: 2_000 * (at + 1) })),
    ...extra,
  ]);
  const tieInOf = (house: string) =>
    fileOf(act, lineId).observations.find(({ id }) => id === `o-${house}`)?.tieInId ?? "";
  for (const house of houses) {
    const pair = { lineId, entryId: house, tieInId: tieInOf(house) };
    must(decidePairing(act, { ...pair, state: "accepted", reason: "Same side and place" }));
  }
  return { act, lineId };
}

/** Measures every branch of the desk's line from both ends of access, as a crew does before a liner. */
export function measureBranches(act: Act, lineId: string): void {
  const file = fileOf(act, lineId);
  const rows = reportOn(file, act.today).tieIns.map(({ tieIn, station }) =>
    aReconnection(`r-${tieIn.id}`, {
      tieInId: tieIn.id,
      fromLower: station,
      upperAccess: 10_000,
      fromUpper: 10_000 - (station ?? 0),
    }),
  );
  addRows(act, { lineId, table: "reconnections" }, rows);
}

/** Every owner of the desk’s line lets the crew in and dig. */
export function agreeToWork(act: Act, lineId: string): void {
  for (const { partyId, propertyId } of fileOf(act, lineId).roles)
    for (const kind of ["enter", "dig"] as const)
      insertRow(act.db, "consents", {
        lineId,
        row: aConsent(`${kind}-${propertyId}-${partyId}`, { kind, partyId, propertyId }),
      });
}

/** Closes the file with a person's word for everything that the file itself does not show. */
export function closeAnyhow(act: Act, lineId: string): ReturnType<typeof closeLine> {
  const words = {
    ...{ permit: "Done by others", built: "Nothing by us" },
    ...{ branches: "Seen by the owners", money: "Let off" },
  };
  return closeLine(act, { lineId, reason: "Done", words });
}

/** 811 was called long enough ago: the work may dig. */
export function callLocate({ db }: Act, lineId: string): void {
  const row = aLocateTicket("called", { calledOn: "2026-11-02" });
  insertRow(db, "locateTickets", { lineId, row });
}
