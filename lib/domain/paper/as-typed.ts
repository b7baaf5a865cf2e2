import type { LineFile } from "../facts/line-file.ts";
import type { Notice } from "../facts/notice.ts";
import { composeLetter } from "./compose.ts";
import { LETTER_WORDS, type LetterInput } from "./facts.ts";

type Typed = readonly [what: string, text: (file: LineFile) => readonly string[]];

/** What the office types once for all readers and a letter prints as it is. */
const TYPED: readonly Typed[] = [
  ["work items", ({ scope }) => scope.map(({ title }) => title)],
  ["the reason for the split", ({ splits }) => splits.map(({ reason }) => reason)],
  ["access points of camera runs", ({ runs }) => runs.map(({ accessPoint }) => accessPoint)],
  ["record entries", ({ entries }) => entries.map(({ label }) => label)],
  [
    "areas to dig",
    ({ digAreas }) => digAreas.flatMap((each) => [each.place, each.notRestored, each.plants]),
  ],
  ["what was built", ({ built }) => built.map(({ words }) => words)],
  ["agreements", ({ agreements }) => agreements.map(({ title }) => title)],
  ["inspections", ({ inspections }) => inspections.map(({ title }) => title)],
  ["the spill", ({ spillSteps }) => spillSteps.flatMap((each) => [each.place, each.reached])],
  ["the change order", ({ changeOrders }) => changeOrders.map(({ reason }) => reason)],
  ["the place of the meeting", ({ meetings }) => meetings.map(({ place }) => place)],
  [
    "why the home is entered",
    ({ events }) => events.flatMap(({ event, note }) => (event === "tenant-entry" ? [note] : [])),
  ],
  // Only with parking is it a place in words; with other events it is a number.
  [
    "the part of the street",
    ({ events }) =>
      events.flatMap(({ event, reference }) => (event === "street-closed" ? [reference] : [])),
  ],
  ["the warranty", ({ line }) => [line.warrantyCovers]],
];

/**
 * A Spanish letter that prints text as the office typed it, which is then likely English: in which
 * parts, as a sentence for the draft. Null in English letters and where nothing of the kind is printed.
 * The office's personal note is left out: it is typed for this reader.
 */
export function typedInEnglish(input: LetterInput): string | null {
  const { language, alsoIn } = input.notice;
  if (language !== "es" && alsoIn !== "es") return null;
  const notice: Notice = { ...input.notice, language: "es", alsoIn: null, ownWords: "" };
  const letter = composeLetter({ ...input, notice });
  const printed = JSON.stringify(letter.blocks);
  const parts = TYPED.flatMap(([what, texts]) =>
    texts(input.file).some((text) => /\p{L}{3}/u.test(text) && printed.includes(quoted(text)))
      ? [what]
      : [],
  );
  if (parts.length === 0) return null;
  const what = alsoIn === null ? "This Spanish letter" : "The Spanish text of this letter";
  return `${what} contains English text typed in ${LETTER_WORDS.en.list(parts)}. It prints as typed; explain it in the personal note where the reader needs it.`;
}

/** A text as it stands within JSON. */
function quoted(text: string): string {
  return JSON.stringify(text).slice(1, -1);
}
