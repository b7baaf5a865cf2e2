import { describe, expect, test } from "vitest";
import type { NarrationRun } from "#lib/domain/narration/footage/run-told.ts";
import { draftLog } from "#lib/domain/narration/log/draft-log.ts";

const DOWN: NarrationRun = { looks: "downstream", measuredFrom: null, mainCounter: null };

describe("where the talk begins is zero", () => {
  test("at the main, from which the footage is measured then", () => {
    const log = draftLog(
      "0:00 Camera's sitting in the main. I'll call this zero and bring her home.\n0:40 Roots.\n1:20 Twenty feet from the main, wye.",
      DOWN,
    );
    expect(log).toMatchObject({ measuredFrom: "main", mainCounter: 0 });
    expect(log.drafts[0]).toMatchObject({ fault: "roots", reading: "between" });
    expect(log.drafts[0]?.fromMain).toBeGreaterThan(700);
    expect(log.drafts[0]?.fromMain).toBeLessThan(1200);
  });

  test("at the main without the word zero", () => {
    const log = draftLog(
      "0:00 I'm at the main right now, coming back.\n0:30 Crack.\n1:00 Ten feet, wye.",
      DOWN,
    );
    expect(log.measuredFrom).toBe("main");
    expect(log.drafts[0]?.counter).toBeGreaterThan(300);
    expect(log.drafts[0]?.counter).toBeLessThan(700);
  });

  test("at the way in, and a reading at the main is a reading there", () => {
    const log = draftLog(
      "0:00 Going in at the house cleanout.\n0:30 Crack.\n1:00 Twenty feet, wye.\n2:00 Forty, that's the main.",
      DOWN,
    );
    expect(log).toMatchObject({ measuredFrom: "access", mainCounter: 4000 });
    expect(log.drafts[0]).toMatchObject({ fault: "crack", reading: "between" });
    expect(log.drafts[1]).toMatchObject({ counter: 2000, fromMain: 2000 });
  });
});

describe("beyond the last distance", () => {
  const text = (last: string) =>
    `0:00 Zero at the main.\n1:00 Ten feet, wye.\n2:00 Twenty feet, wye.\n3:00 Thirty feet, wye.\n4:00 ${last}`;

  test("a row is placed by the speed, and marked", () => {
    const crack = draftLog(text("There's a crack."), DOWN).drafts.at(-1);
    expect(crack).toMatchObject({ fault: "crack", reading: "beyond" });
    expect(Math.abs((crack?.counter ?? 0) - 4000)).toBeLessThan(200);
    expect(crack?.slack).toBeGreaterThanOrEqual(200);
  });

  test("the cleanout that nobody read a footage at is the way out, and no row", () => {
    expect(draftLog(text("And we're back at the cleanout."), DOWN).drafts).toHaveLength(3);
  });
});

test("what is told after the main was reached, or on the way back, is not placed by the speed", () => {
  const way = "0:00 Zero at the cleanout.\n1:00 Ten feet, wye.\n2:00 Twenty feet, wye.";
  const after = (text: string) => draftLog(`${way}\n${text}`, DOWN).drafts.at(-1);
  expect(after("2:20 There's a crack.")).toMatchObject({ fault: "crack", reading: "beyond" });
  expect(after("2:20 Backing up. There's a crack.")).toMatchObject({ counter: null });
  expect(after("3:00 Thirty, that's the main.\n3:20 There's a crack.")).toMatchObject({
    fault: "crack",
    counter: null,
  });
});

test("a steady speed narrows what a row between two distances may be off by", () => {
  const steady =
    "0:00 Zero.\n1:00 Ten feet, wye.\n2:00 Twenty feet, wye.\n3:00 Thirty feet, wye.\n3:30 Crack.\n4:00 Forty feet, wye.";
  const unsteady =
    "0:00 Zero.\n1:00 Two feet, wye.\n1:20 Twenty feet, wye.\n3:00 Thirty feet, wye.\n3:30 Crack.\n4:00 Forty feet, wye.";
  const slackIn = (text: string) =>
    draftLog(text, DOWN).drafts.find(({ fault }) => fault === "crack")?.slack ?? 0;
  expect(slackIn(steady)).toBeLessThan(300);
  expect(slackIn(unsteady)).toBeGreaterThan(slackIn(steady));
});

test("steps are counted on from what came before", () => {
  const log = draftLog(
    "Zero is the main. Coming back.\n\nWye at eleven and a quarter, right side.\n\nNext one is about nine feet past that, on the left, somebody knocked a hole and shoved a pipe in.\n\nTwo feet on there's a crack. Goes maybe four feet.",
    DOWN,
  );
  expect(log.drafts).toMatchObject([
    { kind: "tie-in", counter: 1125, clock: 3 },
    { kind: "tie-in", counter: 2025, clock: 9, fitting: "break-in" },
    { fault: "crack", counter: 2225, toCounter: 2625 },
  ]);
});
