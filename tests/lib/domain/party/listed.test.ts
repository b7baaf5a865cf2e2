import { expect, test } from "vitest";
import { listed } from "#lib/domain/party/listed.ts";
import type { ListedFields, ListPlace } from "#lib/domain/party/listed-row.ts";
import { anAddress, aParty, aProperty, aRole } from "#tests/support/file.ts";

const EMPTY: ListPlace = { properties: [], parties: [], roles: [], units: [] };

function ids(): () => string {
  let made = 0;
  return () => {
    made += 1;
    return `new-${made}`;
  };
}

/** A row as an assessor's export has it. */
const COUNTY: ListedFields = {
  parcel: "0123-045-006",
  siteNumber: "12",
  site: "FENNEL ROW",
  siteLast: "QUILLHAVEN WA 98000",
  owner: "BRANDVOLD OTTILIE & EINAR",
  order: "last-first",
  mail: "C/O DUNMORE TAX SERVICE",
  mail2: "PO BOX 118",
  mailLast: "QUILLHAVEN WA 98000-0118",
};

test("a row of a county's list becomes a property and its owners, written as people write", () => {
  const { rows, after } = listed(EMPTY, [COUNTY], ids());
  expect(rows[0]).toMatchObject({
    problems: [],
    there: false,
    property: { words: "12 Fennel Row, Quillhaven, WA 98000", isNew: true },
  });
  expect(after.properties).toMatchObject([{ parcel: "0123-045-006", stake: "candidate" }]);
  expect(after.parties).toMatchObject(
    ["Ottilie Brandvold", "Einar Brandvold"].map((name) => ({
      name,
      kind: "person",
      careOf: "Dunmore Tax Service",
      mailing: {
        street: "PO Box 118",
        unit: "",
        city: "Quillhaven",
        state: "WA",
        zip: "98000-0118",
      },
    })),
  );
  expect(after.roles.map(({ role }) => role)).toEqual(["owner", "owner"]);
});

test("the same list again is all there; a property is found by parcel, however it is written", () => {
  const first = listed(EMPTY, [COUNTY], ids()).after;
  const again = listed(
    first,
    [COUNTY, { ...COUNTY, parcel: "0123045006", site: "FENEL ROW" }],
    ids(),
  );
  expect(again.rows.map(({ there }) => there)).toEqual([true, true]);
  expect(again.rows[1]?.said[0]).toMatch(/On file under this parcel as 12 Fennel Row/);
  expect(again.after).toEqual(first);
});

test("mail that goes to the property is no mailing address; unnamed owners stay unnamed", () => {
  const row: ListedFields = {
    site: "12 FENNEL ROW, QUILLHAVEN, WA 98000",
    owner: "BRANDVOLD EINAR ET UX",
    order: "last-first",
    mail: "12 Fennel Row",
    mailCity: "Quillhaven",
    mailZip: "98000",
  };
  const { rows, after } = listed(EMPTY, [row], ids());
  expect(after.parties).toMatchObject([{ name: "Einar Brandvold", mailing: null }]);
  expect(after.roles).toMatchObject([{ heldWith: "wife, not named" }]);
  expect(rows[0]?.said.join(" ")).toMatch(/wife, not named/);
});

test("a new property takes the ZIP+4 under which the list mails to it, and none of another ZIP code", () => {
  const row: ListedFields = {
    ...{ site: "12 FENNEL ROW", siteLast: "QUILLHAVEN WA 98000", owner: "EINAR BRANDVOLD" },
    ...{ mail: "12 FENNEL ROW", mailLast: "QUILLHAVEN WA 98000-1234" },
  };
  const { after } = listed(EMPTY, [row], ids());
  expect(after.properties).toMatchObject([{ address: { zip: "98000-1234" } }]);
  expect(after.parties).toMatchObject([{ mailing: null }]);
  const away = listed(EMPTY, [{ ...row, mail: "14 FENNEL ROW" }], ids()).after;
  expect(away.properties).toMatchObject([{ address: { zip: "98000" } }]);
  const bare = listed(EMPTY, [{ ...row, mailLast: "QUILLHAVEN WA 98000" }], ids()).after;
  expect(bare.properties).toMatchObject([{ address: { zip: "98000" } }]);
});

