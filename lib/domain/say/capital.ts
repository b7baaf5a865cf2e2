/** The same words with a capital first; the rest stays as it is. */
export function capital(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}
