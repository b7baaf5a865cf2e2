import { expect, test } from "vitest";
import { nameDoubt, personsOf } from "#lib/domain/consent/signer-name.ts";

function doubt(name: string, ...typed: string[]) {
  return nameDoubt({ name, kind: "person" }, { typed, capacity: "" });
}

test("nameDoubt() takes the party's own name, however it is written", () => {
  const same: readonly (readonly [string, string])[] = [
    ["Walter Penhallow", "Walter Penhallow"],
    ["Walter Penhallow", "  walter   PENHALLOW "],
    ["Walter Penhallow", "Mr. Walter Penhallow"],
    ["Walter Penhallow", "Walter J. Penhallow"],
    ["Walter James Penhallow", "Walter Penhallow"],
    ["Walter James Penhallow", "Walter J Penhallow"],
    ["W. Penhallow", "Walter Penhallow"],
    ["Penhallow, Walter", "Walter Penhallow"],
    ["Jesús Peña", "Jesus Pena"],
    ["Joaquín Ibarra López", "Joaquín Ibarra"],
    ["Joaquín Ibarra", "Joaquin Ibarra Lopez"],
    ["June Ostrander", "June Smith-Ostrander"],
    ["Siobhan O’Brien", "Siobhan O'Brien"],
    ["José Ortega y Gasset", "José Ortega y Gasset"],
    ["Homer Lindqvist, Jr.", "Homer Lindqvist Jr"],
    ["Homer Lindqvist Jr.", "Homer Lindqvist"],
    ["Ξένια Παπαδάκη", "ΞΕΝΙΑ ΠΑΠΑΔΑΚΗ"],
    ["Teller", "Teller"],
  ];
  for (const [inFile, typed] of same)
    expect(doubt(inFile, typed), `${inFile} / ${typed}`).toBeNull();
});

test("nameDoubt() has a person look at any other name", () => {
  const other: readonly (readonly [string, string])[] = [
    ["Walter Penhallow", "Somebody Else Entirely"],
    ["Walter Penhallow", "Wilma Penhallow"],
    ["Walter Penhallow", "Walter Pennington"],
    ["Walter Penhallow", "W. Penhallow"],
    ["Walter Penhallow", "WP"],
    ["Walter Penhallow", "Walter"],
    ["Walter Penhallow", "Penhallow"],
    ["Robert Stone", "Bob Stone"],
    ["June Marie Ostrander", "June Ann Ostrander"],
    ["Homer Lindqvist Sr.", "Homer Lindqvist Jr."],
    ["Walter Penhallow", "Walter and Wilma Penhallow"],
    ["Walter Penhallow", "Penhallow Walter"],
  ];
  for (const [inFile, typed] of other)
    expect(doubt(inFile, typed), `${inFile} / ${typed}`).toBe("other-name");
});

test("nameDoubt() wants every one of several people who are one party, each in a name of their own", () => {
  const couple = "Rafael and June Ostrander";
  expect(doubt(couple, "Rafael Ostrander", "June Ostrander")).toBeNull();
  expect(doubt(couple, "june m. ostrander", "RAFAEL OSTRANDER")).toBeNull();
  expect(doubt(couple, "June Ostrander")).toBe("not-all");
  expect(doubt(couple, "June Ostrander", " ")).toBe("not-all");
  // One line with both names is one person's typing.
  expect(doubt(couple, "Rafael and June Ostrander")).toBe("other-name");
  expect(doubt(couple, "June Ostrander", "June Ostrander")).toBe("other-name");
  expect(doubt(couple, "June Ostrander", "Somebody Else")).toBe("other-name");
  expect(doubt(couple, "Somebody Else Entirely")).toBe("other-name");
});

test("nameDoubt() never takes one who signs for owners whom nobody names", () => {
  expect(doubt("June Ostrander et al", "June Ostrander")).not.toBeNull();
  expect(doubt("Rafael Ostrander et ux.", "Rafael Ostrander")).not.toBeNull();
});

test("personsOf() knows one from several", () => {
  const people = (name: string) => personsOf({ name, kind: "person" });
  expect(people("Rafael and June Ostrander")).toEqual(["Rafael Ostrander", "June Ostrander"]);
  expect(people("Rafael & June Ostrander, husband and wife")).toEqual([
    "Rafael Ostrander",
    "June Ostrander",
  ]);
  expect(people("Ingrid Tolliver and Paul Vance")).toEqual(["Ingrid Tolliver", "Paul Vance"]);
  expect(people("Joaquín y Marisol Ibarra")).toEqual(["Joaquín Ibarra", "Marisol Ibarra"]);
  expect(people("Joaquín Ibarra y Marisol Quintero")).toEqual([
    "Joaquín Ibarra",
    "Marisol Quintero",
  ]);
  expect(people("José Ortega y Gasset")).toEqual(["José Ortega y Gasset"]);
  expect(people("Ana Ruiz, Bea Ruiz and Carla Ruiz")).toEqual([
    "Ana Ruiz",
    "Bea Ruiz",
    "Carla Ruiz",
  ]);
  expect(people("Rafael J. and June Ostrander")).toEqual(["Rafael J. Ostrander", "June Ostrander"]);
  expect(people("Homer Lindqvist, Jr.")).toEqual(["Homer Lindqvist, Jr."]);
  expect(people("Sandy Anderson")).toEqual(["Sandy Anderson"]);
  expect(personsOf({ name: "Stone and Sons LLC", kind: "firm" })).toEqual([]);
});

test("nameDoubt() has a person look at who signs for a trust or a firm, unless the file names them", () => {
  const firm = { name: "Larkspur Holdings LLC", kind: "firm" } as const;
  const signs = (typed: string, capacity = "") => nameDoubt(firm, { typed: [typed], capacity });
  expect(signs("Mara Lindt for Larkspur Holdings LLC")).toBe("signs-for-another");
  expect(signs("Mara Lindt", "managing member")).toBe("signs-for-another");
  expect(signs("Larkspur Holdings LLC", "managing member Mara Lindt")).toBe("signs-for-another");
  expect(signs("Mara Lindt", "managing member Mara Lindt")).toBeNull();
  expect(signs("Mara Lindt, managing member", "managing member Mara Lindt")).toBeNull();
  expect(signs("by Mara Lindt for Larkspur Holdings LLC", "Mara Lindt, manager")).toBeNull();
  expect(signs("Lindt", "managing member Mara Lindt")).toBe("signs-for-another");
});
