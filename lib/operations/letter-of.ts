import { DocumentRefused } from "#lib/documents/printable.ts";
import type { LineFile, Office } from "#lib/domain/facts/line-file.ts";
import type { Notice } from "#lib/domain/facts/notice.ts";
import type { Report } from "#lib/domain/findings/report.ts";
import { composeLetter } from "#lib/domain/paper/compose.ts";
import { frozenLetter, UNREADABLE_LETTER } from "#lib/domain/paper/frozen-letter.ts";
import type { Letter } from "#lib/domain/paper/letter.ts";

/**
 * A letter as it was sent, byte for byte; a draft as it would be sent now. Throws DocumentRefused
 * where what is kept of a sent one is no letter.
 */
export function letterOf(
  notice: Notice,
  facts: { file: LineFile; report: Report; office: Office },
): Letter {
  return notice.frozen === null ? composeLetter({ ...facts, notice }) : sentLetter(notice.frozen);
}

/** A sent letter from what was frozen. Throws DocumentRefused, with words, where that is no letter. */
export function sentLetter(frozen: string): Letter {
  const letter = frozenLetter(frozen);
  if (letter === null) throw new DocumentRefused(`${UNREADABLE_LETTER}.`);
  return letter;
}
