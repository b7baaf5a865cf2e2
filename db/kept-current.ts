import { getTableName, is } from "drizzle-orm";
import { getTableConfig, SQLiteTable } from "drizzle-orm/sqlite-core";
import { PLAIN } from "./fold-text.ts";
import * as schema from "./schema.ts";

// What is kept beside the facts so that the desk, the lists and search need not read every file:
// which lines changed since they were summed up, how many of each kind there are, and the words that
// search goes through. The database keeps it current itself, whoever writes, so that nothing that is
// shown from it can be older than the facts without being marked as such.

/** A trigger as the database keeps it. */
export interface KeptTrigger {
  readonly name: string;
  readonly sql: string;
}

const ENDING = "_kept_current";

/** Every trigger that keeps summaries, counts and the words of search current. */
export function currentTriggers(): KeptTrigger[] {
  return [
    ...linesChanged(),
    ...restsOn(),
    ...counted(),
    ...kept(),
    ...wordsOfLines(),
    ...wordsOfRows(),
    ...indexed(),
  ];
}

/** Whether a trigger of this name is one of them, or was in an earlier version. */
export function keepsCurrent(name: string): boolean {
  return name.endsWith(ENDING);
}

const EVENTS = ["INSERT", "UPDATE", "DELETE"] as const;
type Event = (typeof EVENTS)[number];

function trigger(
  table: string,
  event: Event,
  about: string,
  body: readonly string[],
  when = "",
): KeptTrigger {
  const name = `${table}_${event.toLowerCase()}_${about}${ENDING}`;
  const lines = body.map((each) => `\t${each};`).join("\n");
  const only = when === "" ? "" : ` WHEN ${when}`;
  return {
    name,
    sql: `CREATE TRIGGER \`${name}\` AFTER ${event} ON \`${table}\`${only}\nBEGIN\n${lines}\nEND`,
  };
}

/** The side of a change that tells which line it is about. */
function side(event: Event): "OLD" | "NEW" {
  return event === "DELETE" ? "OLD" : "NEW";
}

/** One more version of a line's file, which its summary is not of yet. */
function changed(where: string): string {
  return `UPDATE line_summaries SET version = version + 1, stale = 1 WHERE ${where}`;
}

/** The tables whose rows are part of a line's file. */
function tablesOfLines(): string[] {
  const exported: unknown[] = Object.values(schema);
  return exported
    .flatMap((each) => (is(each, SQLiteTable) ? [each] : []))
    .filter((table) => getTableConfig(table).columns.some(({ name }) => name === "line_id"))
    .map((table) => getTableName(table))
    .filter((name) => !BESIDE.has(name));
}

/** Rows about a line that are no part of its file: nothing that is worked out of it hangs on them. */
const BESIDE: ReadonlySet<string> = new Set([
  "line_summaries",
  "due_things",
  "line_dates",
  "line_keepers",
  "search_texts",
  "revisions",
  "jobs",
  "links",
  "outbox",
]);

function linesChanged(): KeptTrigger[] {
  return tablesOfLines().flatMap((table) =>
    EVENTS.map((event) =>
      trigger(table, event, "of_line", [changed(`line_id = ${side(event)}.line_id`)]),
    ),
  );
}

/** The line's own facts, its authority (written whole, with its parts) and the office. */
function restsOn(): KeptTrigger[] {
  return [
    trigger("lines", "INSERT", "summary", [
      "INSERT INTO line_summaries (line_id, closed, sort_name) VALUES (NEW.id, NEW.closed_on IS NOT NULL, lower(NEW.name))",
      tally("NEW"),
    ]),
    trigger("lines", "UPDATE", "summary", [
      changed("line_id = NEW.id"),
      "UPDATE line_summaries SET closed = NEW.closed_on IS NOT NULL WHERE line_id = NEW.id",
      untally(),
      tally("NEW"),
    ]),
    trigger("lines", "DELETE", "summary", [untally()]),
    trigger("authorities", "UPDATE", "lines", [
      changed("line_id IN (SELECT id FROM lines WHERE authority_id = NEW.id)"),
    ]),
    trigger("office", "INSERT", "lines", [changed("1")]),
    trigger("office", "UPDATE", "lines", [changed("1")]),
  ];
}

