import { err, ok, type Result } from "#lib/result.ts";
import type { GridChoice, GridColumn } from "./column.ts";

const YES_NO: readonly GridChoice[] = [
  { value: "yes", label: "yes" },
  { value: "no", label: "no" },
];

/** Said where what a column names is not on file, or not saved, as a property for its people. */
const NOTHING_YET = "nothing to choose from yet: enter it in its own table and save";

/** What may be chosen in a column; empty for columns that are typed freely. */
export function choicesOf(column: GridColumn): readonly GridChoice[] {
  return column.kind === "yesno" ? YES_NO : (column.choices ?? []);
}

/**
 * The one choice that what was typed means: its words, a word that is kept as meaning the same, or a
 * beginning that no other choice has. Never a word from its middle: `seen` is not `not seen`. A number
 * or a single letter at the end counts whole: `4` is not `42 Fennel Row`, `Unit A` not `Unit Annex`.
 * Refuses in words that say what to choose from.
 */
export function choiceMeant(
  choices: readonly GridChoice[],
  typed: string,
): Result<GridChoice, string> {
  if (choices.length === 0) return err(NOTHING_YET);
  const wanted = folded(typed);
  const exact = choices.filter(({ label }) => folded(label) === wanted);
  const same = exact.length > 0 ? exact : choices.filter((choice) => isAlso(choice, wanted));
  const meant = same.length > 0 ? same : choices.filter(({ label }) => begins(label, wanted));
  const [only, ...others] = meant;
  if (only !== undefined && others.length === 0) return ok(only);
  return err(only === undefined ? `choose ${some(choices)}` : `which one: ${some(meant)}?`);
}

/**
 * The choices to show for what is typed: those that begin with it or are kept as meaning it, then
 * those with a later word that begins so. Shown is not meant: only `choiceMeant()` picks.
 */
export function choicesToShow(choices: readonly GridChoice[], typed: string): GridChoice[] {
  const wanted = folded(typed);
  if (wanted === "") return [...choices];
  const first = choices.filter(
    (choice) => folded(choice.label).startsWith(wanted) || isAlso(choice, wanted),
  );
  const later = choices.filter(
    (choice) => !first.includes(choice) && ` ${folded(choice.label)}`.includes(` ${wanted}`),
  );
  return [...first, ...later];
}

/** The same choices, each with a name of its own: what is shown twice gets a number. */
export function distinct(choices: readonly GridChoice[]): GridChoice[] {
  const seen = new Map<string, number>();
  return choices.map((choice) => {
    const name = folded(choice.label);
    const count = (seen.get(name) ?? 0) + 1;
    seen.set(name, count);
    return count === 1 ? choice : { ...choice, label: `${choice.label} (${count})` };
  });
}

/** Without regard to capitals, hyphens, dots and the shape of an apostrophe. */
export function folded(text: string): string {
  return text
    .toLowerCase()
    .replace(/[’‘`]/g, "'")
    .replace(/[-–_.\s]+/g, " ")
    .trim();
}

function isAlso({ also = [] }: GridChoice, wanted: string): boolean {
  return also.some((word) => folded(word) === wanted);
}

function begins(label: string, wanted: string): boolean {
  const own = folded(label);
  if (wanted === "" || !own.startsWith(wanted)) return false;
  const next = own.slice(wanted.length, wanted.length + 1);
  if (/\d$/.test(wanted)) return !/\d/.test(next);
  return !(/\s\p{L}$/u.test(wanted) && /\p{L}/u.test(next));
}

function some(choices: readonly GridChoice[]): string {
  const labels = choices.map(({ label }) => label).filter((label) => label !== "");
  return `${labels.slice(0, 6).join(", ")}${labels.length > 6 ? " …" : ""}`;
}
