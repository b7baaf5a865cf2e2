import { expect, test } from "vitest";
import { draftLog } from "#lib/domain/narration/log/draft-log.ts";

// Two numbers of which one is the place, or between which it lies.

const RUN = { looks: "downstream", measuredFrom: null, mainCounter: null } as const;

function rows(...said: readonly string[]): string[] {
  const lines = [
    "Zero at the cleanout.",
    "Twelve feet, wye, left.",
    ...said,
    "Sixty, that's the main.",
  ];
  const talk = lines.map((line, at) => `${at}:${at % 2 === 0 ? "00" : "10"} ${line}`).join("\n");
  const [one, two] = [talk, talk.replace(/[.,;](?!\d)/g, "").toLowerCase()].map((text) =>
    draftLog(text, RUN)
      .drafts.slice(1)
      .map(({ kind, fault, counter, toCounter }) =>
        [fault ?? kind, counter === null ? "?" : counter / 100, toCounter && toCounter / 100]
          .filter((part) => part !== null)
          .join(" "),
      ),
  );
  expect(two).toEqual(one);
  return one ?? [];
}

test.each([
  "Thirty-nine, no sorry, I had my thumb on it, it's 29 is what I want, 29, and there's an open joint.",
  "Open joint at thirty-nine, no, hang on, glare on the glass, it's twenty-nine.",
  "Open joint at ninety-two, sorry, I'm reading it upside down, twenty-nine.",
  "There's an open joint at fifty-nine, oops, wrong side of the chalk mark, it's twenty-nine.",
  "Seventy-nine, no wait, my glasses, twenty-nine, open joint.",
  "Joint's open, forty-nine, scratch that, wrong screen, it's twenty-nine.",
  "Open joint at nineteen, I mean, what does that say, twenty-nine.",
])("put right by far: %s", (said) => expect(rows(said)).toEqual(["open-joint 29"]));

test.each([
  ["Somewhere between 45 and 50 it turns right, a bend.", "bend 47.5"],
  ["Somewhere between thirty and thirty-four there's a tap on the right.", "tie-in 32"],
])("%s", (said, row) => expect(rows(said)).toEqual([row]));

test("a stretch between two is one", () => {
  expect(rows("It's a belly between thirty and thirty-six.")).toEqual(["belly 30 36"]);
});

test("at the forty-one, told from memory", () => {
  const notes =
    "Zero at the cleanout.\nIt goes to PVC at thirty-three.\nThen back to clay at forty-one.\nAnd where it goes back, at the forty-one, it's an offset joint.\nMain at sixty.";
  const { drafts } = draftLog(notes, RUN);
  expect(drafts.map(({ kind, counter }) => `${kind} ${(counter ?? 0) / 100}`)).toEqual([
    "material 33",
    "material 41",
    "fault 41",
  ]);
});
