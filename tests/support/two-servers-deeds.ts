import fs from "node:fs";
import path from "node:path";
import { appendRows } from "#app/lines/[lineId]/append-rows.ts";
import type { AuthorityPart } from "#lib/domain/facts/authority.ts";
import { acceptAlternative } from "#lib/operations/accept-alternative.ts";
import type { Act } from "#lib/operations/act.ts";
import { decidePairing } from "#lib/operations/decide-pairing.ts";
import { draftNotices } from "#lib/operations/draft-notices.ts";
import { enterMoney } from "#lib/operations/enter-money.ts";
import { lineReport } from "#lib/operations/line-report.ts";
import { findOpenLink, takeCodeTry } from "#lib/operations/link-door.ts";
import { openFeed } from "#lib/operations/open-feed.ts";
import { readAuthority, savePart } from "#lib/operations/save-part.ts";
import { saveRows } from "#lib/operations/save-rows.ts";
import { sendNotices } from "#lib/operations/send-notices.ts";
import { ok } from "#lib/result.ts";

/** On a line: how often it is done, one right after the other. */
interface OnLine {
  readonly lineId: string;
  readonly times: number;
}

function waitFor(milliseconds: number): void {
  Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, milliseconds);
}

/** Does it so often, and gathers the answers. */
function times<T>(many: number, deed: () => T): T[] {
  return Array.from({ length: many }, deed);
}

function readAsPage({ db, today }: Act, lineId: string) {
  const read = lineReport(db, lineId, today);
  if (read === null) throw new Error(`There is no line ${lineId}`);
  return read;
}

/** What two processes are told to do at the same moment, as pages and actions do it. */
export const DEEDS = {
  /** Adds a unit by the form that stands beside the table; the ids of those that were taken. */
  addUnits: (act: Act, { lineId, times: many }: OnLine) =>
    times(many, () => {
      const id = act.newId();
      const row = { id, propertyId: "12", name: id, use: "dwelling", note: "" };
      return appendRows(act, { lineId, table: "units" }, () => ok([row])).ok ? [id] : [];
    }).flat(),

  /** Reads the units as a page does, again and again until there are so many. */
  readUnits: (act: Act, { lineId, until }: { readonly lineId: string; readonly until: number }) => {
    const seen: { readonly rows: number; readonly revision: number }[] = [];
    do {
      const { file, revisions } = readAsPage(act, lineId);
      seen.push({ rows: file.units.length, revision: revisions.units });
    } while ((seen.at(-1)?.rows ?? 0) < until);
    return seen;
  },

  /**
   * Types a unit into the table and saves it as the table stood when it was read; where somebody else
   * saved meanwhile, takes theirs and saves again. How often that was.
   */
  typeUnits: (act: Act, { lineId, times: many }: OnLine) =>
    times(many, () => {
      const id = act.newId();
      const row = { id, propertyId: "12", name: id, use: "dwelling", note: "" };
      for (let again = 0; ; again += 1) {
        const { file, revisions } = readAsPage(act, lineId);
        const order = [...file.units.map((unit) => unit.id), id];
        const base = revisions.units;
        const saved = saveRows(act, { lineId, table: "units", base, rows: [row], order });
        if (saved.ok) return again;
        if (saved.error.reason !== "changed-meanwhile") throw new Error(saved.error.by);
      }
    }).reduce((sum, again) => sum + again, 0),

  /** Adds rows to a table of an authority, each as the table stood when it was read; how many again. */
  addToPart: (
    act: Act,
    { part, rows }: { readonly part: AuthorityPart; readonly rows: readonly object[] },
  ) => {
    let again = 0;
    for (const row of rows)
      for (;;) {
        const read = readAuthority(act.db, "authority-1");
        if (read === null) throw new Error("There is no such authority");
        const { authority, revision: base } = read;
        const changed = { authorityId: "authority-1", part, base, rows: [...authority[part], row] };
        const saved = savePart(act, changed);
        if (saved.ok) break;
        if (saved.error.reason !== "changed-meanwhile") throw new Error(saved.error.detail);
        again += 1;
      }
    return again;
  },

  /** Guesses addresses of private pages, codes for them and addresses of calendars; how many of each were looked at. */
  guess: (act: Act, { times: many }: { readonly times: number }) => {
    const door = { ...act, address: "203.0.113.9", agent: "", officeUser: "" };
    const secret = "A".repeat(43);
    const looked = (
      deed: () => { readonly ok: boolean; readonly error?: { readonly reason: string } },
    ) =>
      times(many, deed).filter(({ ok: went, error }) => went || error?.reason !== "too-many-tries")
        .length;
    return {
      codes: looked(() => takeCodeTry({ ...door, address: "203.0.113.8" })),
      links: looked(() => findOpenLink(door, secret, "opening")),
      feeds: looked(() => openFeed({ ...door, office: null }, secret)),
    };
  },

  /** Takes an entry off the card; between writing that and keeping it, the other one is let go on. */
  dropEntrySlowly: (act: Act, { lineId, entryId }: { lineId: string; entryId: string }) =>
    act.db.transaction(
      (db) => {
        const one = { ...act, db };
        const { file, revisions } = readAsPage(one, lineId);
        const rows = file.entries.filter(({ id }) => id !== entryId);
        const saved = saveRows(one, { lineId, table: "entries", base: revisions.entries, rows });
        fs.writeFileSync(path.join(act.dataFolder, "written"), "");
        waitFor(700);
        return saved.ok;
      },
      { behavior: "immediate" },
    ),

  /** Accepts another way to pair once the other one has written and not yet kept it. */
  acceptMeanwhile: (act: Act, asked: Parameters<typeof acceptAlternative>[1]) => {
    while (!fs.existsSync(path.join(act.dataFolder, "written"))) waitFor(2);
    return acceptAlternative(act, asked);
  },

  enterMoney,
  sendNotices,
  draftNotices,
  decidePairing,
};
export type DeedName = keyof typeof DEEDS;
