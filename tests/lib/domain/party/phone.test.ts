import { expect, test } from "vitest";
import { formatPhone, phoneProblem } from "#lib/domain/party/phone.ts";

test.each([
  ["3605550100", "(360) 555-0100"],
  ["360-555-0100", "(360) 555-0100"],
  ["360.555.0100", "(360) 555-0100"],
  ["+1 (360) 555 0100", "(360) 555-0100"],
  ["1-360-555-0100", "(360) 555-0100"],
  ["360 555 0100 x12", "(360) 555-0100 ext. 12"],
  ["360 555 0100 ext. 12", "(360) 555-0100 ext. 12"],
  ["+52 55 5555 0100", "+52 55 5555 0100"],
  ["ask at the desk", "ask at the desk"],
  ["", ""],
])("formatPhone(%j) is %j", (typed, shown) => {
  expect(formatPhone(typed)).toBe(shown);
});

test.each(["5550142", "360555010", "36055501001", "(060) 555-0100", "call me"])(
  "phoneProblem(%j) says how to write a number",
  (typed) => {
    expect(phoneProblem(typed)).toContain("area code, as (360) 555-0100");
  },
);

test.each(["", "(360) 555-0100", "1 360 555 0100", "+52 55 5555 0100", "360 555 0100 ext 4"])(
  "phoneProblem(%j) has nothing to say",
  (typed) => {
    expect(phoneProblem(typed)).toBeNull();
  },
);