function tally(row: "OLD" | "NEW", by = "+ 1"): string {
  const name = `iif(${row}.closed_on IS NULL, 'open', 'closed')`;
  return `UPDATE tallies SET count = count ${by} WHERE name = ${name}`;
}

function untally(): string {
  return tally("OLD", "- 1");
}

/** How many lines stand on the desk, and how many things of each kind. */
function counted(): KeptTrigger[] {
  const onDesk = (by: string) =>
    `UPDATE tallies SET count = count + ${by} WHERE name = 'on-the-desk'`;
  return [
    trigger("line_summaries", "INSERT", "tally", [onDesk("NEW.waiting")]),
    trigger(
      "line_summaries",
      "UPDATE",
      "tally",
      [onDesk("NEW.waiting - OLD.waiting")],
      "NEW.waiting <> OLD.waiting",
    ),
    trigger("line_summaries", "DELETE", "tally", [onDesk("-OLD.waiting")]),
    trigger("due_things", "INSERT", "tally", [
      "UPDATE tallies SET count = count + 1 WHERE name = NEW.kind",
      countIn(),
    ]),
    trigger("due_things", "UPDATE", "tally", [countOut(), countIn()], "NEW.keeper <> OLD.keeper"),
    trigger("due_things", "DELETE", "tally", [
      "UPDATE tallies SET count = count - 1 WHERE name = OLD.kind",
      countOut(),
    ]),
  ];
}

function countIn(): string {
  return "INSERT INTO due_counts (keeper, waits_on, kind, sort_day, count) VALUES (NEW.keeper, NEW.waits_on, NEW.kind, NEW.sort_day, 1) ON CONFLICT DO UPDATE SET count = count + 1";
}

/** A count that has come to nothing keeps no row: days pass. */
function countOut(): string {
  const which =
    "keeper = OLD.keeper AND waits_on = OLD.waits_on AND kind = OLD.kind AND sort_day = OLD.sort_day";
  return `UPDATE due_counts SET count = count - 1 WHERE ${which};\n\tDELETE FROM due_counts WHERE ${which} AND count = 0`;
}

/** Who looks after a line stands with its summary and with what is due on it. */
function kept(): KeptTrigger[] {
  const keeper = (who: string, row: string) =>
    ["line_summaries", "due_things"].map(
      (table) => `UPDATE ${table} SET keeper = ${who} WHERE line_id = ${row}.line_id`,
    );
  return [
    trigger("line_keepers", "INSERT", "keeper", keeper("NEW.user_id", "NEW")),
    trigger("line_keepers", "UPDATE", "keeper", keeper("NEW.user_id", "NEW")),
    trigger("line_keepers", "DELETE", "keeper", keeper("''", "OLD")),
  ];
}

interface Searched {
  /** What it is called in a list of what was found. */
  readonly kind: string;
  readonly table: string;
  readonly title: (row: string) => string;
  readonly detail: (row: string) => string;
}

/** Columns of one row, joined by spaces; `mailing_json` stands for the parts of an address. */
function joined(columns: readonly string[]): (row: string) => string {
  return (row) =>
    columns
      .flatMap((column) =>
        column.endsWith("_json")
          ? addressOf(`${row}.${column}`)
          : [`coalesce(${row}.${column}, '')`],
      )
      .join(" || ' ' || ");
}

function addressOf(column: string): string[] {
  return ["street", "unit", "city", "state", "zip"].map(
    (part) => `coalesce(json_extract(${column}, '$.${part}'), '')`,
  );
}

function street(row: string): string {
  const part = (name: string) => `json_extract(${row}.address_json, '$.${name}')`;
  return `trim(${part("street")} || ' ' || ${part("unit")})`;
}

