/** Lower case without accents, so that `Pena` finds `Peña` and `lodz` finds `Łódź`. */
export function foldText(text: string): string {
  return text
    .normalize("NFD")
    .replace(/\p{Mark}/gu, "")
    .toLowerCase()
    .replace(/[łøđßæœ]/g, (letter) => PLAIN[letter] ?? letter)
    .replace(/\s+/g, " ")
    .trim();
}

/** Letters that Unicode does not take apart. */
export const PLAIN: Readonly<Record<string, string>> = {
  ł: "l",
  ø: "o",
  đ: "d",
  ß: "ss",
  æ: "ae",
  œ: "oe",
};
