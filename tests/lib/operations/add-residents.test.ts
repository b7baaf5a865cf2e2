import { expect, test } from "vitest";
import { getRevisions } from "#db/queries/revision.ts";
import { composeLetter } from "#lib/domain/paper/compose.ts";
import { recipientsOf } from "#lib/domain/paper/recipients.ts";
import { likelySame } from "#lib/domain/party/likely-same.ts";
import { personRows } from "#lib/domain/party/people.ts";
import { signersFor } from "#lib/domain/party/signers.ts";
import { reportOn } from "#lib/domain/report/report-on.ts";
import { addResidents } from "#lib/operations/add-residents.ts";
import { peopleRevision, savePeople } from "#lib/operations/save-people.ts";
import { aNotice, anOffice, aParty, aProperty, aRole, aUnit } from "../../support/file.ts";
import { aDb, addRows, anAct, anOpenLine, fileOf, must } from "../../support/office.ts";

/** A duplex of which one unit's tenant is known, a house that nobody is known in, a crossed lot. */
function aDuplex() {
  const act = anAct(aDb());
  const lineId = anOpenLine(act);
  addRows(act, { lineId, table: "properties" }, [
    aProperty("14"),
    aProperty("16"),
    aProperty("9", { stake: "crossed" }),
  ]);
  addRows(act, { lineId, table: "units" }, [
    aUnit("u1", "14", { name: "Unit 1" }),
    aUnit("u2", "14", { name: "Unit 2" }),
  ]);
  addRows(act, { lineId, table: "parties" }, [aParty("bea", { name: "Bea Holloway" })]);
  addRows(act, { lineId, table: "roles" }, [
    aRole("bea", "14", { role: "occupant", unitId: "u1" }),
  ]);
  return { act, lineId };
}

test("whoever lives in a unit without a known occupant gets letters, and is nobody by name", () => {
  const { act, lineId } = aDuplex();
  expect(must(addResidents(act, { lineId }))).toEqual({ added: 2 });
  const file = fileOf(act, lineId);
  const made = file.parties.filter(({ kind }) => kind === "resident");
  expect(made.map(({ name }) => name)).toEqual(["Current Resident", "Current Resident"]);
  expect(likelySame(file)).toEqual([]);
  expect(signersFor(file, "14")).toEqual([]);
  const report = reportOn(file, act.today);
  expect(recipientsOf(file, report, "drain-pause").map(({ propertyId }) => propertyId)).toEqual([
    "14",
    "14",
    "16",
  ]);
  const partyId = made[0]?.id ?? "";
  const letter = (language: "en" | "es") =>
    composeLetter({
      file,
      report,
      office: anOffice(),
      notice: aNotice("n", { kind: "drain-pause", partyId, propertyId: "14", language }),
    });
  expect(letter("en").to.slice(0, 2)).toEqual(["CURRENT RESIDENT", "14 FENNEL ROW UNIT 2"]);
  expect(letter("en").greeting).toBe("Dear resident:");
  expect(letter("es").greeting).toBe("Estimado/a residente:");
  expect(addResidents(act, { lineId })).toMatchObject({ error: { reason: "not-in-this-state" } });
});

test("residents stay apart in the list of people, and one who gets a name keeps what they had", () => {
  const { act, lineId } = aDuplex();
  must(addResidents(act, { lineId }));
  const before = fileOf(act, lineId);
  const base = peopleRevision(getRevisions(act.db, lineId));
  const rows = personRows(before).map((row) =>
    row.kind === "resident" && row.unit === "Unit 2"
      ? { ...row, name: "Ana Ruiz", kind: "person" }
      : row,
  );
  must(savePeople(act, { lineId, base, rows }));
  const after = fileOf(act, lineId);
  const idOf = (name: string, file: typeof after) =>
    file.parties.find((party) => party.name === name)?.id;
  expect(after.parties).toHaveLength(before.parties.length);
  expect(idOf("Ana Ruiz", after)).toBe(idOf("Current Resident", before));
  expect(after.parties.filter(({ kind }) => kind === "resident")).toHaveLength(1);
});