/** What search goes through on a line, besides the line itself. */
const SEARCHED: readonly Searched[] = [
  {
    kind: "property",
    table: "properties",
    title: street,
    detail: joined(["address_json", "parcel", "legal_description", "note"]),
  },
  {
    kind: "party",
    table: "parties",
    title: joined(["name"]),
    detail: joined(["mailing_json", "email", "phone", "needs", "note"]),
  },
  {
    kind: "permit record",
    table: "records",
    title: joined(["title"]),
    detail: joined(["number", "dated", "note"]),
  },
  {
    kind: "record entry",
    table: "entries",
    title: joined(["label"]),
    detail: joined(["explanation", "note"]),
  },
  {
    kind: "run",
    table: "runs",
    title: joined(["name"]),
    detail: joined(["ran_on", "operator", "access_point", "note"]),
  },
  {
    kind: "tie-in",
    table: "tie_ins",
    title: joined(["label"]),
    detail: joined(["settled_reason", "note"]),
  },
  {
    kind: "agreement",
    table: "agreements",
    title: joined(["title"]),
    detail: joined(["recording_number", "terms"]),
  },
  {
    kind: "scope item",
    table: "scope_items",
    title: joined(["title"]),
    detail: joined(["alleged_cause", "note"]),
  },
  { kind: "permit", table: "permits", title: joined(["number"]), detail: joined(["note"]) },
  {
    kind: "locate ticket",
    table: "locate_tickets",
    title: joined(["number"]),
    detail: joined(["called_on", "note"]),
  },
  {
    kind: "inspection",
    table: "inspections",
    title: joined(["title"]),
    detail: joined(["inspector", "note"]),
  },
  { kind: "stored file", table: "uploads", title: joined(["name"]), detail: joined(["note"]) },
];

const LINE_WORDS = joined(["town", "main_note", "note"]);

function wordsOfLines(): KeptTrigger[] {
  const gone = "DELETE FROM search_texts WHERE line_id = OLD.id AND kind = 'line'";
  const there = `INSERT INTO search_texts (line_id, kind, row_id, title, detail) VALUES (NEW.id, 'line', '', NEW.name, ${LINE_WORDS("NEW")})`;
  return [
    trigger("lines", "INSERT", "words", [there]),
    trigger("lines", "UPDATE", "words", [gone, there]),
    trigger("lines", "DELETE", "words", [gone]),
  ];
}

function wordsOfRows(): KeptTrigger[] {
  return SEARCHED.flatMap(({ kind, table, title, detail }) => {
    const gone = `DELETE FROM search_texts WHERE line_id = OLD.line_id AND kind = '${kind}' AND row_id = OLD.id`;
    const there = `INSERT INTO search_texts (line_id, kind, row_id, title, detail) VALUES (NEW.line_id, '${kind}', NEW.id, ${title("NEW")}, ${detail("NEW")})`;
    return [
      trigger(table, "INSERT", "words", [there]),
      trigger(table, "UPDATE", "words", [gone, there]),
      trigger(table, "DELETE", "words", [gone]),
    ];
  });
}

const INDEXED = "rowid, title, detail";

/** The full-text index holds no text of its own: it is told what came and what went. */
function indexed(): KeptTrigger[] {
  return [
    trigger("search_texts", "INSERT", "index", [
      `INSERT INTO search_index (${INDEXED}) VALUES (${indexedOf("NEW")})`,
    ]),
    trigger("search_texts", "DELETE", "index", [
      `INSERT INTO search_index (search_index, ${INDEXED}) VALUES ('delete', ${indexedOf("OLD")})`,
    ]),
  ];
}

/** The index takes accents off itself; letters that Unicode does not take apart are written out. */
function indexedOf(row: string): string {
  return `${row}.id, ${plain(`${row}.title`)}, ${plain(`${row}.detail`)}`;
}

function plain(text: string): string {
  return Object.entries(PLAIN)
    .flatMap(([letter, written]) => [
      [letter, written],
      [letter.toUpperCase(), written],
    ])
    .filter(([letter = ""]) => letter.length === 1)
    .reduce((sum, [letter, written]) => `replace(${sum}, '${letter}', '${written}')`, text);
}

/** Statements that fill what search goes through from the rows as they stand; the index follows. */
export function gatherWords(): string[] {
  return [
    `INSERT INTO search_texts (line_id, kind, row_id, title, detail) SELECT id, 'line', '', name, ${LINE_WORDS("l")} FROM lines l`,
    ...SEARCHED.map(
      ({ kind, table, title, detail }) =>
        `INSERT INTO search_texts (line_id, kind, row_id, title, detail) SELECT line_id, '${kind}', id, ${title("r")}, ${detail("r")} FROM \`${table}\` r`,
    ),
  ];
}
