import { choicesOf, matchingChoices, parseCell } from "#app/_components/grid/cell.ts";
import type { GridChoice, GridColumn } from "#app/_components/grid/column.ts";
import { err, ok, type Result } from "#lib/result.ts";

/** What spreadsheets write for short, by column; only what means one thing. */
const SHORT_WORDS: Readonly<Record<string, Readonly<Record<string, string>>>> = {
  material: {
    vcp: "vitrified-clay",
    clay: "vitrified-clay",
    ci: "cast-iron",
    di: "ductile-iron",
    dip: "ductile-iron",
    hdpe: "polyethylene",
    pe: "polyethylene",
    orangeburg: "bituminous-fibre",
    ac: "asbestos-cement",
    cipp: "cured-in-place-liner",
    liner: "cured-in-place-liner",
  },
  fitting: { y: "wye", t: "tee", "break in": "break-in" },
  kind: { tap: "tie-in", lateral: "tie-in", connection: "tie-in", wye: "tie-in" },
};

/**
 * A cell of a file as the table's cell reads it, but a choice only where the words mean one thing:
 * nobody watches what is picked. `4` is not `14 Fennel Row`.
 */
export function readCell(column: GridColumn, text: string): Result<unknown, string> {
  const choices = choicesOf(column);
  const typed = text.trim();
  if (typed === "" || column.kind !== "choice") return parseCell(column, text);
  const chosen = chosenBy(column, typed);
  if (chosen.length === 1) return ok(chosen[0]?.value === "" ? null : chosen[0]?.value);
  return err(wanted(chosen.length === 0 ? choices : chosen));
}

function wanted(choices: readonly GridChoice[]): string {
  const labels = choices.map(({ label }) => label).filter((label) => label !== "");
  return `choose ${labels.slice(0, 8).join(", ")}${labels.length > 8 ? " …" : ""}`;
}

function chosenBy(column: GridColumn, typed: string): readonly GridChoice[] {
  const choices = choicesOf(column);
  const short = SHORT_WORDS[column.key]?.[folded(typed)];
  const exact = choices.filter(
    ({ value, label }) =>
      folded(label) === folded(typed) ||
      value === typed ||
      (short !== undefined && value === short),
  );
  if (exact.length > 0) return exact;
  const words = folded(typed).split(" ");
  const whole = choices.filter(({ label }) => {
    const own = folded(label).split(" ");
    return words.every((word) => own.includes(word));
  });
  if (whole.length > 0 || /\d/.test(typed)) return whole;
  const beginning = matchingChoices(choices, typed);
  return beginning.filter(({ label }) => folded(label).startsWith(folded(typed)));
}

function folded(text: string): string {
  return text
    .trim()
    .toLowerCase()
    .replace(/[-_.\s]+/g, " ")
    .trim();
}
