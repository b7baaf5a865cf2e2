import type { LetterKind } from "../facts/notice.ts";
import type { Letter, LetterBlock } from "../paper/letter.ts";
import type { Language } from "../say/language.ts";

/** Letters that may hang on a door: notices about a day. None that names an amount or a person's answer. */
const HANGER_KINDS: readonly LetterKind[] = [
  "test-visit",
  "work-start",
  "drain-pause",
  "drains-back",
  "street-parking",
  "spill",
];

/** Whether a letter of this kind may hang where whoever passes can read it. */
export function mayHang(kind: LetterKind): boolean {
  return HANGER_KINDS.includes(kind);
}

/** What hangs on a door: what is asked and when, and every caution of the letter. */
export interface DoorHanger {
  readonly office: string;
  readonly contact: readonly string[];
  readonly date: string;
  readonly reference: string;
  /** One in each language of the letter. */
  readonly faces: readonly HangerFace[];
}

interface HangerFace {
  readonly language: Language;
  readonly title: string;
  readonly about: string;
  readonly lines: readonly HangerLine[];
}

type HangerLine =
  | { readonly kind: "lead"; readonly text: string }
  | { readonly kind: "fact"; readonly label: string; readonly text: string }
  | { readonly kind: "caution"; readonly title: string; readonly text: string };

/**
 * The hanger of a letter: its lead, its tables' rows and its cautions, never its amounts, drawing or
 * slip, and no private code, since a door is read by whoever passes. `unit` is the door's own name.
 */
export function doorHanger(letter: Letter, unit = ""): DoorHanger {
  const [office = ""] = letter.from;
  return {
    office,
    contact: letter.blocks.flatMap((block) =>
      block.kind === "signature" ? block.lines.slice(1) : [],
    ),
    date: letter.date,
    reference: letter.reference,
    faces: [letter, ...(letter.also === undefined ? [] : [letter.also])].map((each) =>
      faceOf(each, unit),
    ),
  };
}

function faceOf({ language, title, subject, blocks }: Letter, unit: string): HangerFace {
  const about = subject.startsWith(title)
    ? subject.slice(title.length).replace(/^[\s:,–—-]+/, "")
    : subject;
  return {
    language,
    title,
    about: [about, unit].filter((part) => part !== "").join(", "),
    lines: blocks.flatMap(linesOf),
  };
}

function linesOf(block: LetterBlock): HangerLine[] {
  if (block.kind === "paragraph" && block.lead === true)
    return [{ kind: "lead", text: block.text }];
  if (block.kind === "caution") return [{ kind: "caution", title: block.title, text: block.text }];
  if (block.kind !== "table" || block.totals > 0) return [];
  return block.rows.map(([label = "", ...rest]) => ({
    ...{ kind: "fact", label, text: rest.filter((cell) => cell !== "").join(", ") },
  }));
}
