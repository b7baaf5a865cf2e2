import type { LineFile, Office } from "#lib/domain/facts/line-file.ts";
import type { Notice } from "#lib/domain/facts/notice.ts";
import type { Report } from "#lib/domain/findings/report.ts";
import { composeLetter } from "#lib/domain/paper/compose.ts";
import type { Letter } from "#lib/domain/paper/letter.ts";

/** A letter as it was sent, byte for byte; a draft as it would be sent now. */
export function letterOf(
  notice: Notice,
  facts: { file: LineFile; report: Report; office: Office },
): Letter {
  if (notice.frozen !== null) return JSON.parse(notice.frozen) as Letter;
  return composeLetter({ ...facts, notice });
}
