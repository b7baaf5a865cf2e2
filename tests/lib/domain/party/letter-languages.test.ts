import { describe, expect, test } from "vitest";
import { languagesOfAll, letterLanguages } from "#lib/domain/party/letter-languages.ts";

const PLAIN = { property: { bothLanguages: false }, office: { bothLanguages: false } };
const AT_BOTH = { ...PLAIN, property: { bothLanguages: true } };
const OFFICE_BOTH = { ...PLAIN, office: { bothLanguages: true } };

function person(language: "en" | "es" | "both" | "unknown") {
  return { kind: "person", language } as const;
}

describe("letterLanguages()", () => {
  test("letterLanguages() is the reader's own language, English where nobody asked", () => {
    expect(letterLanguages(person("en"), PLAIN)).toEqual({ language: "en", alsoIn: null });
    expect(letterLanguages(person("es"), PLAIN)).toEqual({ language: "es", alsoIn: null });
    expect(letterLanguages(person("unknown"), PLAIN)).toEqual({ language: "en", alsoIn: null });
  });

  test("letterLanguages() is both where the reader or the property asks for both", () => {
    expect(letterLanguages(person("both"), PLAIN)).toEqual({ language: "en", alsoIn: "es" });
    expect(letterLanguages(person("en"), AT_BOTH)).toEqual({ language: "en", alsoIn: "es" });
    expect(letterLanguages(person("es"), AT_BOTH)).toEqual({ language: "es", alsoIn: "en" });
  });

  test("letterLanguages() is both for who was never asked where the office says so, for nobody else", () => {
    expect(letterLanguages(person("unknown"), OFFICE_BOTH).alsoIn).toBe("es");
    expect(letterLanguages(person("en"), OFFICE_BOTH).alsoIn).toBeNull();
    expect(letterLanguages(person("es"), { ...OFFICE_BOTH, property: null }).alsoIn).toBeNull();
    const city = { kind: "public-body", language: "unknown" } as const;
    expect(letterLanguages(city, OFFICE_BOTH).alsoIn).toBeNull();
  });
});

test("languagesOfAll() is each language that one of the readers wants, the first reader's first", () => {
  expect(languagesOfAll([], PLAIN)).toEqual(["en"]);
  expect(languagesOfAll([person("es"), person("en")], PLAIN)).toEqual(["es", "en"]);
  expect(languagesOfAll([person("en"), person("en")], PLAIN)).toEqual(["en"]);
  expect(languagesOfAll([person("en"), person("both")], PLAIN)).toEqual(["en", "es"]);
});
