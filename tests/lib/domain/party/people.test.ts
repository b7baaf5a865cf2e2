import { describe, expect, test } from "vitest";
import type { Party, Role, Unit } from "#lib/domain/facts/party.ts";
import { mergePeople, type People, type PersonRow, personRows } from "#lib/domain/party/people.ts";

const OTTILIE: Party = {
  id: "p1",
  kind: "person",
  name: "Ottilie Brandvold",
  mailing: null,
  careOf: "",
  email: "ottilie@example.com",
  phone: "(360) 555-0112",
  language: "en",
  needs: "",
  needsSaidBy: "",
  note: "",
};
const FIRM: Party = {
  ...OTTILIE,
  id: "p2",
  kind: "firm",
  name: "Larkspur Holdings LLC",
  mailing: {
    street: "900 Signal Hill Road",
    unit: "Suite 4½",
    city: "Quillhaven",
    state: "WA",
    zip: "98000",
  },
  email: "",
  phone: "",
};
const UNITS: Unit[] = [
  { id: "u1", propertyId: "h12", name: "", use: "dwelling", note: "" },
  { id: "u2", propertyId: "h16", name: "Unit A", use: "dwelling", note: "" },
];

function role(id: string, partyId: string, rest: Partial<Role> = {}): Role {
  return {
    id,
    partyId,
    propertyId: "h12",
    role: "owner",
    unitId: null,
    capacity: "",
    heldWith: "",
    ...rest,
  };
}

const BEFORE: People = {
  parties: [OTTILIE, FIRM],
  roles: [
    role("r1", "p1"),
    role("r2", "p1", { role: "occupant", unitId: "u1" }),
    role("r3", "p2", { propertyId: "h16", capacity: "member" }),
  ],
  units: UNITS,
};

function line(id: string, rest: Partial<PersonRow> = {}): PersonRow {
  return {
    id,
    name: "",
    kind: "person",
    role: "owner",
    propertyId: "h12",
    unit: "",
    capacity: "",
    heldWith: "",
    careOf: "",
    street: "",
    mailUnit: "",
    city: "",
    state: "",
    zip: "",
    email: "",
    phone: "",
    language: "en",
    needs: "",
    needsSaidBy: "",
    note: "",
    ...rest,
  };
}

function counter(): () => string {
  let next = 0;
  return () => `new${++next}`;
}

function merged(rows: readonly PersonRow[], before: People = BEFORE): People {
  const result = mergePeople(before, rows, counter());
  if (!result.ok) throw new Error(JSON.stringify(result.error));
  return result.value;
}

function changed(id: string, rest: Partial<PersonRow>): PersonRow[] {
  return personRows(BEFORE).map((row) => (row.id === id ? { ...row, ...rest } : row));
}

describe("personRows()", () => {
  test("personRows() gives a line for each role and one for a party without any", () => {
    const rows = personRows({
      ...BEFORE,
      parties: [...BEFORE.parties, { ...OTTILIE, id: "p3", name: "Nils" }],
    });
    expect(rows.map((row) => [row.id, row.name, row.role])).toEqual([
      ["r1", "Ottilie Brandvold", "owner"],
      ["r2", "Ottilie Brandvold", "occupant"],
      ["r3", "Larkspur Holdings LLC", "owner"],
      ["p3", "Nils", null],
    ]);
  });
});

