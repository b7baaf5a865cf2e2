import fc from "fast-check";
import { expect, test } from "vitest";
import { parseWording, WORDING_FIELDS } from "#lib/domain/wording/parse-wording.ts";

test("paragraphs, headings, lists and fields are read", () => {
  const text =
    "Dear {reader},\nwe write about {Reply By}.\n\n# Next\n- one\n- {place}\n{facts}\nBye";
  expect(parseWording(text)).toEqual({
    ok: true,
    value: [
      {
        kind: "paragraph",
        pieces: [
          "Dear ",
          { field: "reader" },
          ",",
          " ",
          "we write about ",
          { field: "reply by" },
          ".",
        ],
      },
      { kind: "heading", pieces: ["Next"] },
      { kind: "list", lines: [["one"], [{ field: "place" }]] },
      { kind: "facts" },
      { kind: "paragraph", pieces: ["Bye"] },
    ],
  });
});

test.each([
  ["a\n\n{amount owed}\n\n{facts}", 3, "There is no field {amount owed}"],
  ["{facts}\nSee {facts}", 2, "{facts} has to stand alone on its line."],
  ["{facts}\n\n{reply by", 3, "A brace is not closed"],
  ["Hello", null, "{facts} is missing"],
  ["{facts}\n\n{facts}", null, "{facts} may stand only once"],
  ["x".repeat(9_000), null, "more than 8000 characters"],
])("%j is refused with its line and reason", (text, line, reason) => {
  const parsed = parseWording(text);
  expect(parsed.ok).toBe(false);
  if (!parsed.ok)
    expect(parsed.error).toContainEqual({ line, reason: expect.stringContaining(reason) });
});

test("whatever is typed is read or refused, and words are never lost", () => {
  fc.assert(
    fc.property(
      fc.array(fc.constantFrom("a b", "{place}", "- x", "# h", "", "{", "é")),
      (lines) => {
        const parsed = parseWording(["{facts}", ...lines].join("\n"));
        if (!parsed.ok) return lines.includes("{");
        const said = JSON.stringify(parsed.value);
        return lines.every(
          (line) => line === "" || said.includes(line.replace(/^[-#] |[{}]/g, "")),
        );
      },
    ),
  );
});

test("every field is named once", () => {
  expect(new Set(WORDING_FIELDS).size).toBe(WORDING_FIELDS.length);
});
