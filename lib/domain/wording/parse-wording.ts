import { err, ok, type Result } from "#lib/result.ts";

/** What may stand in braces within a sentence. */
export const WORDING_FIELDS = [
  "reader",
  "place",
  "line",
  "town",
  "office",
  "phone",
  "email",
  "writer",
  "today",
  "reply by",
  "work begins",
  "authority",
] as const;
export type WordingField = (typeof WORDING_FIELDS)[number];

/** Where everything that is computed goes: alone on its line, once. */
const FACTS_FIELD = "facts";

/** A piece of a sentence: words as typed, or a field. */
export type WordingPiece = string | { readonly field: WordingField };

export type WordingPart =
  | { readonly kind: "paragraph" | "heading"; readonly pieces: readonly WordingPiece[] }
  | { readonly kind: "list"; readonly lines: readonly (readonly WordingPiece[])[] }
  | { readonly kind: "facts" };

/** What is wrong with a wording, on which line from 1; null: with all of it. */
export interface WordingProblem {
  readonly line: number | null;
  readonly reason: string;
}

const LONGEST_WORDING = 8_000;

/**
 * Reads a wording: a blank line ends a paragraph, `# ` begins a heading, `- ` a line of a list,
 * `{reply by}` is a field, `{facts}` alone on a line is where all that is computed goes. Cautions,
 * reply slip and signature are no part of it: they always follow. Refuses unknown fields, braces that
 * don't close, and a wording without its `{facts}` or with two, each with its line.
 */
export function parseWording(text: string): Result<WordingPart[], WordingProblem[]> {
  if (text.length > LONGEST_WORDING)
    return err([{ line: null, reason: `It has more than ${LONGEST_WORDING} characters.` }]);
  const lines = text.split(/\r\n|\r|\n/).map((typed, at): TypedLine => {
    const trimmed = typed.trim();
    const kind = kindOf(trimmed);
    const words = kind === "heading" || kind === "list" ? trimmed.slice(2) : trimmed;
    return { kind, at: at + 1, ...piecesOf(kind === "facts" ? "" : words) };
  });
  const parts = grouped(lines).map(partOf);
  const problems = [
    ...lines.flatMap(({ at, reasons }) => reasons.map((reason) => ({ line: at, reason }))),
    ...factsProblems(parts),
  ];
  return problems.length === 0 ? ok(parts) : err(problems);
}

interface TypedLine {
  readonly kind: "facts" | "heading" | "list" | "paragraph" | "blank";
  readonly at: number;
  readonly pieces: readonly WordingPiece[];
  readonly reasons: readonly string[];
}

/** Lines that are one part: those of a paragraph or list that follow one another. */
function grouped(lines: readonly TypedLine[]): (readonly TypedLine[])[] {
  const groups: TypedLine[][] = [];
  let last: TypedLine["kind"] = "blank";
  for (const line of lines) {
    const goesOn = line.kind === last && (line.kind === "paragraph" || line.kind === "list");
    if (goesOn) groups.at(-1)?.push(line);
    else if (line.kind !== "blank") groups.push([line]);
    last = line.kind;
  }
  return groups;
}

function partOf(lines: readonly TypedLine[]): WordingPart {
  const [first] = lines;
  if (first?.kind === "facts") return { kind: "facts" };
  if (first?.kind === "list") return { kind: "list", lines: lines.map(({ pieces }) => pieces) };
  const kind = first?.kind === "heading" ? "heading" : "paragraph";
  return { kind, pieces: joined(lines.map(({ pieces }) => pieces)) };
}

function kindOf(line: string): TypedLine["kind"] {
  if (line === "") return "blank";
  if (line === `{${FACTS_FIELD}}`) return "facts";
  if (/^# +\S/.test(line)) return "heading";
  return /^- +\S/.test(line) ? "list" : "paragraph";
}

/** Lines of one paragraph are one text. */
function joined(lines: readonly (readonly WordingPiece[])[]): WordingPiece[] {
  return lines.flatMap((pieces, at) => (at === 0 ? pieces : [" ", ...pieces]));
}

function factsProblems(parts: readonly WordingPart[]): WordingProblem[] {
  const count = parts.filter(({ kind }) => kind === "facts").length;
  if (count === 1) return [];
  const reason =
    count === 0
      ? "{facts} is missing. Put it alone on a line: days, figures, tables and the drawing go there."
      : "{facts} may stand only once.";
  return [{ line: null, reason }];
}

function piecesOf(text: string): { pieces: WordingPiece[]; reasons: string[] } {
  const pieces: WordingPiece[] = [];
  const reasons: string[] = [];
  for (const part of text.split(/(\{[^{}]*\})/)) {
    if (part === "") continue;
    const name = /^\{([^{}]*)\}$/.exec(part)?.[1]?.trim().toLowerCase();
    if (name === undefined) {
      if (/[{}]/.test(part)) reasons.push("A brace is not closed. Fields look like {reply by}.");
      pieces.push(part);
      continue;
    }
    const field = WORDING_FIELDS.find((each) => each === name);
    if (field !== undefined) pieces.push({ field });
    else reasons.push(unknownWords(name));
  }
  return { pieces, reasons };
}

function unknownWords(name: string): string {
  if (name === FACTS_FIELD) return "{facts} has to stand alone on its line.";
  const all = WORDING_FIELDS.map((field) => `{${field}}`).join(", ");
  return `There is no field {${name}}. Use one of ${all}, or {facts} on a line of its own.`;
}
