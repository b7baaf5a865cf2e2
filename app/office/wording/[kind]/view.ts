import "server-only";
import { db } from "#app/db.ts";
import { today } from "#app/today.ts";
import { listLines } from "#db/queries/line.ts";
import { getOffice } from "#db/queries/office.ts";
import { listUses, listWordings } from "#db/queries/wording.ts";
import { LETTER_KINDS, type LetterKind } from "#lib/domain/facts/notice.ts";
import { HOUSE_WORDING } from "#lib/domain/facts/wording.ts";
import type { Language } from "#lib/domain/say/language.ts";
import { lineReport } from "#lib/operations/line-report.ts";
import { previewOf, sampleOf } from "./preview.ts";

export interface WordingAt {
  readonly kind: LetterKind;
  readonly language: Language;
}

/** What the page of one wording shows; null where there is no such letter, or no office yet. */
export function wordingView(
  asked: string,
  { language, lineId }: { readonly language: Language; readonly lineId: unknown },
) {
  const kind = LETTER_KINDS.find((each) => each === asked);
  const office = getOffice(db());
  if (kind === undefined || office === null) return null;
  const at: WordingAt = { kind, language };
  const lines = listLines(db());
  const line = lines.find(({ id }) => id === lineId) ?? lines[0];
  const found = line === undefined ? null : lineReport(db(), line.id, today());
  const versions = listWordings(db(), kind, language);
  const newest = versions.at(-1);
  const use = listUses(db()).find((each) => each.kind === kind && each.language === language);
  const sample = found === null ? null : sampleOf({ ...found, office }, at);
  return {
    ...{ at, lines, line, versions, newest, sample },
    inUse: use?.version ?? HOUSE_WORDING,
    zone: office.zone,
    preview: sample === null ? null : previewOf(sample, newest),
  };
}
