import { expect, test } from "vitest";
import { draftLog } from "#lib/domain/narration/log/draft-log.ts";

// What the counter reads at the main decides where everything told from the main lies: it is taken
// where the camera came there, as exactly as it was read off, and from nothing else.

const RUN = { looks: "downstream", measuredFrom: null, mainCounter: null } as const;

function mainOf(end: string): number | null {
  const talk = `0:02 Cleanout, zero.\n0:40 Wye on the left, ten.\n1:40 Crack at thirty-five.\n3:20 ${end}`;
  const { mainCounter } = draftLog(talk, RUN);
  return mainCounter === null ? null : mainCounter / 100;
}

test.each([
  [86.2, "Eighty-six and there's the main. Eighty-six two."],
  [86.3, "Main at 86 feet. 86.3 if you want to be fussy."],
  [86.4, "Okay that's the main, eighty-six. Call it eighty-six point four."],
  [86, "That's the main, eighty-six."],
  [82, "And I made it to the main, that's eighty-two even."],
  [82, "Got to the main at eighty-two."],
  [82, "We came to the main, eighty-two."],
  [61.9, "And there's the city, 61.9."],
  [61.9, "This is the city, sixty-one nine."],
  [86.2, "city at 86.2"],
])("the main lies at %s: %s", (feet, end) => {
  expect(mainOf(end)).toBe(feet);
});

test.each([
  "Fifty-seven point six, root ball, I can't get by. The main itself was not seen.",
  "Fifty-seven six, I can't get by. Main never reached.",
  "Fifty-seven six and I can't push any farther. The main wasn't in view.",
  "Fifty-seven six, solid. We didn't make it to the main.",
])("nobody came to the main: %s", (end) => {
  expect(mainOf(end)).toBeNull();
});
