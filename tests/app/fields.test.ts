import { describe, expect, test } from "vitest";
import { z } from "zod";
import {
  asTyped,
  cents,
  checked,
  feetOrNull,
  fileOrNull,
  needed,
  numberOrNull,
  oneIn,
  oneInOr,
  oneInOrNull,
  packed,
  somePacked,
  someTexts,
  text,
  textOrNull,
  texts,
  twoIds,
  typedIn,
} from "#app/fields.ts";

function formOf(...fields: readonly (readonly [string, string | File])[]): FormData {
  const form = new FormData();
  for (const [name, value] of fields) form.append(name, value);
  return form;
}

/** What the fields make of a form, or the first complaint with its field. */
function readAs(shape: z.core.$ZodLooseShape, form: FormData): unknown {
  const result = z.object(shape).safeParse(typedIn(form));
  const issue = result.error?.issues[0];
  return result.success ? result.data : `${issue?.path.join(".")}: ${issue?.message}`;
}

describe("what a form sent", () => {
  test("a field that was not sent is empty text, no choice, no box, no file", () => {
    const shape = { text, asTyped, textOrNull, texts, checked, fileOrNull, numberOrNull };
    expect(readAs(shape, formOf())).toEqual({
      text: "",
      asTyped: "",
      textOrNull: null,
      texts: [],
      checked: false,
      fileOrNull: null,
      numberOrNull: null,
    });
  });

  test("text is trimmed, a password is not", () => {
    const form = formOf(["text", "  Ada "], ["password", " x "]);
    expect(readAs({ text, password: asTyped }, form)).toEqual({ text: "Ada", password: " x " });
  });

  test("a name that came twice is a list, and as one value its first", () => {
    const form = formOf(["id", "a"], ["id", "b"]);
    expect(readAs({ id: texts }, form)).toEqual({ id: ["a", "b"] });
    expect(readAs({ id: text }, form)).toEqual({ id: "a" });
  });

  test("a file where text is wanted is no text, and an empty file is none", () => {
    const form = formOf(["words", new File(["x"], "x.txt")], ["file", new File([], "")]);
    expect(readAs({ words: text, file: fileOrNull }, form)).toEqual({ words: "", file: null });
  });

  test("names of an object's own are fields like others", () => {
    const form = formOf(["__proto__", "x"], ["constructor", "y"]);
    expect(readAs({ text, constructor: text }, form)).toEqual({ text: "", constructor: "y" });
  });
});

describe("what is wrong is told beside its field, the first one first", () => {
  const shape = {
    kind: oneIn(["a", "b"], "Select the kind."),
    reason: needed("Enter a reason."),
    who: twoIds("Select who."),
    sum: cents((typed) => `“${typed}” is not an amount.`),
    at: feetOrNull("Enter feet."),
    some: someTexts("Check one."),
    maybe: oneInOrNull(["x"], "Select a code."),
  };
  const good = [
    ...[["kind", "a"] as const, ["reason", "So"] as const, ["who", "p q"] as const],
    ...[["sum", "$1,234.56"] as const, ["some", "s"] as const],
  ];

  test("a form without fault is read", () => {
    expect(readAs(shape, formOf(...good, ["at", "12.5"], ["maybe", "x"]))).toEqual({
      kind: "a",
      reason: "So",
      who: ["p", "q"],
      sum: 123_456,
      at: 1_250,
      some: ["s"],
      maybe: "x",
    });
  });

  test.each([
    ["kind", "c", "kind: Select the kind."],
    ["kind", "", "kind: Select the kind."],
    ["reason", " ", "reason: Enter a reason."],
    ["who", "p", "who: Select who."],
    ["sum", "ten", "sum: “ten” is not an amount."],
    ["sum", "", "sum: “” is not an amount."],
    ["at", "far", "at: Enter feet."],
    ["maybe", "y", "maybe: Select a code."],
  ])("%s as “%s”", (name, value, said) => {
    const others = good.filter(([each]) => each !== name);
    expect(readAs(shape, formOf([name, value], ...others))).toBe(said);
  });

  test("a list of which one is wanted", () => {
    const others = good.filter(([each]) => each !== "some");
    expect(readAs(shape, formOf(...others))).toBe("some: Check one.");
  });

  test("what is neither chosen nor known becomes what is meant then", () => {
    const role = oneInOr(["admin", "field"], "viewer");
    expect(readAs({ role }, formOf(["role", "boss"]))).toEqual({ role: "viewer" });
    expect(readAs({ role }, formOf(["role", "field"]))).toEqual({ role: "field" });
  });
});

describe("what a page packed into a field", () => {
  const pair = z.tuple([z.string(), z.string().nullable()]);
  const stale = "This page is out of date. Reload it and choose again.";

  test("is read as it was packed", () => {
    const form = formOf(["place", '["a",null]'], ["who", '["b","c"]'], ["who", '["d",null]']);
    expect(readAs({ place: packed(pair), who: somePacked(pair, "Choose one.") }, form)).toEqual({
      place: ["a", null],
      who: [
        ["b", "c"],
        ["d", null],
      ],
    });
  });

  test("is refused in words where something else was sent, and never thrown", () => {
    for (const sent of ["{", "null", "7", "[1,2]", '["a"]', '{"0":"a"}', "\u0000"]) {
      expect(readAs({ place: packed(pair) }, formOf(["place", sent]))).toBe(`place: ${stale}`);
      const two = formOf(["who", '["b","c"]'], ["who", sent]);
      expect(readAs({ who: somePacked(pair, "Choose one.") }, two)).toBe(`who: ${stale}`);
    }
    expect(readAs({ who: somePacked(pair, "Choose one.") }, formOf())).toBe("who: Choose one.");
  });
});
