/** `A`, `A and B`, `A, B and C`; beyond `most` the rest is counted: `A, B and 5 others`. */
export function sayList(words: readonly string[], most = 6): string {
  return listed(words, { most, joint: "and" });
}

/** One of them: `A`, `A or B`, `A, B or C`; beyond `most` the rest is counted: `A, B or 5 others`. */
export function sayAny(words: readonly string[], most = 6): string {
  return listed(words, { most, joint: "or" });
}

function listed(
  words: readonly string[],
  { most, joint }: { readonly most: number; readonly joint: "and" | "or" },
): string {
  if (words.length <= 1) return words[0] ?? "";
  if (words.length <= most) return `${words.slice(0, -1).join(", ")} ${joint} ${words.at(-1)}`;
  const named = words.slice(0, most - 1);
  return `${named.join(", ")} ${joint} ${words.length - named.length} others`;
}
