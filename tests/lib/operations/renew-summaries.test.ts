import { getTableName, sql } from "drizzle-orm";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { currentTriggers } from "#db/kept-current.ts";
import { type Db, openDb } from "#db/open.ts";
import { getAuthority, putAuthority } from "#db/queries/authority.ts";
import { getLineFile } from "#db/queries/line-file.ts";
import { getOffice, putOffice } from "#db/queries/office.ts";
import { search } from "#db/queries/search.ts";
import {
  countOldSummaries,
  dueOf,
  getTallies,
  rebuildSearch,
  summedLines,
} from "#db/queries/summary.ts";
import * as schema from "#db/schema.ts";
import { DUE_KINDS } from "#lib/domain/desk/answer.ts";
import { summaryOf } from "#lib/domain/desk/summary.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import { reportOn } from "#lib/domain/report/report-on.ts";
import { changeLine } from "#lib/operations/change.ts";
import { lineReport } from "#lib/operations/line-report.ts";
import { renewIfFree, renewSummaries } from "#lib/operations/renew-summaries.ts";
import { anAuthority, aParty, aProperty } from "../../support/file.ts";
import {
  aDesk,
  addRows,
  aFolder,
  anOpenLine,
  closeAnyhow,
  fileOf,
  must,
} from "../../support/office.ts";

type Desk = ReturnType<typeof aDesk>;

const DAYS = ["2026-11-25", "2026-12-03", "2027-03-01"];
const ALL = { from: 0, most: 1_000 };

/** The tables of a line's file, by what a file is read from. */
function tablesOfFiles(): string[] {
  const { act, lineId } = aDesk();
  const file = getLineFile(act.db, lineId);
  const byList: Readonly<Record<string, unknown>> = schema;
  return Object.keys(file ?? {})
    .filter((list) => list !== "line" && list !== "authority")
    .map((list) => getTableName(byList[list] as typeof schema.runs));
}

/** What is stored of every line, beside what its file comes to when it is read and worked out now. */
function compared({ act }: Pick<Desk, "act">, day: string) {
  const stored = [
    ...summedLines(act.db, "open", { day, ...ALL }),
    ...summedLines(act.db, "closed", { day, ...ALL }),
  ];
  const due = DUE_KINDS.flatMap((kind) => dueOf(act.db, kind, ALL));
  return stored.map(({ lineId, name, town, closedOn, old, ...line }) => {
    const file = fileOf(act, lineId);
    const fresh = summaryOf(file, reportOn(file, day), getOffice(act.db));
    const things = due
      .filter((thing) => thing.lineId === lineId)
      .map(({ lineName: _lineName, ...thing }) => thing);
    return {
      old,
      stored: { ...line, lineId, things: things.map(key).sort() },
      fresh: {
        lineId,
        sentence: fresh.sentence,
        question: fresh.question,
        pressing: fresh.pressing,
        open: fresh.open,
        openCount: fresh.openCount,
        things: fresh.things.map(key).sort(),
      },
      facts: [name, town, closedOn],
      now: [file.line.name, file.line.town, file.line.closedOn],
    };
  });
}

function key(thing: object): string {
  return JSON.stringify(Object.entries(thing).sort());
}

/** Ways in which a line, or what it rests on, changes. */
const CHANGES: readonly ((desk: Desk, number: number) => void)[] = [
  ({ act, lineId }, n) => addRows(act, { lineId, table: "properties" }, [aProperty(`more-${n}`)]),
  ({ act, lineId }, n) =>
    addRows(act, { lineId, table: "parties" }, [aParty(`p-${n}`, { name: `Somebody ${n}` })]),
  ({ act }, n) => {
    act.db.$client.exec(`UPDATE lines SET name = 'Alley ${n}'`);
  },
  ({ act }) => {
    anOpenLine(act);
  },
  ({ act }) => {
    act.db.$client.exec("DELETE FROM observations WHERE id = 'o-14'");
  },
  ({ act }, n) => {
    const office = getOffice(act.db);
    if (office !== null)
      putOffice(act.db, { ...office, bondExpiresOn: n % 2 ? "2026-12-01" : null });
  },
];

