import { reportOn } from "#lib/domain/report/report-on.ts";
import { type Hardness, type KnownLine, knownLine, numbers, type Oddity } from "./truth.ts";

// How often the reconciliation is right, on made-up lines of which the truth is known.

const TODAY = "2026-11-25";
const LINES = 400;

/** What an odd card is called in any sentence. */
const ODD_WORDS = /downstream|meters|other end|house end|from the main|written twice/;

console.log(`\nUndocumented tie-ins found, ${LINES} made-up lines a row`);
console.log(
  "Certain: called undocumented outright. Undecided: called undocumented with a doubt that is",
);
console.log("told; the numbers do not tell, and a person is asked. All: both.");
const HEAD = `certain${" ".repeat(14)}undecided  all${" ".repeat(18)}`;
const UNDER = "precision  recall    share      precision  recall    ";
console.log(`${" ".repeat(27)}${HEAD}nearest entry`);
console.log(`shift   stretch  noise     ${UNDER}precision  recall`);
for (const [shift, scale, noise] of [
  [0, 0, 25],
  [300, 0, 25],
  [800, 0, 50],
  [0, 0.04, 50],
  [800, 0.04, 50],
] as const) {
  const lines = made({ shift, scale, noise });
  const plain = rate(
    lines.map((line) => ({ said: undocumentedByNearest(line), truth: [...line.undocumented] })),
  );
  const setting = `${pad(`${shift / 100} ft`, 8)}${pad(`${scale * 100} %`, 9)}${pad(`${noise / 100} ft`, 10)}`;
  console.log(`${setting}${judged(lines)}${plain}`);
}

console.log(
  "\nOdd cards that do not say so: zero up to 3 ft off, each reading up to 0.5 ft, one side in",
);
console.log(
  "twenty wrong. Not seen: entries said outright not to be seen, of which truly never built.",
);
console.log(`${" ".repeat(27)}${HEAD}not seen             told as odd`);
console.log(`card                       ${UNDER}precision  recall    share`);
const CARDS: Record<Oddity, string> = {
  none: "as it should be",
  mirrored: "every side mirrored",
  meters: "in meters",
  reversed: "from the other end",
  doubled: "each entry twice",
};
for (const [oddity, words] of Object.entries(CARDS) as [Oddity, string][]) {
  const lines = made({ shift: 300, scale: 0, noise: 50, wrongSides: 5, oddity });
  console.log(`${pad(words, 27)}${judged(lines)}${rate(lines.map(notSeen))}${toldOdd(lines)}`);
}

function made(hardness: Hardness): KnownLine[] {
  const next = numbers(20_261_125);
  return Array.from({ length: LINES }, () => knownLine(next, hardness));
}

function judged(lines: readonly KnownLine[]): string {
  const told = lines.map((line) => ({ line, ...undocumentedByReport(line) }));
  const certain = rate(
    told.map(({ line, certain: said, undecided }) => ({
      said,
      truth: [...line.undocumented].filter((id) => !undecided.includes(id)),
    })),
  );
  const all = rate(
    told.map(({ line, certain: sure, undecided }) => ({
      said: [...sure, ...undecided],
      truth: [...line.undocumented],
    })),
  );
  return `${certain}${pad(share(told), 11)}${all}`;
}

interface Told {
  readonly certain: readonly string[];
  readonly undecided: readonly string[];
}

function undocumentedByReport({ file }: KnownLine): Told {
  const undocumented = reportOn(file, TODAY).tieIns.filter(
    ({ standing }) => standing === "undocumented",
  );
  const idsOf = (decided: boolean) =>
    undocumented.filter((each) => each.decided === decided).map(({ tieIn }) => tieIn.id);
  return { certain: idsOf(true), undecided: idsOf(false) };
}

/** How much of what is called undocumented is left to a person. */
function share(told: readonly Told[]): string {
  const certain = told.reduce((sum, each) => sum + each.certain.length, 0);
  const undecided = told.reduce((sum, each) => sum + each.undecided.length, 0);
  return (undecided / Math.max(certain + undecided, 1)).toFixed(4);
}

/** What a person with a ruler does: no entry within 5 ft on the card as it stands, so not on record. */
function undocumentedByNearest({ file, card }: KnownLine): string[] {
  return file.observations
    .filter(({ counter }) => !card.some((distance) => Math.abs(distance - counter) <= 500))
    .map(({ tieInId }) => tieInId ?? "");
}

function notSeen({ file, built }: KnownLine): {
  readonly said: readonly string[];
  readonly truth: readonly string[];
} {
  const said = reportOn(file, TODAY).entries.filter(
    ({ standing }) => standing === "on-record-not-seen",
  );
  return {
    said: said.map(({ entryId }) => entryId),
    truth: file.entries.map(({ id }) => id).filter((id) => !built.has(id)),
  };
}

function toldOdd(lines: readonly KnownLine[]): string {
  const told = lines.filter(({ file }) => {
    const { alignment, alternatives, problems } = reportOn(file, TODAY);
    const said = [alignment, ...alternatives, ...problems].map((each) => each?.sentence ?? "");
    return ODD_WORDS.test(said.join(" "));
  });
  return (told.length / Math.max(lines.length, 1)).toFixed(4);
}

function rate(each: readonly { said: readonly string[]; truth: readonly string[] }[]): string {
  let right = 0;
  let said = 0;
  let true_ = 0;
  for (const one of each) {
    said += one.said.length;
    true_ += one.truth.length;
    right += one.said.filter((id) => one.truth.includes(id)).length;
  }
  const precision = said === 0 ? 1 : right / said;
  const recall = true_ === 0 ? 1 : right / true_;
  return `${pad(precision.toFixed(4), 11)}${pad(recall.toFixed(4), 10)}`;
}

function pad(text: string, width: number): string {
  return text.padEnd(width);
}
