import { expect, test } from "vitest";
import { NO_STEPS, type Steps, stepBack, stepForth, stepFrom } from "#app/_components/steps.ts";

const NONE: Steps<string> = NO_STEPS;

test("a step back and forth again gives what was there", () => {
  const typed = stepFrom(stepFrom(NONE, "a", null), "b", null);
  const back = stepBack(typed, "c");
  expect(back?.value).toBe("b");
  const forth = back === null ? null : stepForth(back.steps, back.value);
  expect(forth?.value).toBe("c");
  expect(forth === null ? null : stepBack(forth.steps, "c")?.value).toBe("b");
});

test("letters typed on in one cell are one step, also after another cell", () => {
  const once = stepFrom(stepFrom(NONE, "", "row 1"), "1", "row 1");
  expect(once.past).toEqual([""]);
  expect(stepFrom(once, "16", "row 2").past).toEqual(["", "16"]);
});

test("a new change forgets what was undone", () => {
  const back = stepBack(stepFrom(NONE, "a", null), "b");
  const changed = stepFrom(back?.steps ?? NONE, "a", null);
  expect(stepForth(changed, "c")).toBeNull();
});

test("there is nothing to undo or redo at first", () => {
  expect(stepBack(NONE, "a")).toBeNull();
  expect(stepForth(NONE, "a")).toBeNull();
});
