import { createHash } from "node:crypto";
import fc from "fast-check";
import { AUTHORITY_PART_NAMES } from "#lib/domain/facts/authority.ts";
import { LIST_REFERENCES } from "#lib/domain/facts/references.ts";
import { type FileProblem, lineFileSchema } from "#lib/exchange/line-file.ts";

// Line files that are right by the format's own schema, made from the schema itself: every list,
// every field, the ends of every range. What names another row names one that is there.

interface Schema {
  readonly $ref?: string;
  readonly type?: string;
  readonly enum?: readonly unknown[];
  readonly const?: unknown;
  readonly anyOf?: readonly Schema[];
  readonly properties?: Readonly<Record<string, Schema>>;
  readonly items?: Schema;
  readonly required?: readonly string[];
  readonly format?: string;
  readonly pattern?: string;
  readonly minimum?: number;
  readonly maximum?: number;
  readonly exclusiveMinimum?: number;
  readonly multipleOf?: number;
  readonly description?: string;
  readonly default?: unknown;
  readonly $defs?: Readonly<Record<string, Schema>>;
}

type Row = Record<string, unknown>;

const ROOT = lineFileSchema() as Schema;

/** Rows of each list: few, so that many of them meet. */
const MOST = 3;

function resolved(schema: Schema): Schema {
  if (schema.$ref === undefined) return schema;
  const name = schema.$ref.replace("#/$defs/", "");
  return resolved(ROOT.$defs?.[name] ?? {});
}

function anyOf(given: Schema, name: string): fc.Arbitrary<unknown> {
  const schema = resolved(given);
  if (schema.const !== undefined) return fc.constant(schema.const);
  if (schema.enum !== undefined) return fc.constantFrom(...schema.enum);
  if (schema.anyOf !== undefined) return fc.oneof(...schema.anyOf.map((one) => anyOf(one, name)));
  switch (schema.type) {
    case "null":
      return fc.constant(null);
    case "boolean":
      return fc.boolean();
    case "integer":
    case "number":
      return anyNumber(schema);
    case "string":
      return anyText(schema, name);
    case "array":
      return fc.array(anyOf(schema.items ?? {}, name), { maxLength: 2 });
    default:
      return anyObject(schema);
  }
}

/** Fields with a usual value are left out now and then. */
function anyObject({ properties = {}, required = [] }: Schema): fc.Arbitrary<Row> {
  const fields = Object.entries(properties).map(([key, schema]) => [key, anyOf(schema, key)]);
  return fc.record(Object.fromEntries(fields), { requiredKeys: [...required] } as never);
}

function anyNumber(schema: Schema): fc.Arbitrary<number> {
  const least = schema.minimum ?? schema.exclusiveMinimum ?? -100_000;
  const most = schema.maximum ?? 100_000;
  if (schema.type === "integer")
    return fc.oneof(
      fc.integer({ min: least, max: most }),
      fc.integer({ min: least, max: Math.min(most, least + 12) }),
      fc.constantFrom(least, most, Math.max(least, 0)),
    );
  if (schema.description?.includes("two decimals"))
    return fc.oneof(
      // Near one another, so that places meet and stretches lie in one another.
      fc.integer({ min: 0, max: 9_000 }).map((cft) => cft / 100),
      fc.constantFrom(0, 0.01, 100, 100_000),
    );
  if (schema.multipleOf === 0.5)
    return fc.integer({ min: least * 2, max: most * 2 }).map((half) => half / 2);
  return fc.oneof(
    fc.double({ min: Math.max(least, 1e-7), max: most, noNaN: true }),
    fc.constantFrom(
      most,
      1,
      6,
      0.5,
      1e-7,
      0.000_001,
      ...(schema.minimum === undefined ? [] : [least]),
    ),
  );
}

const DAYS = fc.oneof(
  { weight: 6, arbitrary: fc.integer({ min: 0, max: 700 }).map((day) => isoDay(2026, day)) },
  fc.constantFrom("1900-01-01", "2199-12-31", "2024-02-29", "0000-01-01", "9999-12-31"),
);

function isoDay(year: number, day: number): string {
  return new Date(Date.UTC(year, 0, 1 + day)).toISOString().slice(0, 10);
}

function anyText({ format, pattern }: Schema, name: string): fc.Arbitrary<string> {
  if (format === "date") return DAYS;
  if (format === "date-time") return DAYS.map((day) => `${day}T18:00:00.000Z`);
  if (pattern?.includes("[0-9a-f]{64}")) return fc.constantFrom("ab".repeat(32), "cd".repeat(32));
  if (pattern?.includes(":[0-5]")) return fc.constantFrom("", "00:00", "09:40", "23:59");
  if (name === "outline") return fc.constantFrom("0,0; 12.5,-4", "1,2 3,4 5,6");
  if (/Id$|^id$/.test(name)) return fc.constantFrom("a", "b", "c");
  return fc.oneof(
    fc.constantFrom("x", "Peña, “Jesús” <b>", "=1+1", "\u0000", "💣", "line\nbreak", "T1"),
    fc.string({ minLength: 1, maxLength: 8 }),
  );
}

