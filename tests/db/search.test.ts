import { expect, test } from "vitest";
import { foldText } from "#db/fold-text.ts";
import { search } from "#db/queries/search.ts";
import { aParty, aProperty, aRecord } from "../support/file.ts";
import { aDb, addRows, anAct, anOpenLine } from "../support/office.ts";

function someLines() {
  const act = anAct(aDb());
  const lineId = anOpenLine(act);
  addRows(act, { lineId, table: "properties" }, [
    aProperty("14", { parcel: "QH-0414" }),
    aProperty("16"),
  ]);
  addRows(act, { lineId, table: "parties" }, [
    aParty("a", { name: "Jesús Peña", phone: "(360) 555-0114" }),
    aParty("b", { name: "Agnieszka Łódź" }),
    aParty("c", { name: "100% Larkspur_Holdings" }),
  ]);
  addRows(act, { lineId, table: "records" }, [aRecord("card", { number: "1184" })]);
  return act.db;
}

function titles(text: string): string[] {
  return search(someLines(), text).map(({ title }) => title);
}

test("search() finds names whatever their accents and capitals, and typed accents too", () => {
  expect(titles("pena")).toEqual(["Jesús Peña"]);
  expect(titles("PEÑA jesus")).toEqual(["Jesús Peña"]);
  expect(titles("lodz")).toEqual(["Agnieszka Łódź"]);
});

test("search() wants every word, in any order, and finds parcels, phones and numbers", () => {
  expect(titles("fennel 14")).toEqual(["14 Fennel Row"]);
  expect(titles("QH-0414")).toEqual(["14 Fennel Row"]);
  expect(titles("555-0114")).toEqual(["Jesús Peña"]);
  expect(titles("1184")).toEqual(["Side sewer card"]);
  expect(titles("fennel nowhere")).toEqual([]);
});

test("search() takes signs of the query language as signs", () => {
  expect(titles("100%")).toEqual(["100% Larkspur_Holdings"]);
  expect(titles("k_spur")).toEqual([]);
  expect(titles("' or 1=1 --")).toEqual([]);
});

test("search() finds nothing for nothing, and lines by their name", () => {
  expect(titles("  ")).toEqual([]);
  expect(search(someLines(), "alley")).toMatchObject([{ kind: "line", question: null }]);
});

test("foldText() takes accents off and leaves the letters", () => {
  expect(foldText("  Łódź  Straße  Ærø ÑANDÚ ")).toBe("lodz strasse aero nandu");
});

test("search() takes the beginning of a word, puts names before notes, and lines before all", () => {
  const db = someLines();
  expect(search(db, "lark").map(({ title }) => title)).toEqual(["100% Larkspur_Holdings"]);
  expect(search(db, "arkspur")).toEqual([]);
  expect(search(db, "fen").map(({ kind }) => kind)[0]).toBe("line");
});
