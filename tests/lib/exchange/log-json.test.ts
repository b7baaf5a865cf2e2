import { spawnSync } from "node:child_process";
import { expect, test } from "vitest";

/** The command itself, as a person runs it. */
function log(args: readonly string[], input = "") {
  const done = spawnSync(process.execPath, ["lib/commands/line.mjs", "log", ...args], {
    encoding: "utf8",
    input,
  });
  expect(done.stderr).toBe("");
  return { status: done.status, answer: JSON.parse(done.stdout) };
}

const TALK = `0:00 We're at 904 Larkspur. Camera's in the main, this is zero, pulling back.
0:30 Twelve feet from the main, maybe a tap on the right, not on the permit.
1:00 Crack.
1:30 Twenty-four feet from the main, roots, blocking sixty percent.`;

test("line log prints the drafted log in feet, with what was set aside and why", () => {
  const { status, answer } = log(["-"], TALK);
  expect(status).toBe(0);
  expect(answer).toMatchObject({ measuredFrom: "main", looks: "downstream", problems: [] });
  expect(answer.rows).toMatchObject([
    {
      kind: "tie-in",
      fromMain: 12,
      counter: 12,
      uncertainty: 0,
      clock: 3,
      side: "left",
      second: 32,
      hedged: true,
      aboutRecord: "not on the permit",
    },
    { kind: "fault", fault: "crack", fromMain: 17.6, reading: "between", hedged: false },
    { kind: "fault", fault: "roots", fromMain: 24, quote: expect.stringContaining("roots") },
  ]);
  expect(answer.readings.map(({ counter }: { counter: number }) => counter)).toEqual([0, 12, 24]);
  expect(answer.setAside).toMatchObject([
    { words: "904", why: "a house or unit number" },
    { words: "sixty", why: "a percentage" },
  ]);
});

test("line log names everything of a row, also what was not told", () => {
  const { answer } = log(["-"], TALK);
  expect(Object.keys(answer)).toEqual(
    expect.arrayContaining(["rows", "measuredFrom", "readings", "setAside", "problems"]),
  );
  const named = ["kind", "fromMain", "counter", "uncertainty", "clock", "side", "fault"];
  const more = ["material", "diameter", "fitting", "quote", "second", "hedged", "aboutRecord"];
  for (const row of answer.rows)
    expect(Object.keys(row)).toEqual(expect.arrayContaining([...named, ...more]));
  const untold = log(["-"], "There's a tap at nine o'clock. Roots after that.").answer;
  expect(untold.rows[0]).toMatchObject({ fromMain: null, counter: null, second: null });
  expect(untold.rows[0].diameter).toBeNull();
});

test("line log takes which way the lens looks, and names what it cannot read with status 2", () => {
  const up = log(["-", "--looks", "upstream"], "0:10 Zero. 0:20 Ten feet, wye on the right.");
  expect(up.answer.rows[0]).toMatchObject({ clock: 3, side: "right" });
  for (const [args, input] of [
    [["-", "--looks", "sideways"], TALK],
    [["-"], " \n"],
    [["-"], "a\0b"],
    [["no-such-talk.vtt"], ""],
    [["-", "--today", "2026-11-25"], TALK],
    [[], ""],
  ] as const) {
    const { status, answer } = log(args, input);
    expect(status).toBe(2);
    expect(answer.problems).toHaveLength(1);
    expect(answer.problems[0].reason).not.toBe("");
  }
});
