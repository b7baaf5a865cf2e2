import { DIRECTIONALS } from "./postal-words.ts";

/** Whether a text is written in capitals, as lists of owners are. */
export function isCapitals(text: string): boolean {
  return /\p{Lu}/u.test(text) && !/\p{Ll}/u.test(text);
}

const KEEP = /^(?:LLC|L\.L\.C\.|LLP|LP|PLLC|HOA|COA|NA|N\.A\.|USA|PO|II|III|IV|JV|DBA)$/;
const SMALL = /^(?:OF|AND|THE|FOR|AT|BY)$/;

/** A name in capitals as people write it: `MCDONALD-O'BRIEN` → `McDonald-O'Brien`; others stay. */
export function nameInCase(text: string): string {
  const plain = text.replace(/\s+/g, " ").trim();
  if (!isCapitals(plain)) return plain;
  return plain
    .split(" ")
    .map((word, at) => {
      if (KEEP.test(word.replace(/[,.]$/, ""))) return word;
      if (at > 0 && SMALL.test(word)) return word.toLowerCase();
      return word
        .split("-")
        .map((part) => capital(part))
        .join("-");
    })
    .join(" ");
}

function capital(word: string): string {
  const low = word.toLocaleLowerCase("en-US");
  const first = low.replace(/^\P{L}*\p{L}/u, (start) => start.toLocaleUpperCase("en-US"));
  return first
    .replace(/^(Mc|O['’]|D['’])(\p{Ll})/u, (_all, start: string, next: string) =>
      start.concat(next.toLocaleUpperCase("en-US")),
    )
    .replace(/(?<=['’])S$/u, "s");
}

/** A street line in capitals as people write it: `118 N FENNEL ROW APT B` → `118 N Fennel Row Apt B`. */
export function streetInCase(text: string): string {
  const plain = text.replace(/\s+/g, " ").trim();
  if (!isCapitals(plain)) return plain;
  return plain
    .split(" ")
    .map((word) => {
      const bare = word.replace(/[.,]/g, "");
      if (DIRECTIONALS.get(bare) === bare || KEEP.test(bare)) return word;
      if (/^\d+(?:ST|ND|RD|TH)$/.test(bare)) return word.toLowerCase();
      return /\d/.test(word) ? word : capital(word);
    })
    .join(" ");
}