test("every change of what a line’s file is read from marks its summary, whoever makes it", () => {
  const names = new Set(currentTriggers().map(({ name }) => name));
  for (const table of tablesOfFiles())
    for (const event of ["insert", "update", "delete"])
      expect(names, `${event} on ${table}`).toContain(`${table}_${event}_of_line_kept_current`);
});

test("what is stored is what a fresh report says, or is marked as old; renewed, it never is", () => {
  fc.assert(
    fc.property(
      fc.array(
        fc.record({
          change: fc.constantFrom(...CHANGES),
          day: fc.constantFrom(...DAYS),
          renew: fc.boolean(),
        }),
        { minLength: 1, maxLength: 8 },
      ),
      (steps) => {
        const desk = aDesk({ undocumented: true });
        for (const [at, step] of steps.entries()) check(desk, { ...step, at });
      },
    ),
    { numRuns: 15, seed: 20_261_127 },
  );
});

function check(
  desk: Desk,
  {
    change,
    day,
    renew,
    at,
  }: { change: (typeof CHANGES)[number]; day: string; renew: boolean; at: number },
): void {
  change(desk, at);
  if (renew) renewSummaries(desk.act.db, day, 100);
  const lines = compared(desk, day);
  const current = lines.filter(({ old }) => !old);
  expect(current.map(({ stored }) => stored)).toEqual(current.map(({ fresh }) => fresh));
  if (renew) expect(current.length).toBe(lines.length);
  expect(lines.map(({ facts }) => facts)).toEqual(lines.map(({ now }) => now));
  const tallies = getTallies(desk.act.db);
  const counted = DUE_KINDS.map((kind) => dueOf(desk.act.db, kind, ALL).length);
  expect(DUE_KINDS.map((kind) => tallies[kind])).toEqual(counted);
  const onDesk = summedLines(desk.act.db, "on-the-desk", { day, ...ALL });
  expect(tallies["on-the-desk"]).toBe(onDesk.length);
}

test("a closed line leaves the desk, and its counts", () => {
  const desk = aDesk();
  renewSummaries(desk.act.db, desk.act.today, 10);
  expect(getTallies(desk.act.db)).toMatchObject({ open: 1, closed: 0 });
  must(closeAnyhow(desk.act, desk.lineId));
  expect(compared(desk, desk.act.today)).toMatchObject([{ old: true }]);
  renewSummaries(desk.act.db, desk.act.today, 10);
  expect(getTallies(desk.act.db)).toEqual({
    open: 0,
    closed: 1,
    "on-the-desk": 0,
    late: 0,
    due: 0,
    blocked: 0,
    waiting: 0,
  });
  expect(summedLines(desk.act.db, "on-the-desk", { day: desk.act.today, ...ALL })).toEqual([]);
  // Nothing presses on it any more, whatever the day.
  expect(countOldSummaries(desk.act.db, "2027-03-01")).toBe(0);
});

test("an authority that is changed marks the lines that lie with it, and no others", () => {
  const { act, lineId } = aDesk();
  putAuthority(act.db, anAuthority({ id: "city" }));
  const other = anOpenLine(act);
  act.db.$client.exec(`UPDATE lines SET authority_id = 'city' WHERE id = '${lineId}'`);
  renewSummaries(act.db, act.today, 10);
  expect(countOldSummaries(act.db, act.today)).toBe(0);
  const city = getAuthority(act.db, "city");
  if (city === null) throw new Error("no authority");
  putAuthority(act.db, { ...city, name: "City of Quillhaven, sewers" });
  const old = summedLines(act.db, "open", { day: act.today, ...ALL }).filter((line) => line.old);
  expect(old.map((line) => line.lineId)).toEqual([lineId]);
  expect(other).not.toBe(lineId);
});

