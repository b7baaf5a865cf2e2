import { describe, expect, test } from "vitest";
import { draftLog } from "#lib/domain/narration/log/draft-log.ts";

// On the way back what goes on is told from its far end: the row has both, the smaller first.

const STRETCHES = `
  Fifty-eight, and now the bottom gets sandy, there's sand laying in it, and that runs back to fifty-three or so. => deposit 53-58
  Sixty, it's holding water from right at sixty back to fifty-six, and it's a sag. => belly 56-60
  It's scale in the bottom, I'd say it's that way from sixty back to about fifty-one. => deposit 51-60
  Fifty-three and a half, it's cracked along the bottom. It just runs on through to fifty. => crack 50-53.5
  Sixty-two, the wall's all pitted, and it's pitted on back to fifty-five. => worn-surface 55-62
  There's grease in here from sixty-one coming back to fifty-four. => deposit 54-61
  Sixty-one, it's out of round, egg shaped, and it stays like that till fifty-four. => deformed 54-61
  Sixty-three, roots, and they follow us back to about fifty-eight. => roots 58-63
  Sixty-two, long crack on top, goes from there on up to fifty-seven. => crack 57-62
  Sixty, there's a belly here, and it holds water clear back to fifty-two. => belly 52-60
  Sixty-four feet, gravel in the bottom and it don't quit until fifty-nine. => deposit 59-64
  Sixty-three, we're in water. It carries down to fifty-six. => water 56-63
  Sixty-two, there's mud. You've got mud from there to fifty-five. => deposit 55-62
  It's cracked from sixty-four to sixty, right along the crown. => crack 60-64
  Fifty-nine, scale starts, and it'll be with us till fifty-one. => deposit 51-59`;

/** What is told of the joint of two pipes lies where the pipe changed, however long it is talked over. */
const AT_THE_CHANGE = `
  Fifty, and here's new pipe, PVC. | They've got the two ends shoved up with a gap, though. | The joint's open, right there where it changes. => open-joint 50
  Fifty, the clay quits and it's white plastic. | They used a rubber band on it. | So you've got an offset there where the two meet. => offset-joint 50
  Fifty, it goes to cast iron. | It's set a hair low, so there's an offset at that transition. => offset-joint 50
  Fifty and we're in clay now. | Somebody did that by hand. | That joint's offset where they hooked it up. => offset-joint 50
  Fifty, plastic now. | Well, that's something. | There's roots where the clay and the plastic come together. => roots 50
  Fifty, here's cast iron. | Used to be nobody had a coupling. | Water's seeping in where the iron starts. => infiltration 50
  Fifty, it turns to concrete. | You see that, don't you? | It's broke right at the coupling. => broken 50
  Fifty, now it's PVC. | Cheap job. | There's an offset at the fernco. => offset-joint 50
  Fifty, now it's PVC. | Cheap job, and the camera bumps. | Forty-seven, there's roots at the coupling they put in. => roots 47`;

/** The pipe that is told at the main, before anything else is read off, begins there. */
const FIRST_PIPE = `
  So I'm pulling back now, the pipe is clay, six inch. => vitrified-clay 79
  All right, coming back. Clay pipe, six-inch. => vitrified-clay 79
  Now we're heading home. It's cast iron out here. => cast-iron 79
  Okay, bringing it back now. This is PVC at this end. => pvc 79
  Let me back up now. What you've got is concrete. => concrete 79`;

/** Read off where the camera comes out: the cleanout of a pull-back whose footage was set at the main. */
const WAY_OUT = `
  Sixty-six point two, and here I come up out of your cleanout. => 66.2
  And I came out at the cleanout at sixty-six. => 66
  Sixty-six feet, popped out of the cleanout. => 66
  Coming up out of the cleanout now, that's sixty-six. => 66
  Sixty-six, and we come out through your cleanout. => 66`;

interface Stretch {
  readonly said: string;
  readonly row: string;
}