/** A file that is right by the schema; lists are as good as always there. */
export function anyLineFile(): fc.Arbitrary<Row> {
  const { properties = {} } = ROOT;
  const lists = Object.entries(properties).filter(
    ([, schema]) => resolved(schema).type === "array",
  );
  const rows = lists.map(([list, schema]) => [
    list,
    fc.array(anyOf(resolved(schema).items ?? {}, list), { maxLength: MOST }),
  ]);
  const authority = fc.option(anyOf(properties["authority"] ?? {}, "authority"), { nil: null });
  return fc
    .record({
      version: fc.constant(1),
      line: anyOf(properties["line"] ?? {}, "line"),
      authority,
      ...Object.fromEntries(rows),
    })
    .map((file) => joined(structuredClone(file) as Row));
}

/** Ids of their own, and names of rows that are there; null, or the row left out, where there is none. */
function joined(file: Row): Row {
  const rowsOf = (list: string) => (file[list] ?? []) as Row[];
  for (const list of Object.keys(file).filter((key) => Array.isArray(file[key])))
    rowsOf(list).forEach((row, at) => {
      row["id"] = `${list}-${at}`;
    });
  for (let changed = true; changed; ) {
    changed = false;
    for (const { from, field, to, inside } of LIST_REFERENCES) {
      const there = rowsOf(to).map((row) => String(row["id"]));
      const kept = rowsOf(from).filter((row, at) => {
        const members = inside === null ? [row] : ((row[inside] ?? []) as Row[]);
        const named = members.map((member) => point(member, field, { there, at }));
        return inside === null ? named.every(Boolean) : true;
      });
      if (kept.length !== rowsOf(from).length) changed = true;
      file[from] = kept;
    }
  }
  const line = file["line"] as Row;
  const authority = file["authority"] as Row | null;
  if (line["id"] === undefined) line["id"] = "line";
  line["authorityId"] = authority === null ? null : authority["id"];
  const rules = ((authority?.["rules"] ?? []) as Row[]).map((rule, at) => {
    rule["id"] = `rule-${at}`;
    return rule["id"];
  });
  line["ruleId"] = rules[0] ?? null;
  for (const part of AUTHORITY_PART_NAMES.filter((each) => each !== "rules"))
    ((authority?.[part] ?? []) as Row[]).forEach((row, at) => {
      row["id"] = `${part}-${at}`;
    });
  chain(rowsOf("signatures"));
  rowsOf("ledger").forEach((row, at) => {
    row["number"] = at + 1;
    row["amount"] ||= 1;
    if (row["kind"] !== "reversal") row["reversesId"] = null;
  });
  rowsOf("uploads").forEach((row, at) => {
    const bytes = Buffer.from(`file ${at}`);
    row["content"] = bytes.toString("base64");
    row["bytes"] = bytes.length;
    row["sha256"] = createHash("sha256").update(bytes).digest("hex");
  });
  return file;
}

/** False where the field has to name a row and there is none. */
function point(
  member: Row,
  field: string,
  { there, at }: { there: string[]; at: number },
): boolean {
  const name = member[field];
  if (Array.isArray(name)) {
    member[field] = name.flatMap((_, index) => there[index] ?? []);
    return true;
  }
  if (typeof name !== "string" || there.includes(name)) return true;
  const chosen = there[(name.charCodeAt(0) + at) % Math.max(1, there.length)];
  if (chosen !== undefined) {
    member[field] = chosen;
    return true;
  }
  // Left to the reader to refuse where it may not be empty.
  member[field] = null;
  return NULLABLE.has(field);
}

const NULLABLE = new Set([
  "unitId",
  "parentId",
  "uploadId",
  "pictureId",
  "tieInId",
  "splitId",
  "optionId",
  "addedById",
  "droppedById",
  "payerId",
  "controlPropertyId",
  "drawingId",
  "reversesId",
  "proofUploadId",
  "itemId",
  "pointId",
  "openedRunId",
]);

function chain(signatures: Row[]): void {
  let before = "0".repeat(64);
  for (const [at, row] of signatures.entries()) {
    row["previousHash"] = before;
    row["hash"] = before = String(at + 1).repeat(64);
  }
}

/** Without what the reader refuses: rows are taken out, facts of the line left out. */
export function mended(file: object, problems: readonly FileProblem[]): object {
  const next = structuredClone(file) as Row;
  const gone = new Map<string, Set<number>>();
  for (const { path } of problems) {
    const [part = "", second = ""] = path.split(".");
    const list = next[part];
    if (part === "line") delete (next["line"] as Row)[second];
    else if (part === "authority") next["authority"] = null;
    else if (Array.isArray(list)) gone.set(part, (gone.get(part) ?? new Set()).add(Number(second)));
  }
  for (const [list, rows] of gone)
    next[list] = (next[list] as Row[]).filter((_, at) => !rows.has(at));
  const line = next["line"] as Row;
  line["name"] ??= "Alley";
  line["openedOn"] ??= "2026-10-29";
  if (next["authority"] === null) Object.assign(line, { authorityId: null, ruleId: null });
  chain((next["signatures"] ?? []) as Row[]);
  return next;
}
