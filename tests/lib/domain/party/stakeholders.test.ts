import { describe, expect, test } from "vitest";
import type { Party, Property, Role, Unit } from "#lib/domain/facts/party.ts";
import { stakeholdersOf } from "#lib/domain/party/stakeholders.ts";

const ADDRESS = {
  street: "16 Fennel Row",
  unit: "",
  city: "Quillhaven",
  state: "WA",
  zip: "98000",
};

function property(rest: Partial<Property> = {}): Property {
  return {
    id: "h16",
    address: ADDRESS,
    parcel: "",
    legalDescription: "",
    stake: "connected",
    weight: null,
    bothLanguages: false,
    note: "",
    ...rest,
  };
}

function party(id: string, rest: Partial<Party> = {}): Party {
  return {
    id,
    kind: "person",
    name: id,
    mailing: null,
    careOf: "",
    email: "",
    phone: "",
    language: "en",
    needs: "",
    needsSaidBy: "",
    note: "",
    ...rest,
  };
}

function role(partyId: string, what: Role["role"], rest: Partial<Role> = {}): Role {
  return {
    id: `${partyId}-${what}`,
    partyId,
    propertyId: "h16",
    role: what,
    unitId: null,
    capacity: "",
    heldWith: "",
    ...rest,
  };
}

function unit(id: string, name: string): Unit {
  return { id, propertyId: "h16", name, use: "dwelling", note: "" };
}

const NOBODY = {
  properties: [property()],
  units: [],
  parties: [],
  roles: [],
  crossings: [],
  tieIns: [],
};

function missing(file: Partial<Parameters<typeof stakeholdersOf>[0]>): readonly string[] {
  return stakeholdersOf({ ...NOBODY, ...file })[0]?.missing ?? [];
}

describe("stakeholdersOf()", () => {
  test("stakeholdersOf() misses owner and occupant where nobody is entered", () => {
    expect(missing({})).toEqual([
      "No owner yet, so no one can be contacted or sign.",
      "No occupant yet, so no one can be told to stop using the drains.",
    ]);
  });

  test("stakeholdersOf() misses nothing for an owner who lives there", () => {
    expect(
      missing({
        units: [unit("u1", "")],
        parties: [party("Ottilie")],
        roles: [role("Ottilie", "owner"), role("Ottilie", "occupant", { unitId: "u1" })],
      }),
    ).toEqual([]);
  });

  test("stakeholdersOf() names the unit without an occupant and the absent owner without an address", () => {
    expect(
      missing({
        units: [unit("u1", "Unit A"), unit("u2", "Unit B")],
        parties: [party("Agnieszka"), party("Tomas")],
        roles: [role("Agnieszka", "owner"), role("Tomas", "occupant", { unitId: "u1" })],
      }),
    ).toEqual([
      "No occupant for Unit B; no letter will be sent to this unit.",
      "No other mailing address for Agnieszka; letters go to 16 Fennel Row.",
    ]);
  });

  test("stakeholdersOf() asks in what capacity somebody signs for a trust", () => {
    expect(
      missing({
        parties: [party("Winfield Trust", { kind: "trust", mailing: ADDRESS }), party("Tomas")],
        roles: [role("Winfield Trust", "owner"), role("Tomas", "occupant")],
      }),
    ).toEqual(["Not known: who signs for Winfield Trust and in what capacity."]);
  });

  test("stakeholdersOf() takes a crossed lot's owner as its owner and misses where it is crossed", () => {
    expect(
      missing({
        properties: [property({ stake: "crossed" })],
        parties: [party("Georgina", { mailing: ADDRESS })],
        roles: [role("Georgina", "crossed-lot-owner")],
      }),
    ).toEqual(["Enter where the line crosses this lot (from and to stations)."]);
  });

  test("stakeholdersOf() wants an owner proper where a crossed lot turns out connected", () => {
    expect(
      missing({
        parties: [party("Georgina", { mailing: ADDRESS })],
        roles: [role("Georgina", "crossed-lot-owner"), role("Georgina", "occupant")],
      }),
    ).toEqual(["No owner yet, so no one can be contacted or sign."]);
  });
});
