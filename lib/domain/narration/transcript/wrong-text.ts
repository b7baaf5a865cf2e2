/** Hours of talk; what is longer is no transcript. */
const MOST_LETTERS = 100_000;

/** Why a text cannot be what was said, in words that say what to do; null where it can. */
export function wrongText(
  text: string,
): { readonly missing: boolean; readonly words: string } | null {
  if (text.trim() === "") return { missing: true, words: "Paste the transcript, or choose a file" };
  if (text.length > MOST_LETTERS)
    return {
      missing: false,
      words: `This is ${text.length.toLocaleString("en-US")} characters long; the limit is 100,000. Add it in parts`,
    };
  // Marks of a picture, a video or a document that was opened as if it were text.
  if (/[^\P{Cc}\t\n\v\f\r]/u.test(text))
    return {
      missing: false,
      words: "This is not a text file. Choose the transcript as .vtt, .srt or .txt, or paste it",
    };
  return null;
}
