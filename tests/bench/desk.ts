import { performance } from "node:perf_hooks";
import { type OpenDb, openDb } from "#db/open.ts";
import { insertLine } from "#db/queries/line.ts";
import { search } from "#db/queries/search.ts";
import {
  countOldSummaries,
  dueOf,
  getTallies,
  putSummary,
  rebuildSearch,
  summedLines,
} from "#db/queries/summary.ts";
import { DUE_KINDS } from "#lib/domain/desk/answer.ts";
import { summaryOf } from "#lib/domain/desk/summary.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import { reportOn } from "#lib/domain/report/report-on.ts";
import { sampleLine } from "#tests/support/sample-line.ts";
import { goal } from "./goals.ts";

// The desk, the lists and search over a growing office, each beside the bare SQL of the same rows.

const TODAY = "2026-11-25";
const SIZES = (process.env["BENCH_SIZES"] ?? "1000,10000,100000").split(",").map(Number);
const RUNS = 60;

const STREETS = [
  "Fennel",
  "Cinder",
  "Ropewalk",
  "Tollgate",
  "Larkspur",
  "Quarry",
  "Heron",
  "Alder",
];
const NAMES = [
  "Brandvold",
  "Peña",
  "Okafor",
  "Lindqvist",
  "Winfield",
  "Sorensen",
  "Łukasz",
  "Abara",
];

/** An office of so many lines: a few files worked out for real, and copies of what they come to. */
function officeOf(size: number): OpenDb {
  const db = openDb(":memory:");
  const { file } = sampleLine();
  const client = db.$client;
  client.exec("BEGIN");
  const property = client.prepare(
    "INSERT INTO properties (line_id, id, position, address_json, parcel, legal_description, stake, weight, note) VALUES (?, ?, ?, ?, ?, '', 'connected', NULL, '')",
  );
  const party = client.prepare(
    "INSERT INTO parties (line_id, id, position, kind, name, mailing_json, email, phone, language, needs, note) VALUES (?, ?, ?, 'person', ?, NULL, ?, '', 'en', '', '')",
  );
  for (let at = 0; at < size; at += 1) addLine(at);
  client.exec("COMMIT");
  client.exec("ANALYZE");
  return db;

  function addLine(at: number): void {
    const id = `line-${at}`;
    const street = STREETS[at % STREETS.length] ?? "";
    insertLine(db, {
      ...file.line,
      id,
      name: `${street} alley ${at}`,
      authorityId: null,
      ruleId: null,
      optionId: null,
      closedOn: at % 4 === 0 ? "2026-01-05" : null,
    });
    for (let house = 0; house < 4; house += 1) {
      const address = {
        street: `${at % 900} ${street} Row`,
        unit: house === 0 ? "" : `${house}`,
        city: "Quillhaven",
        state: "WA",
        zip: "98000",
      };
      property.run(id, `h${house}`, house, JSON.stringify(address), `QH-${at}-${house}`);
      const name = `${NAMES[(at + house) % NAMES.length]} ${at}`;
      party.run(id, `p${house}`, house, name, `p${at}.${house}@example.com`);
    }
    putSummary(db, summaryFor(file, at), { version: 0, day: TODAY, name: `${street} alley ${at}` });
    client.prepare("UPDATE line_summaries SET stale = 0 WHERE line_id = ?").run(id);
  }
}

let known: ReturnType<typeof summaryOf> | undefined;

function summaryFor(file: LineFile, at: number): ReturnType<typeof summaryOf> {
  known ??= summaryOf(file, reportOn(file, TODAY));
  const lineId = `line-${at}`;
  const closed = at % 4 === 0;
  return {
    ...known,
    lineId,
    closed,
    waiting: !closed,
    pressing: closed ? 0 : (at * 7) % 100,
    things: closed ? [] : known.things.slice(0, 5).map((thing) => ({ ...thing, lineId })),
  };
}

interface Measured {
  readonly name: string;
  readonly ours: (db: OpenDb) => unknown;
  /** The same rows by SQL written by hand, each statement with its values. */
  readonly bare: readonly (readonly [sql: string, ...values: unknown[]])[];
}

const PAGE = { from: 0, most: 20 };

const LINES_OF = (where: string, most: number) =>
  [
    `SELECT s.*, l.name, l.town, l.closed_on FROM line_summaries s JOIN lines l ON l.id = s.line_id WHERE ${where} ORDER BY s.pressing DESC, s.sort_name LIMIT ${most}`,
  ] as const;

const FOUND =
  "SELECT t.*, l.name FROM search_index JOIN search_texts t ON t.id = search_index.rowid JOIN lines l ON l.id = t.line_id WHERE search_index MATCH ? ORDER BY bm25(search_index, 5.0, 1.0) LIMIT 200";

const WORK: readonly Measured[] = [
  {
    name: "desk",
    ours: (db) => [
      getTallies(db),
      ...DUE_KINDS.map((kind) => dueOf(db, kind, { from: 0, most: 8 })),
      summedLines(db, "on-the-desk", { day: TODAY, ...PAGE }),
      countOldSummaries(db, TODAY),
    ],
    bare: [
      ["SELECT * FROM tallies"],
      ...DUE_KINDS.map(
        (kind) =>
          [
            "SELECT d.*, l.name FROM due_things d JOIN lines l ON l.id = d.line_id WHERE d.kind = ? ORDER BY d.sort_day, d.sentence LIMIT 8",
            kind,
          ] as const,
      ),
      LINES_OF("s.waiting = 1", PAGE.most),
    ],
  },
  {
    name: "list of lines",
    ours: (db) => summedLines(db, "open", { day: TODAY, from: 0, most: 50 }),
    bare: [LINES_OF("s.closed = 0", 50)],
  },
  {
    name: "search, one hit",
    ours: (db) => search(db, "QH-777-2"),
    bare: [[FOUND, '"qh-777-2" *']],
  },
  {
    name: "search, many hits",
    ours: (db) => search(db, "fennel row"),
    bare: [[FOUND, '"fennel" * "row" *']],
  },
];

function p95(run: () => unknown): number {
  run();
  const times = Array.from({ length: RUNS }, () => {
    const start = performance.now();
    run();
    return performance.now() - start;
  });
  times.sort((one, other) => one - other);
  return times[Math.floor(RUNS * 0.95)] ?? 0;
}

console.log("");
console.log("The desk over a growing office (p95 in ms; ratio to the bare SQL of as many rows)");
for (const size of SIZES) {
  const db = officeOf(size);
  for (const { name, ours, bare } of WORK) {
    const statements = bare.map(([text, ...values]) => {
      const prepared = db.$client.prepare(text);
      return () => prepared.all(...values);
    });
    const [mine, sql] = [p95(() => ours(db)), p95(() => statements.map((run) => run()))];
    if (size > 1_000)
      goal(`${name}, ${size.toLocaleString("en-US")} lines, p95`, mine / sql, {
        ...{ most: 2, unit: "times" },
        yardstick: "the bare SQL of as many rows",
      });
    const label = `${name}, ${size.toLocaleString("en-US")} lines`;
    console.log(
      `  ${label.padEnd(44)} ${mine.toFixed(2).padStart(8)}  ×${(mine / sql).toFixed(1)}`,
    );
  }
  const start = performance.now();
  rebuildSearch(db);
  const seconds = ((performance.now() - start) / 1000).toFixed(1);
  console.log(
    `  words of search gathered anew, ${size.toLocaleString("en-US")} lines: ${seconds} s`,
  );
  db.$client.close();
}
