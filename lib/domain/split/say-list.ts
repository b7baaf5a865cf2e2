/** `A`, `A and B`, `A, B and C`; beyond `most` the rest is counted: `A, B and 5 others`. */
export function sayList(words: readonly string[], most = 6): string {
  if (words.length <= 1) return words[0] ?? "";
  if (words.length <= most) return `${words.slice(0, -1).join(", ")} and ${words.at(-1)}`;
  const named = words.slice(0, most - 1);
  return `${named.join(", ")} and ${words.length - named.length} others`;
}
