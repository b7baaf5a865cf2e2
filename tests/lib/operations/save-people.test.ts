import { describe, expect, test } from "vitest";
import { getLineFile } from "#db/queries/line-file.ts";
import { getRevisions } from "#db/queries/revision.ts";
import { insertRow } from "#db/queries/row.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import type { Property } from "#lib/domain/facts/party.ts";
import { type PersonRow, personRows } from "#lib/domain/party/people.ts";
import type { Act } from "#lib/operations/act.ts";
import { peopleRevision, savePeople } from "#lib/operations/save-people.ts";
import { saveRows } from "#lib/operations/save-rows.ts";
import { aDb, anAct, anOpenLine, must } from "#tests/support/office.ts";

const HOUSE: Property = {
  id: "h12",
  address: { street: "12 Fennel Row", unit: "", city: "Quillhaven", state: "WA", zip: "98000" },
  parcel: "",
  legalDescription: "",
  stake: "connected",
  weight: null,
  bothLanguages: false,
  note: "",
};

function line(id: string, name: string, rest: Partial<PersonRow> = {}): Partial<PersonRow> {
  return { id, name, role: "owner", propertyId: "h12", ...rest };
}

interface Desk {
  readonly act: Act;
  readonly lineId: string;
  readonly file: () => LineFile;
  readonly base: () => number;
}

function desk(): Desk {
  const act = anAct(aDb());
  const lineId = anOpenLine(act);
  must(saveRows(act, { lineId, table: "properties", base: 0, rows: [HOUSE] }));
  return {
    act,
    lineId,
    file: () => {
      const file = getLineFile(act.db, lineId);
      if (file === null) throw new Error("The line is gone");
      return file;
    },
    base: () => peopleRevision(getRevisions(act.db, lineId)),
  };
}

