/** A US number as it was typed: ten digits, a 1 before them or not, an extension or not. */
const US =
  /^\+?1?\D*([2-9]\d{2})\D*([2-9]\d{2})\D*(\d{4})(?:\s*(?:x|ext\.?|extension)\s*(\d{1,6}))?$/i;

/**
 * A phone number as an American office writes it: `(360) 555-0100`, `(360) 555-0100 ext. 12`. What is
 * no US number (a number abroad, words) is shown as it was typed.
 */
export function formatPhone(typed: string): string {
  const [whole, area, exchange, line, extension] = US.exec(typed.trim()) ?? [];
  if (whole === undefined) return typed.trim();
  const number = `(${area}) ${exchange}-${line}`;
  return extension === undefined ? number : `${number} ext. ${extension}`;
}

/** What is wrong with a typed number and how to write it; null for a US number, one abroad, or none. */
export function phoneProblem(typed: string): string | null {
  const text = typed.trim();
  if (text === "" || US.test(text) || /^\+(?!1\b)\d[\d\s().-]{6,}$/.test(text)) return null;
  return "Enter the number with its area code, as (360) 555-0100; one abroad begins with + and its country";
}
