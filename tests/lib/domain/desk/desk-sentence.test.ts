import { expect, test } from "vitest";
import type { Tallies } from "#lib/domain/desk/answer.ts";
import { deskSentence } from "#lib/domain/desk/desk-sentence.ts";

function said(tallies: Partial<Omit<Tallies, "on-the-desk">>): string {
  return deskSentence({
    open: 0,
    closed: 0,
    late: 0,
    due: 0,
    blocked: 0,
    waiting: 0,
    ...tallies,
  });
}

test("deskSentence() says what is due over all lines, and of none that they are open", () => {
  expect(said({})).toBe("No lines yet");
  expect(said({ closed: 1 })).toBe("No open lines; 1 line closed");
  expect(said({ open: 2, closed: 1 })).toBe("Nothing due on the 2 open lines");
  expect(said({ late: 1, due: 1, open: 1 })).toBe("1 item overdue, 1 due this week");
  expect(said({ due: 1, closed: 1 })).toBe("1 due this week");
});