test("a trustee in the second column signs for the trust in the first", () => {
  const row: ListedFields = {
    site: "14 FENNEL ROW",
    owner: "WINFIELD FAMILY TRUST",
    owner2: "WINFIELD HAROLD TRUSTEE",
    order: "last-first",
  };
  const { after } = listed(EMPTY, [row], ids());
  expect(after.parties).toMatchObject([{ name: "Winfield Family Trust", kind: "trust" }]);
  expect(after.roles).toMatchObject([{ capacity: "trustee Harold Winfield" }]);
});

const THERE: ListPlace = {
  properties: [aProperty("12", { address: anAddress("12 Fennel Row"), parcel: "77" })],
  parties: [
    aParty("ott", { name: "Ottilie Brandvold", mailing: anAddress("900 Signal Hill Road") }),
  ],
  roles: [aRole("ott", "12")],
  units: [],
};

test("someone who may be on file is shown; a person says whether they are", () => {
  const row: ListedFields = {
    parcel: "78",
    site: "14 Fennel Row",
    owner: "BRANDVOLD OTTILIE M",
    order: "last-first",
    mail: "900 SIGNAL HILL RD",
  };
  const open = listed(THERE, [row], ids());
  expect(open.rows[0]?.people[0]?.likely).toMatchObject([{ partyId: "ott" }]);
  expect(open.after.parties).toHaveLength(2);
  const said = listed(THERE, [{ ...row, sameAs0: "ott" }], ids());
  expect(said.after.parties).toEqual(THERE.parties);
  expect(said.after.roles).toMatchObject([{}, { partyId: "ott" }]);
});

test("a row that contradicts what is on file stays outside, the others come in", () => {
  const rows: ListedFields[] = [
    { site: "14 Fennel Row", owner: "Ottilie Brandvold", mail: "1 Other Street" },
    { site: "16 Fennel Row", owner: "Jesús Peña", mailState: "ZZ", mail: "2 Other Street" },
    { owner: "Nobody Placed" },
    { site: "18 Fennel Row", owner: "Nora Hale" },
  ];
  const { rows: read, after } = listed(THERE, rows, ids());
  expect(read.map(({ problems }) => problems.map(({ column }) => column))).toEqual([
    ["mail"],
    ["mailState"],
    ["site"],
    [],
  ]);
  expect(after.properties.map(({ address }) => address.street)).toEqual([
    "12 Fennel Row",
    "18 Fennel Row",
  ]);
  expect(after.parties.map(({ name }) => name)).toEqual(["Ottilie Brandvold", "Nora Hale"]);
});

test("a state that is none, in one cell with city and ZIP code, is asked about and no part of the city", () => {
  const mail = { owner: "Winfield Family Trust", mail: "900 Signal Hill Rd" };
  const rows: ListedFields[] = [
    { ...mail, site: "25 Yarrow Ln", mailLast: "QUILLHAVEN ZZ 98000" },
    { ...mail, site: "27 Yarrow Ln", owner: "Bo Hale", mailLast: "LA MESA" },
  ];
  const { rows: read } = listed(EMPTY, rows, ids());
  expect(read[0]?.problems).toMatchObject([{ column: "mailLast" }]);
  expect(read[1]?.problems.map(({ message }) => message).join()).not.toContain("Mesa");
});

test("two rows about a new property make one, also when the first stays outside", () => {
  const rows: ListedFields[] = [
    { site: "14 Fennel Row", owner: "Ann Other", phone: "12" },
    { site: "14 FENNEL ROW", owner: "Bo Other" },
  ];
  const { after, rows: read } = listed(EMPTY, rows, ids());
  expect(read[0]?.problems).toMatchObject([{ column: "phone" }]);
  expect(after.properties).toHaveLength(1);
  expect(after.roles).toMatchObject([{ propertyId: after.properties[0]?.id }]);
});

