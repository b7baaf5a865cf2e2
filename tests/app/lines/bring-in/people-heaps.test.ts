import { expect, test } from "vitest";
import { LISTED_COLUMNS } from "#app/lines/[lineId]/bring-in/listed-columns.ts";
import { heapsOf, typedIn, withReading, workOn } from "#app/lines/[lineId]/bring-in/work.ts";
import { aParty, aProperty, aRole } from "#tests/support/file.ts";

const SHEET = {
  name: "Export",
  rows: [
    ["Parcel ID", "Owner Name", "Situs Address", "Mail Address", "Mail City State Zip"],
    ["77", "BRANDVOLD OTTILIE M", "14 FENNEL ROW", "PO BOX 118", "QUILLHAVEN WA 98000"],
    ["78", "PENA JESUS", "16 FENNEL ROW", "", ""],
    ["", "HALE NORA", "", "", ""],
  ],
};

const PLACE = {
  properties: [aProperty("12"), aProperty("16")],
  parties: [aParty("ott", { name: "Ottilie Brandvold" }), aParty("jes", { name: "Jesus Pena" })],
  roles: [aRole("ott", "12"), aRole("jes", "16")],
  units: [],
};

const AIM = { table: "people", to: "", there: [], place: PLACE } as const;

function read() {
  const work = workOn({ guessed: false, sheets: [SHEET] }, "export.csv", LISTED_COLUMNS);
  const everywhere = { order: "last name first, as in BRANDVOLD OTTILIE" };
  return withReading(work, { ...work.reading, everywhere }, LISTED_COLUMNS);
}

test("an assessor's headings are known, and rows are shown as what they come to", () => {
  const work = read();
  expect(work.reading.match).toEqual(["parcel", "owner", "site", "mail", "mailLast"]);
  const { ready, mend, doubles } = heapsOf(work, LISTED_COLUMNS, AIM);
  expect(ready.map(({ number, listed }) => [number, listed?.people[0]?.name])).toEqual([
    [2, "Ottilie M Brandvold"],
  ]);
  expect(ready[0]?.listed?.people[0]?.likely.map(({ name }) => name)).toEqual([
    "Ottilie Brandvold",
  ]);
  expect(doubles.map(({ number }) => number)).toEqual([3]);
  expect(mend.map(({ number, problems }) => [number, Object.keys(problems)])).toEqual([
    [4, ["site"]],
  ]);
});

test("before the order of names is said, nothing is ready", () => {
  const work = workOn({ guessed: false, sheets: [SHEET] }, "export.csv", LISTED_COLUMNS);
  const { ready, mend } = heapsOf(work, LISTED_COLUMNS, AIM);
  expect(ready).toEqual([]);
  expect(mend.every(({ problems }) => "order" in problems)).toBe(true);
});

test("who a person says is on file is that party, and can be taken apart again", () => {
  const said = typedIn(read(), [{ key: "2", column: "sameAs0", text: "ott" }]);
  const [row] = heapsOf(said, LISTED_COLUMNS, AIM).ready;
  expect(row?.listed?.people[0]?.name).toBe("Ottilie Brandvold");
  expect(row?.fields).toMatchObject({ sameAs0: "ott" });
  const undone = typedIn(said, [{ key: "2", column: "sameAs0", text: "" }]);
  expect(heapsOf(undone, LISTED_COLUMNS, AIM).ready[0]?.listed?.people[0]?.name).toBe(
    "Ottilie M Brandvold",
  );
});
