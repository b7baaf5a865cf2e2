import { expect, test } from "vitest";
import {
  clockWords,
  KIND_KEYS,
  type PressedKey,
  videoCommand,
} from "#app/lines/[lineId]/camera/video-keys.ts";
import { OBSERVATION_KINDS } from "#lib/domain/facts/run.ts";

function press(key: string, held: Partial<PressedKey> = {}): PressedKey {
  return { key, shiftKey: false, ctrlKey: false, metaKey: false, altKey: false, ...held };
}

test("videoCommand() has a letter of its own for each thing that can be seen", () => {
  const letters = KIND_KEYS.map(([letter]) => letter);
  expect(new Set(letters).size).toBe(letters.length);
  expect(KIND_KEYS.map(([, kind]) => kind).toSorted()).toEqual(OBSERVATION_KINDS.toSorted());
  for (const [letter, kind] of KIND_KEYS) {
    expect(videoCommand(press(letter))).toEqual({ do: "log", kind });
    expect(videoCommand(press(letter.toUpperCase()))).toEqual({ do: "log", kind });
  }
  expect(letters).not.toContain("g");
});

test("videoCommand() steps by 1 s, 5 s and one picture, and leaves the browser its own keys", () => {
  expect(videoCommand(press(" "))).toEqual({ do: "play" });
  expect(videoCommand(press("ArrowLeft"))).toEqual({ do: "step", seconds: -1 });
  expect(videoCommand(press("ArrowRight", { shiftKey: true }))).toEqual({ do: "step", seconds: 5 });
  expect(videoCommand(press("."))).toEqual({ do: "step", seconds: 1 / 30 });
  expect(videoCommand(press("+", { shiftKey: true }))).toEqual({ do: "speed", by: 1 });
  expect(videoCommand(press("g"))).toEqual({ do: "still" });
  for (const own of [press("f", { ctrlKey: true }), press("r", { metaKey: true }), press("Tab")])
    expect(videoCommand(own)).toBeNull();
});

test("clockWords() shows tenths, and hours only where there are any", () => {
  expect(clockWords(0)).toBe("0:00.0");
  expect(clockWords(178.46)).toBe("2:58.4");
  expect(clockWords(0.3)).toBe("0:00.3");
  expect(clockWords(3_725)).toBe("1:02:05.0");
});
