import type { FormField, FormPlace } from "../facts/form.ts";
import { capital } from "../say/capital.ts";
import { wordsOfName } from "./suggest.ts";

/** A name that its maker’s program gave: it says nothing of what goes in. */
const NAMELESS = /^(text|check ?box|field|form|input|fill|untitled|undefined|f|t|c|cb)?[\s\d_.]*$/i;

/**
 * A field as people call it: what the form says of it, else its name as words; where the name says
 * nothing, what is printed beside it.
 */
export function fieldTitle({ hint, name, placed, printed }: FormField): string {
  if (hint !== "") return hint;
  if (printed !== "" && NAMELESS.test(wordsOfName(name))) return printed;
  const words = wordsOfName(name);
  return placed || words === "" || words === name.toLowerCase() ? name : capital(words);
}

/** Points to the inch. */
export const INCH = 72;

/** A length on paper in inches with at most two decimals, from points. */
export function inches(points: number): string {
  return String(Math.round((points / INCH) * 100) / 100);
}

/** Where something stands: `page 1, 2.1 in from the left, 0.75 in from the top`. */
export function placeWords({ page, left, top }: FormPlace): string {
  return `page ${page}, ${inches(left)} in from the left, ${inches(top)} in from the top`;
}
