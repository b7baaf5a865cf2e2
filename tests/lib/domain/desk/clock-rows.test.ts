import { expect, test } from "vitest";
import { clocksOf } from "#lib/domain/clocks/clocks.ts";
import { clockRows } from "#lib/domain/desk/clock-rows.ts";
import { clockWords, runningClocks } from "#lib/domain/desk/clock-words.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import {
  aClockRule,
  aDelivery,
  aFile,
  aNotice,
  anAuthority,
  aParty,
  aReply,
} from "#tests/support/file.ts";

const TODAY = "2026-11-25";
const NAMES = ["ann", "bo", "cy"];
const RULE = aClockRule("Answer within 14 days", { count: 14, roll: "none", citation: "Office 3" });

/** Findings of November 20 to three people, each asking for a reply by December 4. */
function letters(facts: Partial<LineFile> = {}, rules = [RULE]): LineFile {
  const { line: _line, ...rest } = aFile({
    parties: NAMES.map((name) => aParty(name)),
    notices: NAMES.map((name) =>
      aNotice(name, { partyId: name, propertyId: name, state: "sent", replyBy: "2026-12-04" }),
    ),
    deliveries: NAMES.map((name) => aDelivery(`d-${name}`, name, { sentOn: "2026-11-20" })),
    ...facts,
  });
  return { ...rest, authority: anAuthority({ clockRules: rules }), line: aFile().line };
}

function rowsOf(file: LineFile) {
  return clockRows(file, clocksOf(file, TODAY)).map(({ title, sentence, citation, settled }) => [
    title,
    sentence,
    citation,
    settled,
  ]);
}

test("clockRows() tells replies that are due the same day as one, with the rule that says the day", () => {
  expect(clocksOf(letters(), TODAY)).toHaveLength(4);
  expect(rowsOf(letters())).toEqual([
    [
      "Replies from ann, bo and cy",
      "3 letters of Friday, November 20, 2026 ask for a reply by Friday, December 4, 2026. Answer within 14 days: 14 calendar days after Friday, November 20, 2026 is Friday, December 4.",
      "Office 3",
      false,
    ],
  ]);
});

test("clockRows() keeps apart what is answered, and a rule that says another day", () => {
  const answered = letters({ replies: [aReply("r", "bo")] });
  expect(rowsOf(answered).map(([title, , , settled]) => [title, settled])).toEqual([
    ["Replies from ann and cy", false],
    ["Reply from bo", true],
  ]);
  const other = letters({}, [{ ...RULE, count: 20 }]);
  expect(rowsOf(other).map(([title]) => title)).toEqual([
    "Replies from ann, bo and cy",
    "Answer within 14 days (3 letters of November 20, 2026)",
  ]);
  const [first, ...others] = letters().notices;
  const notices = [{ ...first, replyBy: null } as typeof first, ...others].flatMap(
    (each) => each ?? [],
  );
  expect(rowsOf(letters({ notices })).map(([title]) => title)).toEqual([
    "Answer within 14 days (3 letters of November 20, 2026)",
    "Replies from bo and cy",
  ]);
});

test("the desk says calendar days of what was counted in calendar days, and no rule twice", () => {
  const said = (rules: (typeof RULE)[]) => {
    const file = letters({}, rules);
    return runningClocks(file, clocksOf(file, TODAY)).map((group) =>
      clockWords(file, group, TODAY),
    );
  };
  expect(said([RULE])).toEqual(["replies due on 3 letters in 9 days"]);
  const cure = aClockRule("Cure", { count: 14, roll: "none", event: "split-sent" });
  expect(said([cure])).toEqual(["replies due on 3 letters in 9 days"]);
  const business = { ...RULE, id: "b", title: "Object", count: 8, unit: "business-days" } as const;
  expect(said([business])).toEqual([
    "Object (3 letters of November 20, 2026): due in 5 business days",
    "replies due on 3 letters in 9 days",
  ]);
});

test("clockRows() counts many people in one row, whenever their letters went, and names them beneath", () => {
  const names = [...NAMES, "dee", "eli"];
  const file = letters({
    parties: names.map((name) => aParty(name)),
    notices: names.map((name) =>
      aNotice(name, { partyId: name, propertyId: name, state: "sent", replyBy: "2026-12-04" }),
    ),
    deliveries: names.map((name, at) =>
      aDelivery(`d-${name}`, name, { sentOn: at < 3 ? "2026-11-20" : "2026-11-23" }),
    ),
  });
  const [row, ...rest] = rowsOf(file).filter(([title]) => String(title).startsWith("Repl"));
  expect(rest).toEqual([]);
  expect(row?.slice(0, 2)).toEqual([
    "Replies from 5 people",
    expect.stringMatching(
      /^5 letters of Friday, November 20, 2026 and Monday, November 23, 2026 ask for a reply by Friday, December 4, 2026: ann, bo, cy, dee and eli\./,
    ),
  ]);
});
