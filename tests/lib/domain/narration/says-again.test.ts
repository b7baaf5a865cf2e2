import { expect, test } from "vitest";
import { draftLog } from "#lib/domain/narration/log/draft-log.ts";

// Whoever says one thing again and then goes on has not begun to sum up.

const RUN = { looks: "downstream", measuredFrom: null, mainCounter: null } as const;

function rows(again: string): string[] {
  const lines = [
    "Zero at the cleanout.",
    "At 12 there's a wye on the left.",
    "At 20.5 roots, all around the joint.",
    "Crack along the top at 31.",
    again,
    "At 38 the joint's open.",
    "At 44.5 there's a saddle on the right.",
    "Main's at 60.",
  ];
  return draftLog(lines.join("\n"), RUN).drafts.map(
    ({ kind, fault, counter }) => `${fault ?? kind} ${(counter ?? -100) / 100}`,
  );
}

test.each([
  "I'll say it again so nobody skims it, a crack at 31.",
  "Let me say that one more time for the people in back.",
  "I'll run through this again at the end.",
  "Let me go over that again, it's cracked, 31.",
  "In closing on that crack, it wants watching.",
  "I can read that back if you want it.",
  "To recap that one, cracked on top.",
])("%s", (again) => {
  expect(rows(again)).toEqual([
    "tie-in 12",
    "roots 20.5",
    "crack 31",
    "open-joint 38",
    "tie-in 44.5",
  ]);
});

test("what is gone through once more at the end makes no rows", () => {
  const again = "To recap. Wye at 12. Roots at 20.5. Crack at 31.";
  const lines = `Zero at the cleanout.\nAt 12 there's a wye on the left.\nRoots at 20.5.\nCrack at 31.\nMain's at 60.\n${again}`;
  expect(draftLog(lines, RUN).drafts).toHaveLength(3);
});
