import type { LineFile, Office } from "#lib/domain/file/line-file.ts";
import type { Report } from "#lib/domain/file/report.ts";
import { composeLetter } from "#lib/domain/letter/compose.ts";
import type { Letter } from "#lib/domain/letter/letter.ts";
import type { Notice } from "#lib/domain/letter/notice.ts";

/** A letter as it was sent, byte for byte; a draft as it would be sent now. */
export function letterOf(
  notice: Notice,
  facts: { file: LineFile; report: Report; office: Office },
): Letter {
  if (notice.frozen !== null) return JSON.parse(notice.frozen) as Letter;
  return composeLetter({ ...facts, notice });
}
