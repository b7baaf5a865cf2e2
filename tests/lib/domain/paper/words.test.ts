import { expect, test } from "vitest";
import { LINK_WORDS } from "#lib/domain/consent/words.ts";
import { LEDGER_WORDS } from "#lib/domain/ledger/words.ts";
import { STATEMENT_WORDS } from "#lib/domain/paper/statement-words.ts";
import { EN } from "#lib/domain/paper/words-en.ts";
import { ES } from "#lib/domain/paper/words-es.ts";
import { letterDay, letterWeekday } from "#lib/domain/time/letter-day.ts";

function sentences(words: unknown, path = ""): [string, string][] {
  if (typeof words === "string") return [[path, words]];
  if (typeof words === "function") return [[path, spoken(words)]];
  if (words === null || typeof words !== "object") return [];
  return Object.entries(words).flatMap(([key, part]) => sentences(part, `${path}.${key}`));
}

/** A function's sentence with stand-ins; numbers and lists where it wants them. */
function spoken(words: { readonly length: number }): string {
  const call = words as unknown as (...args: unknown[]) => unknown;
  for (const stand of ["A", 2, ["A"], "2026-11-25"]) {
    try {
      return JSON.stringify(call(...Array.from({ length: words.length }, () => stand)));
    } catch {}
  }
  return "";
}

test("every sentence is there in both languages, and none was left in English", () => {
  const english = new Map(sentences(EN));
  const spanish = new Map(sentences(ES));
  expect([...spanish.keys()]).toEqual([...english.keys()]);
  const same = [...english].filter(
    ([path, text]) => /[a-z]{3}/.test(text) && spanish.get(path) === text,
  );
  expect(same.map(([path]) => path)).toEqual([".inquiry.material"]);
});

test("to a neighbor a branch joins at a connection, and by no other name", () => {
  const said = [EN, STATEMENT_WORDS.en, LEDGER_WORDS.en, LINK_WORDS.en].flatMap((words) =>
    sentences(words),
  );
  expect(said.filter(([, text]) => /\btie-ins?\b|\btaps?\b/i.test(text))).toEqual([]);
  expect(said.some(([, text]) => /\bconnections?\b/.test(text))).toBe(true);
});

test("Spanish says what an office in the United States writes, in every catalogue", () => {
  // A notary public is no “notario”: Cal. Gov. Code 8219.5 forbids the literal translation.
  const wrong =
    /[Nn]otario|\b[Ii]mportes?\b|\bratón\b|n\.º|\bJuntos\b|fiarse|propio consejo|A la atención/;
  for (const words of [ES, LINK_WORDS.es, STATEMENT_WORDS.es, LEDGER_WORDS.es])
    for (const [path, text] of sentences(words)) expect(`${path} ${text}`).not.toMatch(wrong);
});

test("letterDay() writes a day as each language does", () => {
  expect(letterDay("2026-03-01", "en")).toBe("March 1, 2026");
  expect(letterDay("2026-03-01", "es")).toBe("1 de marzo de 2026");
});

test("letterWeekday() names the weekday", () => {
  expect(letterWeekday("2026-11-25", "en")).toBe("Wednesday, November 25, 2026");
  expect(letterWeekday("2026-11-25", "es")).toBe("miércoles 25 de noviembre de 2026");
});

test("list() joins names as each language does, also before an i", () => {
  expect(EN.list(["a", "b"])).toBe("a and b");
  expect(EN.list(["a", "b", "c"])).toBe("a, b, and c");
  expect(ES.list(["Ana", "Íñigo", "Iris"])).toBe("Ana, Íñigo e Iris");
  expect(ES.list(["uno", "dos"])).toBe("uno y dos");
});

test("English letters and statements keep to an American office's words", () => {
  const against =
    /\b(?:some|no|any|every)body\b|\b(?:stretch|mend|licence|neighbours?|colour|telephone|pencil|fault|notaris\w+|in hand|answers for|proven dead)\b/i;
  const found = [...sentences(EN), ...sentences(STATEMENT_WORDS.en)].filter(([, text]) =>
    against.test(text),
  );
  expect(found).toEqual([]);
});

test("Spanish letters and statements use one word for one thing", () => {
  const against = /dueñ[oa]|importe|cantidad|\bRegistro:|a pedido|\bpapeles\b/;
  const found = [...sentences(ES), ...sentences(STATEMENT_WORDS.es)].filter(([, text]) =>
    against.test(text),
  );
  expect(found).toEqual([]);
});
