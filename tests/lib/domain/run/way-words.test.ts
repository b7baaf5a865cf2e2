import { expect, test } from "vitest";
import { madeWords, resultWords } from "#lib/domain/run/way-words.ts";
import { anAnchor, aRun } from "#tests/support/file.ts";

const DOWN = aRun("run", { looks: "downstream" });
const BACK = aRun("run", { looks: "downstream", measuredFrom: "main" });

test("resultWords() says what a reading is: by the zero at the main, or by what the run is tied to", () => {
  expect(resultWords(BACK, [], 3_150)).toBe("31.5 ft on the counter is 31.5 ft from the main.");
  const main = anAnchor("run", { counter: 9_200, station: 0 });
  expect(resultWords(DOWN, [main], 3_150)).toBe("31.5 ft on the counter is 60.5 ft from the main.");
  expect(resultWords(DOWN, [], 3_150)).toBe(
    "31.5 ft on the counter is 31.5 ft from where the camera went in, toward the main. Once tied to a known point, it becomes feet from the main.",
  );
  expect(resultWords(aRun("run"), [], 3_150)).toContain("went in, up the line.");
});

test("resultWords() asks the other way where the known points run against what is said", () => {
  const rising = [
    anAnchor("run", { id: "a" }),
    anAnchor("run", { id: "b", counter: 4_000, station: 4_000 }),
  ];
  expect(resultWords(DOWN, rising, 3_150)).toContain(
    "The footage increases away from the main: measured from the main?",
  );
  expect(resultWords(BACK, rising, 3_150)).toBe("31.5 ft on the counter is 31.5 ft from the main.");
  const falling = [
    anAnchor("run", { id: "a", station: 4_000 }),
    anAnchor("run", { id: "b", counter: 4_000, station: 0 }),
  ];
  expect(resultWords(aRun("run"), falling, 3_150)).toContain("did the camera look downstream?");
  const main = anAnchor("run", { id: "m", counter: 9_200 });
  expect(resultWords(BACK, [main], 3_150)).toContain(
    "92.0 ft from the main would be station 92.0 ft, not 0.0 ft. Measured from where the camera went in?",
  );
});

test("madeWords() says how a run was made, whose sides are flipped, and what a turning head is worth", () => {
  expect(madeWords({ ...BACK, selfLeveling: "no" })).toBe(
    "Looked downstream, its footage measured from the main. Its left is the right side looking upstream. The head turns, so its clock positions are kept as unsure and do not set a side.",
  );
  expect(madeWords({ ...aRun("run"), selfLeveling: "yes" })).toBe(
    "Looked upstream, its footage measured from where the camera went in. Self-leveling head.",
  );
});