function stretchesIn(text: string): Stretch[] {
  return text
    .trim()
    .split("\n")
    .map((line) => {
      const [said = "", row = ""] = line.trim().split(" => ");
      return { said, row };
    });
}

const bare = (line: string) => line.toLowerCase().replace(/[.,!?;…—]/g, "");

/** Six seconds a sentence, or a caption of as many words as a phone sets in a line. */
function captions(sentences: readonly string[], way: (line: string) => string): string {
  const cues = sentences.map((line, at) => {
    const second = 10 + at * 40;
    const end = second + 4 + Math.round(line.length / 15);
    return `${stamp(second)} --> ${stamp(end)}\n${way(line)}\n`;
  });
  return `WEBVTT\n\n${cues.join("\n")}`;
}

function stamp(second: number): string {
  const [minutes, seconds] = [Math.floor(second / 60), second % 60];
  return `00:${String(minutes).padStart(2, "0")}:${String(seconds).padStart(2, "0")}.000`;
}

const run = { looks: "downstream", measuredFrom: null, mainCounter: null } as const;

function draftsOf(talk: readonly string[], way: (line: string) => string) {
  return draftLog(captions(talk, way), run).drafts;
}

function rowsOf(said: string, way: (line: string) => string): string[] {
  const talk = [
    "Went in at the cleanout and I'm at the main, seventy-nine feet. Coming back now.",
    "Seventy-two, wye on the left.",
    said,
    "Forty-four, tee on the right.",
    "Thirty-one, joint's offset.",
    "And I'm out, zero.",
  ];
  return draftsOf(talk, way)
    .filter(({ kind, fault }) => !/^(tie-in|offset-joint)$/.test(fault ?? kind))
    .map(({ kind, fault, counter, toCounter }) => {
      const to = toCounter === null ? "" : `-${toCounter / 100}`;
      return `${fault ?? kind} ${(counter ?? -100) / 100}${to}`;
    });
}

describe("a stretch told on the way back", () => {
  test.each(stretchesIn(STRETCHES))("$said", ({ said, row }) => {
    for (const way of [(line: string) => line, bare]) expect(rowsOf(said, way)).toEqual([row]);
  });
});

const BOTH = [(line: string) => line, bare];

describe("told of the change", () => {
  test.each(stretchesIn(AT_THE_CHANGE))("$said", ({ said, row }) => {
    for (const way of BOTH) {
      const talk = ["At the main, seventy-nine. Coming back.", ...said.split(" | "), "Zero, out."];
      const second = (line: string) => way(line);
      const faults = draftsOf(talk, second).filter(({ kind }) => kind === "fault");
      expect(faults.map(({ fault, counter }) => `${fault} ${(counter ?? -100) / 100}`)).toEqual([
        row,
      ]);
    }
  });
});

describe("the first pipe of a way back", () => {
  test.each(stretchesIn(FIRST_PIPE))("$said", ({ said, row }) => {
    for (const way of BOTH) {
      const start = "Went in at the cleanout, and I'm at the main, seventy-nine feet.";
      const talk = [start, said, "Seventy-two, wye on the left.", "Thirty, roots.", "Zero, out."];
      const [pipe] = draftsOf(talk, way).filter(({ kind }) => kind === "material");
      expect(`${pipe?.material} ${(pipe?.counter ?? -100) / 100}`).toBe(row);
    }
  });
});

describe("the cleanout where the camera comes out", () => {
  test.each(stretchesIn(WAY_OUT))("$said", ({ said, row }) => {
    for (const way of BOTH) {
      const start = "At the main, zero. Everything is from the main, coming back.";
      const talk = [start, "Eleven, wye on the left.", "Thirty, roots.", said];
      const found = draftsOf(talk, way).filter(({ kind }) => kind === "cleanout");
      expect(found.map(({ counter }) => `${(counter ?? -100) / 100}`)).toEqual([row]);
    }
  });
});
