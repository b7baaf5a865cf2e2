import type { ConsentKind } from "../facts/consent.ts";
import type { LetterKind } from "../facts/notice.ts";
import type { Cft } from "../length/station.ts";
import type { Language } from "../say/language.ts";
import type { StripDrawing } from "../strip/drawing.ts";
import type { Day } from "../time/day.ts";

/** A block of a letter. Same data → PDF, HTML and mail text. */
export type LetterBlock =
  | {
      readonly kind: "paragraph";
      readonly text: string;
      /** The sentence that says what is asked, and by when, is set strong. */
      readonly lead?: true;
      /** It explains the table before it, and stays on the page where that ends. */
      readonly note?: true;
    }
  | { readonly kind: "heading"; readonly text: string }
  | { readonly kind: "list"; readonly lines: readonly string[] }
  | {
      readonly kind: "table";
      readonly head: readonly string[];
      readonly rows: readonly (readonly string[])[];
      /** Column numbers that hold amounts or stations: set right, tabular figures. */
      readonly numeric: readonly number[];
      /** How many of the last rows are sums of those before. */
      readonly totals: number;
    }
  /** The one amount that the letter is about, set large. */
  | { readonly kind: "amount"; readonly words: string; readonly amount: string }
  | { readonly kind: "caution"; readonly title: string; readonly text: string }
  | { readonly kind: "strip"; readonly drawing: StripDrawing; readonly caption: string }
  /** Stills of the camera, at most two beside each other. */
  | { readonly kind: "pictures"; readonly pictures: readonly LetterPicture[] }
  | { readonly kind: "answer-slip"; readonly choices: readonly string[]; readonly returnBy: string }
  | { readonly kind: "signature"; readonly lines: readonly string[] };

/** A stored picture: the letter names it, and whoever shows the letter brings its bytes. */
export interface LetterPicture {
  readonly uploadId: string;
  readonly caption: string;
  /** For those who cannot see it. */
  readonly alt: string;
}

export interface Letter {
  readonly kind: LetterKind;
  /** What it puts to its reader for consent; missing in letters that were frozen before they said so. */
  readonly asks?: readonly ConsentKind[];
  readonly language: Language;
  readonly title: string;
  /** The day of the letter, for the document's own date. */
  readonly day: Day;
  /** Dated as it prints. */
  readonly date: string;
  readonly from: readonly string[];
  /** At most five lines, in the envelope's window. */
  readonly to: readonly string[];
  readonly reference: string;
  readonly subject: string;
  /** The day by which an answer is asked for, as it prints; empty where none is. */
  readonly answerBy: string;
  readonly greeting: string;
  readonly blocks: readonly LetterBlock[];
  readonly closing: string;
  readonly footer: string;
  /** Facts that this letter rests on, for the frozen copy. */
  readonly stations: readonly Cft[];
  /** The same letter in its reader's other language, where it goes out in both. */
  readonly also?: Letter;
}