test("a ZIP code that a spreadsheet cut and a unit in the street are put right", () => {
  const row: ListedFields = {
    site: "118 N FENNEL ROW APT 2",
    siteCity: "QUILLHAVEN",
    siteState: "NJ",
    siteZip: "8012",
    owner: "",
  };
  const { rows, after } = listed(EMPTY, [row], ids());
  expect(after.properties[0]?.address).toEqual({
    street: "118 N Fennel Row",
    unit: "Apt 2",
    city: "Quillhaven",
    state: "NJ",
    zip: "08012",
  });
  expect(rows[0]?.said).toEqual(["No owner named."]);
});

test("a care-of line with its address in one cell is taken apart", () => {
  const mail = "C/O DUNMORE TAX PO BOX 118";
  const row: ListedFields = { site: "12 FENNEL ROW", owner: "NORA HALE", mail };
  const { after } = listed(
    EMPTY,
    [row, { ...row, owner: "ANA RUIZ", mail: "% BO HALE 9 OAK ST" }],
    ids(),
  );
  expect(after.parties).toMatchObject([
    { careOf: "Dunmore Tax", mailing: { street: "PO Box 118" } },
    { careOf: "Bo Hale", mailing: { street: "9 Oak St" } },
  ]);
});

/** As exports have it that leave out the state of the site: the mail of 11 goes to the house itself. */
const QUARRY: readonly ListedFields[] = [
  {
    ...{ site: "13 QUARRY LN", siteCity: "HARLOW FALLS", siteZip: "99101" },
    ...{ owner: "OKONJO ADAEZE", order: "last-first", legal: "LOT 5  BLK 2 QUARRY ADD" },
    ...{ mail: "PO BOX 918", mailCity: "SPARROW CITY", mailState: "ID", mailZip: "83800" },
  },
  {
    ...{ site: "11 QUARRY LN", siteCity: "HARLOW FALLS", siteZip: "99101" },
    ...{ owner: "PELLEGRIN DONALD R", order: "last-first" },
    ...{ mail: "11 QUARRY LN", mailCity: "HARLOW FALLS", mailState: "WA", mailZip: "99101-2206" },
  },
];

test("a site without a state has that of the mail that goes to a site in its town", () => {
  const { after } = listed(EMPTY, QUARRY, ids());
  expect(after.properties.map(({ address }) => address.state)).toEqual(["WA", "WA"]);
  const alone = listed(EMPTY, QUARRY.slice(0, 1), ids()).after;
  expect(alone.properties[0]?.address.state).toBe("");
  const filed = {
    ...EMPTY,
    properties: [
      aProperty("p", { address: anAddress("9 Quarry Ln", { city: "Harlow Falls", state: "WA" }) }),
    ],
  };
  expect(listed(filed, QUARRY.slice(0, 1), ids()).after.properties[1]?.address.state).toBe("WA");
});

test("the legal description of a list comes in with its property", () => {
  const { after } = listed(EMPTY, QUARRY, ids());
  expect(after.properties[0]?.legalDescription).toBe("LOT 5 BLK 2 QUARRY ADD");
});

test("a long name that a list writes last name first is said to be read with one last name", () => {
  const owner = "QUINTANILLA RIVAS MARIA DEL CARMEN";
  const { rows } = listed(EMPTY, [{ ...QUARRY[0], owner }], ids());
  expect(rows[0]?.said.join(" ")).toMatch(/read with one last name/);
  const comma = listed(
    EMPTY,
    [{ ...QUARRY[0], owner: "QUINTANILLA RIVAS, MARIA DEL CARMEN" }],
    ids(),
  );
  expect(comma.rows[0]?.said).toEqual([]);
});