describe("mergePeople()", () => {
  test("mergePeople() of what personRows() gave changes nothing", () => {
    expect(merged(personRows(BEFORE))).toEqual(BEFORE);
  });

  test("mergePeople() keeps who said what a household needs", () => {
    const said = { needs: "Home dialysis", needsSaidBy: "her daughter, by phone 11/18" };
    const { parties } = merged(changed("r3", said));
    expect(parties.find(({ name }) => name.startsWith("Larkspur"))).toMatchObject(said);
    expect(personRows({ ...BEFORE, parties })[2]).toMatchObject(said);
  });

  test("mergePeople() makes one party of two new lines with the same name, whatever its spacing", () => {
    const rows = [
      ...personRows(BEFORE),
      line("n1", { name: "Jesús Peña", phone: "(360) 555-0114", propertyId: "h14" }),
      line("n2", { name: " jesús  peña", role: "occupant", propertyId: "h14" }),
    ];
    const { parties, roles } = merged(rows);
    expect(parties.slice(2).map((party) => [party.id, party.name, party.phone])).toEqual([
      ["new1", "Jesús Peña", "(360) 555-0114"],
    ]);
    expect(roles.slice(3).map((each) => [each.id, each.partyId, each.role])).toEqual([
      ["n1", "new1", "owner"],
      ["n2", "new1", "occupant"],
    ]);
  });

  test("mergePeople() changes a person for all their lines when one line changes", () => {
    const { parties } = merged(changed("r2", { phone: "(360) 555-0199" }));
    expect(parties[0]).toEqual({ ...OTTILIE, phone: "(360) 555-0199" });
  });

  test("mergePeople() takes an emptied cell as emptied", () => {
    expect(merged(changed("r1", { phone: "" })).parties[0]?.phone).toBe("");
  });

  test("mergePeople() renames a party when all its lines are renamed", () => {
    const { parties } = merged(changed("r3", { name: "Larkspur Homes LLC" }));
    expect(parties[1]).toEqual({ ...FIRM, name: "Larkspur Homes LLC" });
  });

  test("mergePeople() makes another person of a line renamed away from the others", () => {
    const { parties, roles } = merged(changed("r2", { name: "Tomas Ferreira" }));
    expect(parties.map((party) => party.name)).toEqual([
      "Ottilie Brandvold",
      "Larkspur Holdings LLC",
      "Tomas Ferreira",
    ]);
    expect(roles.find((each) => each.id === "r2")?.partyId).toBe("new1");
  });

  test("mergePeople() keeps two parties of the same name apart when the file has them apart", () => {
    const before: People = {
      ...BEFORE,
      parties: [OTTILIE, { ...OTTILIE, id: "p9", phone: "(360) 555-0100" }],
      roles: [role("r1", "p1"), role("r9", "p9", { propertyId: "h16" })],
    };
    expect(merged(personRows(before), before)).toEqual(before);
  });

  test("mergePeople() lets a further line of a known person fill what was not known", () => {
    const rows = [...personRows(BEFORE), line("n1", { name: OTTILIE.name, street: "PO BOX 7" })];
    expect(merged(rows).parties[0]?.mailing?.street).toBe("PO BOX 7");
  });

  test("mergePeople() refuses a new line that contradicts the person of that name", () => {
    const rows = [
      ...personRows(BEFORE),
      line("n1", { name: OTTILIE.name, phone: "(360) 555-0177" }),
    ];
    expect(mergePeople(BEFORE, rows, counter())).toEqual({
      ok: false,
      error: [
        { row: 3, column: "phone", reason: "contradicts-same-name", detail: "(360) 555-0112" },
      ],
    });
  });

  test("mergePeople() refuses two lines of one person that change the same thing differently", () => {
    const rows = personRows(BEFORE).map((row) => ({ ...row, email: `${row.id}@example.com` }));
    const result = mergePeople(BEFORE, rows, counter());
    expect(result.ok ? [] : result.error.map(({ row, column }) => [row, column])).toEqual([
      [1, "email"],
    ]);
  });

  test.each([
    ["name", "name-missing", { name: "  " }],
    ["propertyId", "property-missing", { name: "A", propertyId: null }],
    ["role", "role-missing", { name: "A", role: null }],
    ["street", "street-missing", { name: "A", city: "Quillhaven" }],
  ] as const)("mergePeople() says what is wrong in %s: %s", (column, reason, rest) => {
    const result = mergePeople(BEFORE, [line("n1", rest)], counter());
    expect(result).toEqual({ ok: false, error: [{ row: 0, column, reason, detail: "" }] });
  });

  test("mergePeople() adds a unit that is not there yet, once, as a business for a firm", () => {
    const rows = [
      ...personRows(BEFORE),
      line("n1", { name: "Crumb & Copper", kind: "firm", role: "occupant", unit: "Bakery" }),
      line("n2", { name: "Beatrix", role: "manager", unit: "bakery" }),
    ];
    const { units, roles } = merged(rows);
    expect(units.slice(2)).toEqual([
      { id: "new3", propertyId: "h12", name: "Bakery", use: "business", note: "" },
    ]);
    expect(roles.slice(3).map((each) => each.unitId)).toEqual(["new3", "new3"]);
  });

  test("mergePeople() puts an occupant without a unit's name into the only unnamed unit, an owner into none", () => {
    const rows = [
      line("n1", { name: "A", role: "occupant" }),
      line("n2", { name: "B", role: "owner" }),
    ];
    expect(merged(rows).roles.map((each) => each.unitId)).toEqual(["u1", null]);
  });

  test("mergePeople() drops a party when its last line is taken out, and keeps its units", () => {
    const { parties, units } = merged(personRows(BEFORE).filter((row) => row.id !== "r3"));
    expect(parties).toEqual([OTTILIE]);
    expect(units).toEqual(UNITS);
  });

  test("mergePeople() gives a party's line a role of its own once it gets one", () => {
    const before: People = { parties: [OTTILIE], roles: [], units: [] };
    const rows = personRows(before).map((row) => ({
      ...row,
      role: "owner" as const,
      propertyId: "h12",
    }));
    expect(merged(rows, before).roles).toEqual([role("new1", "p1")]);
  });
});
