import { expect, test } from "vitest";
import { bringInPeople } from "#lib/operations/bring-in-people.ts";
import { aDb, anAct, anOpenLine, fileOf, must } from "../../support/office.ts";

const ROWS = [
  { site: "12 FENNEL ROW", parcel: "77", owner: "BRANDVOLD OTTILIE ET UX", order: "last-first" },
  { site: "14 FENNEL ROW", owner: "PENA JESUS", order: "last-first", phone: "12" },
  { site: "16 FENNEL ROW", owner: "HALE NORA", order: "sideways" },
];

test("a list of owners comes in at once; what is wrong is named and stays outside", () => {
  const act = anAct(aDb());
  const lineId = anOpenLine(act);
  const brought = must(bringInPeople(act, { lineId, rows: ROWS }));
  expect(brought).toMatchObject({ added: [0], doubles: [] });
  expect(brought.left.map(({ row, column }) => [row, column])).toEqual([
    [2, "order"],
    [1, "phone"],
  ]);
  const file = fileOf(act, lineId);
  expect(file.properties.map(({ address }) => address.street)).toEqual(["12 Fennel Row"]);
  expect(file.parties.map(({ name }) => name)).toEqual(["Ottilie Brandvold"]);
  expect(file.roles).toMatchObject([{ heldWith: "wife, not named" }]);
  expect(file.history.at(-1)?.sentence).toMatch(/Imported from a list of owners/);
  const again = must(bringInPeople(act, { lineId, rows: ROWS.slice(0, 1) }));
  expect(again).toEqual({ added: [], left: [], doubles: [0] });
  expect(fileOf(act, lineId)).toEqual(file);
});

test("the field role imports nobody, nor does anybody more rows than a list takes", () => {
  const act = anAct(aDb());
  const lineId = anOpenLine(act);
  const field = { ...act, actor: { ...act.actor, role: "field" as const } };
  expect(bringInPeople(field, { lineId, rows: ROWS })).toMatchObject({
    error: { reason: "not-allowed" },
  });
  const many = Array.from({ length: 201 }, (_none, at) => ({ site: `${at + 1} Fennel Row` }));
  expect(bringInPeople(act, { lineId, rows: many })).toMatchObject({
    error: { reason: "bad-value" },
  });
  expect(fileOf(act, lineId).properties).toEqual([]);
});
