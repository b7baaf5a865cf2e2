import { getTableConfig, sqliteTable } from "drizzle-orm/sqlite-core";
import { expect, test } from "vitest";
import { factColumns } from "#db/fact-columns.ts";
import {
  cents,
  feet,
  late,
  maybe,
  name,
  oneOf,
  ref,
  row,
  several,
  usually,
  usualRow,
  words,
} from "#lib/domain/facts/field.ts";
import { fieldsShape } from "#lib/exchange/shape.ts";

/** A row with fields as somebody might add them. */
const THING = row({
  one: "thing",
  fields: {
    title: name("a title"),
    tieInId: maybe(ref("tieIns")),
    depth: maybe(feet),
    price: cents,
    shine: late(usually(oneOf(["dull", "bright"]), "dull")),
    parts: several({ words, depth: feet }),
  },
});

test("a field that is said once has its column", () => {
  const { columns } = getTableConfig(sqliteTable("things", factColumns(THING.fields)));
  const said = columns.map((each) => [each.name, each.getSQLType(), each.notNull, each.default]);
  expect(said).toEqual([
    ["id", "text", true, undefined],
    ["title", "text", true, undefined],
    ["tie_in_id", "text", false, undefined],
    ["depth_cft", "integer", false, undefined],
    ["price_cents", "integer", true, undefined],
    ["shine", "text", true, "dull"],
    ["parts_json", "text", true, undefined],
  ]);
  expect(columns.find((each) => each.name === "shine")?.enumValues).toEqual(["dull", "bright"]);
});

test("a field that is said once has its shape, in memory and in a line file", () => {
  const written = { id: "a", title: "A", price: 5, depth: 1.25, parts: [{ depth: 2 }] };
  const read = fieldsShape(THING.fields, "exchange").parse(written);
  expect(read).toEqual({
    id: "a",
    title: "A",
    tieInId: null,
    depth: 125,
    price: 5,
    shine: "dull",
    parts: [{ words: "", depth: 200 }],
  });
  expect(fieldsShape(THING.fields, "memory").parse(read)).toEqual(read);
  const wrong = fieldsShape(THING.fields, "exchange").safeParse({ ...written, shine: "pale" });
  expect(wrong.error?.issues.map(({ message }) => message)).toEqual([
    "Choose one of: dull, bright",
  ]);
});

test("a field that is said once has its usual value in a new row", () => {
  expect(usualRow(THING)).toEqual({ tieInId: null, depth: null, shine: "dull", parts: [] });
});

test("what was stored before a part came has its usual value when it is read", () => {
  const { columns } = getTableConfig(sqliteTable("things", factColumns(THING.fields)));
  const parts = columns.find((each) => each.name === "parts_json");
  expect(parts?.mapFromDriverValue('[{"depth":200}]')).toEqual([{ words: "", depth: 200 }]);
});
