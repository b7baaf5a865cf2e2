import { expect, test } from "vitest";
import type { DueThing } from "#lib/domain/desk/answer.ts";
import { deskSentence } from "#lib/domain/desk/desk-sentence.ts";

const thing = (kind: DueThing["kind"]): DueThing => ({
  lineId: "l",
  sentence: kind,
  on: null,
  kind,
  question: "told",
});

test("deskSentence() says what is due over all lines, and of none that they are open", () => {
  expect(deskSentence([], { open: 0, closed: 0 })).toBe("No line is open yet");
  expect(deskSentence([], { open: 0, closed: 1 })).toBe("No line is open; 1 line closed");
  expect(deskSentence([], { open: 2, closed: 1 })).toBe("Nothing is due on the 2 open lines");
  expect(deskSentence([thing("late"), thing("due")], { open: 1, closed: 0 })).toBe(
    "1 thing is late, 1 is due within a week",
  );
  expect(deskSentence([thing("due")], { open: 0, closed: 1 })).toBe("1 is due within a week");
});
