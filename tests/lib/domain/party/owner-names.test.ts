import { expect, test } from "vitest";
import { ownersNamed } from "#lib/domain/party/owner-names.ts";

/** Cells as lists of owners write them, with what a person reads in them. */
const LAST_FIRST: readonly (readonly [string, readonly string[]])[] = [
  ["BRANDVOLD OTTILIE", ["Ottilie Brandvold"]],
  ["BRANDVOLD OTTILIE M", ["Ottilie M Brandvold"]],
  ["BRANDVOLD, OTTILIE M.", ["Ottilie M. Brandvold"]],
  ["BRANDVOLD OTTILIE & EINAR", ["Ottilie Brandvold", "Einar Brandvold"]],
  ["BRANDVOLD OTTILIE M & EINAR J", ["Ottilie M Brandvold", "Einar J Brandvold"]],
  ["BRANDVOLD OTTILIE & PENA JESUS", ["Ottilie Brandvold", "Jesus Pena"]],
  ["DE LA CRUZ MARISOL", ["Marisol De La Cruz"]],
  ["MCDONALD SEAN JR", ["Sean McDonald Jr"]],
  ["O'BRIEN-HALE NORA", ["Nora O'Brien-Hale"]],
  ["BRANDVOLD OTTILIE; PENA JESUS", ["Ottilie Brandvold", "Jesus Pena"]],
  ["BRANDVOLD OTTILIE ET UX", ["Ottilie Brandvold"]],
  ["WINFIELD FAMILY TRUST", ["Winfield Family Trust"]],
  ["WINFIELD HAROLD TRUSTEE", ["Harold Winfield, trustee"]],
  ["WINFIELD HAROLD & JUNE TRUSTEES", ["Harold Winfield and June Winfield, trustees"]],
  ["WINFIELD HAROLD TTEE OF THE WINFIELD FAMILY TRUST", ["Winfield Family Trust"]],
  ["ESTATE OF HOLLOWAY BEATRIX", ["Estate of Beatrix Holloway"]],
  ["HOLLOWAY BEATRIX EST", ["Estate of Beatrix Holloway"]],
  ["SMITH & SONS LLC", ["Smith & Sons LLC"]],
  ["FENNEL ROW OWNERS ASSOCIATION", ["Fennel Row Owners Association"]],
  ["CITY OF QUILLHAVEN", ["City of Quillhaven"]],
  ["Ottilie Brandvold", ["Brandvold Ottilie"]],
  ["", []],
];

test.each(LAST_FIRST)("%s, family name first", (cell, names) => {
  expect(ownersNamed(cell, "last-first").owners.map(({ name }) => name)).toEqual(names);
});

const FIRST_LAST: readonly (readonly [string, readonly string[]])[] = [
  ["Ottilie Brandvold", ["Ottilie Brandvold"]],
  ["OTTILIE & EINAR BRANDVOLD", ["Ottilie Brandvold", "Einar Brandvold"]],
  ["Jesús Peña and Ottilie Brandvold", ["Jesús Peña", "Ottilie Brandvold"]],
  ["MARISOL DE LA CRUZ", ["Marisol De La Cruz"]],
  ["Brandvold, Ottilie", ["Ottilie Brandvold"]],
  ["Harold Winfield, Jr.", ["Harold Winfield Jr."]],
];

test.each(FIRST_LAST)("%s, given name first", (cell, names) => {
  expect(ownersNamed(cell, "first-last").owners.map(({ name }) => name)).toEqual(names);
});

test("owners who are not named are kept as that, and never become a name", () => {
  expect(ownersNamed("BRANDVOLD EINAR ET UX", "last-first")).toEqual({
    owners: [{ name: "Einar Brandvold", kind: "person", capacity: "" }],
    careOf: "",
    heldWith: "wife, not named",
    tenure: [],
  });
  expect(ownersNamed("PENA JESUS ET AL", "last-first").heldWith).toBe("others, not named");
});

test("care of, and how title is held, are taken off the name", () => {
  const cell = "BRANDVOLD OTTILIE & EINAR JTWROS C/O DUNMORE TAX SERVICE";
  expect(ownersNamed(cell, "last-first")).toEqual({
    owners: [
      { name: "Ottilie Brandvold", kind: "person", capacity: "" },
      { name: "Einar Brandvold", kind: "person", capacity: "" },
    ],
    careOf: "Dunmore Tax Service",
    heldWith: "",
    tenure: ["JTWROS"],
  });
  expect(ownersNamed("% JUNE WINFIELD", "first-last")).toMatchObject({
    owners: [],
    careOf: "June Winfield",
  });
});

test("who signs is told apart by what the owner is", () => {
  const kinds = (cell: string) =>
    ownersNamed(cell, "last-first").owners.map(({ kind, capacity }) => [kind, capacity]);
  expect(kinds("WINFIELD HAROLD TTEE OF THE WINFIELD FAMILY TRUST")).toEqual([
    ["trust", "trustee"],
  ]);
  expect(kinds("WINFIELD HAROLD TRUSTEE")).toEqual([["trust", ""]]);
  expect(kinds("QUILLHAVEN SCHOOL DIST")).toEqual([["public-body", ""]]);
  expect(kinds("HALE PROPERTIES")).toEqual([["firm", ""]]);
  expect(kinds("COOPER INCA")).toEqual([["person", ""]]);
});