describe("savePeople()", () => {
  test("savePeople() keeps one party with two roles and the unit that was named, and tells of it", () => {
    const { act, lineId, file, base } = desk();
    const rows = [
      line("n1", "Ottilie Brandvold", { street: "PO BOX 12" }),
      line("n2", "Ottilie Brandvold", { role: "occupant", unit: "Upstairs" }),
    ];
    const saved = must(savePeople(act, { lineId, base: base(), rows }));
    expect(saved.revision).toBe(base());
    expect(file().parties.map(({ name, mailing }) => [name, mailing?.street])).toEqual([
      ["Ottilie Brandvold", "PO BOX 12"],
    ]);
    expect(file().units.map(({ name }) => name)).toEqual(["Upstairs"]);
    expect(file().roles.map(({ role, unitId }) => [role, unitId])).toEqual([
      ["owner", null],
      ["occupant", file().units[0]?.id],
    ]);
    expect(file().history.at(-1)).toMatchObject({ by: "Dana Okafor", action: "save-rows" });
  });

  test("savePeople() of what is there writes nothing", () => {
    const { act, lineId, file, base } = desk();
    must(savePeople(act, { lineId, base: base(), rows: [line("n1", "Nils Adeyemi")] }));
    const before = { entries: file().history.length, base: base() };
    const again = must(savePeople(act, { lineId, base: base(), rows: personRows(file()) }));
    expect({ entries: file().history.length, base: again.revision }).toEqual(before);
  });

  test("savePeople() removes a person whose last line is taken out", () => {
    const { act, lineId, file, base } = desk();
    const two = [line("n1", "Nils Adeyemi"), line("n2", "Tomas Ferreira", { role: "occupant" })];
    must(savePeople(act, { lineId, base: base(), rows: two }));
    must(savePeople(act, { lineId, base: base(), rows: personRows(file()).slice(0, 1) }));
    expect([file().parties.length, file().roles.length]).toEqual([1, 1]);
  });

  test("savePeople() refuses when one of its tables was saved meanwhile, and says by whom", () => {
    const { act, lineId, base } = desk();
    const stale = base();
    const other = { ...act, actor: { ...act.actor, name: "Ruth Lindqvist" } };
    const unit = { id: "u1", propertyId: "h12", name: "" };
    must(saveRows(other, { lineId, table: "units", base: 0, rows: [unit] }));
    const refused = savePeople(act, { lineId, base: stale, rows: [line("n1", "Nils")] });
    expect(refused).toMatchObject({
      ok: false,
      error: { reason: "changed-meanwhile", by: "Ruth Lindqvist" },
    });
  });

  test.each([
    [{ name: "" }, "name", "Enter a name"],
    [{ propertyId: null }, "propertyId", "Choose the property, or clear the role"],
    [{ role: null }, "role", "Choose their role at the property"],
    [
      { propertyId: "h99" },
      "propertyId",
      'There is no property with the id "h99" in the file; choose one that is there',
    ],
  ] as const)("savePeople() refuses %j beside the cell %s", (rest, column, message) => {
    const { act, lineId, file, base } = desk();
    const refused = savePeople(act, { lineId, base: base(), rows: [line("n1", "Nils", rest)] });
    expect(refused.ok ? [] : refused.error.cells).toEqual([{ row: 0, column, message }]);
    expect(file().parties).toEqual([]);
  });

  test("savePeople() says beside the cell how to write a state, a ZIP code and a phone number", () => {
    const { act, lineId, base } = desk();
    const typed = { street: "PO Box 7", state: "Oregn", zip: "974991", phone: "5550142" };
    const refused = savePeople(act, {
      lineId,
      base: base(),
      rows: [line("n1", "Nils", typed)],
    });
    expect(refused).toMatchObject({
      error: {
        reason: "bad-rows",
        cells: [
          { row: 0, column: "state", message: expect.stringContaining("e.g. WA or Washington") },
          { row: 0, column: "zip", message: expect.stringContaining("five digits") },
          { row: 0, column: "phone", message: expect.stringContaining("as (360) 555-0100") },
        ],
      },
    });
  });

  test("savePeople() says what the other line of the same name says", () => {
    const { act, lineId, base } = desk();
    const rows = [
      line("n1", "Nils", { phone: "(360) 555-0101" }),
      line("n2", "Nils", { phone: "(360) 555-0102" }),
    ];
    const refused = savePeople(act, { lineId, base: base(), rows });
    expect(refused.ok ? [] : refused.error.cells).toEqual([
      {
        row: 1,
        column: "phone",
        message:
          "Another row with this name says “(360) 555-0101”; the same name means the same person",
      },
    ]);
  });

  test("savePeople() keeps a person whom a consent names", () => {
    const { act, lineId, file, base } = desk();
    must(savePeople(act, { lineId, base: base(), rows: [line("n1", "Nils")] }));
    const partyId = file().parties[0]?.id ?? "";
    insertRow(act.db, "consents", {
      lineId,
      row: {
        id: "c1",
        kind: "enter",
        partyId,
        propertyId: "h12",
        state: "given",
        stateOn: "2026-11-20",
        splitId: null,
        amount: null,
        recordingNumber: "",
        uploadId: null,
        note: "",
        restsOnId: null,
        enteredBy: "",
      },
    });
    const refused = savePeople(act, { lineId, base: base(), rows: [] });
    expect(refused).toMatchObject({
      ok: false,
      error: { reason: "in-use", by: "party Nils is named by consent of Nils" },
    });
  });

  test("savePeople() keeps a state in its two letters, and says so", () => {
    const { act, lineId, file, base } = desk();
    const mail = { street: "PO BOX 12", city: "Dry Mesa", zip: "89000" };
    const rows = [
      line("n1", "Ottilie Brandvold", { ...mail, state: "nv" }),
      line("n2", "Nils", { ...mail, state: "NV" }),
    ];
    const saved = must(savePeople(act, { lineId, base: base(), rows }));
    expect(saved.otherwise).toMatchObject([{ id: "n1", state: "NV" }]);
    expect(file().parties.map(({ mailing }) => mailing?.state)).toEqual(["NV", "NV"]);
    const again = must(savePeople(act, { lineId, base: base(), rows: personRows(file()) }));
    expect(again.otherwise).toEqual([]);
  });

  test("savePeople() refuses somebody who may only record the field", () => {
    const { act, lineId, base } = desk();
    const field = anAct(act.db, { role: "field" });
    expect(savePeople(field, { lineId, base: base(), rows: [] })).toMatchObject({
      ok: false,
      error: { reason: "not-allowed" },
    });
  });
});