describe("lineReport()", () => {
  test("gives the same report again until something changes, also from another program", () => {
    const folder = aFolder();
    const file = `${folder}/wyebook.db`;
    const { act, lineId } = aDesk();
    act.db.$client.exec(`VACUUM INTO '${file}'`);
    const [one, other] = [openDb(file), openDb(file)];
    const first = lineReport(one, lineId, act.today);
    expect(lineReport(one, lineId, act.today)?.report).toBe(first?.report);
    expect(lineReport(one, lineId, "2026-12-01")?.report).not.toBe(first?.report);
    other.$client.exec("UPDATE tie_ins SET label = 'Changed elsewhere'");
    const then = lineReport(one, lineId, act.today);
    expect(then?.file.tieIns.map(({ label }) => label)).toContain("Changed elsewhere");
    one.$client.close();
    other.$client.close();
  });

  test("knows no line that is not there", () => {
    const { act } = aDesk();
    expect(lineReport(act.db, "no such line", act.today)).toBeNull();
  });
});

test("an operation decides on the file as it stands, whatever was kept of it", () => {
  const folder = aFolder();
  const file = `${folder}/wyebook.db`;
  const { act, lineId } = aDesk();
  act.db.$client.exec(`VACUUM INTO '${file}'`);
  const [one, other] = [openDb(file), openDb(file)];
  const first = lineReport(one, lineId, act.today);
  const deal = { lineId, deed: "work-the-file", action: "look" } as const;
  const decide = (into: LineFile[]) =>
    changeLine({ ...act, db: one }, deal, (found) => {
      into.push(found);
      return { ok: false, error: { reason: "not-found", path: "", detail: "" } };
    });
  const seen: LineFile[] = [];
  decide(seen);
  expect(seen[0]).toBe(first?.file);
  other.$client.exec("UPDATE tie_ins SET label = 'Changed elsewhere'");
  decide(seen);
  expect(seen[1]?.tieIns.map(({ label }) => label)).toContain("Changed elsewhere");
  // What was written and not kept, since the transaction failed, is not seen afterward.
  expect(() =>
    one.transaction((tx) => {
      tx.run(sql`UPDATE tie_ins SET label = 'Taken back'`);
      changeLine({ ...act, db: tx as unknown as Db }, deal, (found) => {
        seen.push(found);
        throw new Error("taken back");
      });
    }),
  ).toThrow("taken back");
  expect(seen[2]?.tieIns.map(({ label }) => label)).toContain("Taken back");
  decide(seen);
  expect(seen[3]?.tieIns.map(({ label }) => label)).toContain("Changed elsewhere");
  one.$client.close();
  other.$client.close();
});

test("a reader goes on while another program holds the database, with what is old marked", () => {
  const folder = aFolder();
  const file = `${folder}/wyebook.db`;
  const { act, lineId } = aDesk();
  act.db.$client.exec(`VACUUM INTO '${file}'`);
  const [reader, writer] = [openDb(file, { patience: 20 }), openDb(file)];
  writer.$client.exec("BEGIN IMMEDIATE");
  expect(() => renewIfFree(reader, act.today, 4)).not.toThrow();
  expect(summedLines(reader, "open", { day: act.today, ...ALL })).toMatchObject([
    { lineId, old: true },
  ]);
  writer.$client.exec("ROLLBACK");
  renewIfFree(reader, act.today, 4);
  expect(summedLines(reader, "open", { day: act.today, ...ALL })).toMatchObject([{ old: false }]);
  reader.$client.close();
  writer.$client.close();
});

test("the words of search follow every change, and are the same when gathered anew", () => {
  const { act } = aDesk();
  const titles = (words: string) => search(act.db, words).map(({ title }) => title);
  expect(titles("brandvold")).toEqual(["Ottilie Brandvold"]);
  act.db.$client.exec("UPDATE parties SET name = 'Ottilie Sorensen' WHERE id = 'owner-12'");
  expect(titles("brandvold")).toEqual([]);
  expect(titles("sorens")).toEqual(["Ottilie Sorensen"]);
  const before = titles("ott");
  rebuildSearch(act.db);
  expect(titles("ott")).toEqual(before);
});
