/** A text out of bytes, and whether its letters had to be guessed. */
interface DecodedText {
  readonly text: string;
  /** It was no Unicode: read as Windows writes it, so that accents want a look. */
  readonly guessed: boolean;
}

/**
 * The text that bytes hold: UTF-8, UTF-16 with its mark, else Windows' own letters (1252), which
 * old spreadsheets write. Without the mark in front. Null where they are no text at all.
 */
export function decodeText(bytes: Uint8Array): DecodedText | null {
  const wide = wideMark(bytes);
  if (wide !== null) return readAs(bytes, wide, false);
  return readAs(bytes, "utf-8", false) ?? readAs(bytes, "windows-1252", true);
}

function wideMark([first, second]: Uint8Array): "utf-16le" | "utf-16be" | null {
  if (first === 0xff && second === 0xfe) return "utf-16le";
  return first === 0xfe && second === 0xff ? "utf-16be" : null;
}

function readAs(bytes: Uint8Array, letters: string, guessed: boolean): DecodedText | null {
  try {
    const text = new TextDecoder(letters, { fatal: true }).decode(bytes);
    return isText(text) ? { text, guessed } : null;
  } catch {
    return null;
  }
}

/** Pictures and programs hold control characters everywhere; a text holds none but its line ends. */
function isText(text: string): boolean {
  return !/[^\P{Cc}\t\n\v\f\r]/u.test(text);
}
