import { expect, test } from "vitest";
import { saidAtDoor } from "#app/lines/[lineId]/schedule/roll-call/door-words.ts";

test("what was said at a door stands with who said it, and no colon before nothing", () => {
  expect(saidAtDoor({ spokeWith: "Ana Ruiz", words: "Fine with me" })).toBe(
    "Ana Ruiz: “Fine with me”",
  );
  expect(saidAtDoor({ spokeWith: "Ana Ruiz", words: "" })).toBe("Spoke with Ana Ruiz.");
  expect(saidAtDoor({ spokeWith: "", words: "Fine with me" })).toBe("“Fine with me”");
  expect(saidAtDoor({ spokeWith: "", words: "" })).toBe("");
});
