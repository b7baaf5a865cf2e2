import type { LineFile, Office } from "#lib/domain/facts/line-file.ts";
import type { LetterKind, Notice } from "#lib/domain/facts/notice.ts";
import type { Wording } from "#lib/domain/facts/wording.ts";
import type { Report } from "#lib/domain/findings/report.ts";
import { composeLetter } from "#lib/domain/paper/compose.ts";
import { type LetterInput, letterFacts } from "#lib/domain/paper/facts.ts";
import type { Letter } from "#lib/domain/paper/letter.ts";
import { recipientsOf } from "#lib/domain/paper/recipients.ts";
import { wordingGaps } from "#lib/domain/paper/worded.ts";
import type { Language } from "#lib/domain/say/language.ts";

interface Line {
  readonly file: LineFile;
  readonly report: Report;
  readonly office: Office;
}

/** A letter as its first reader on this line would get it, in the house's wording; null: it has no reader. */
export function sampleOf(
  { file, report, office }: Line,
  { kind, language }: { readonly kind: LetterKind; readonly language: Language },
): LetterInput | null {
  const [first] = recipientsOf(file, report, kind);
  const role = file.roles[0];
  const to = first ?? (role && { ...role, tieInId: null, splitId: null });
  if (to === undefined) return null;
  const { partyId, propertyId, tieInId, splitId } = to;
  const notice: Notice = {
    ...{ id: "preview", kind, partyId, propertyId, tieInId, splitId },
    ...{ language, alsoIn: null, state: "draft", createdOn: report.today, createdBy: "" },
    ...{
      replyBy: null,
      ownWords: "",
      frozen: null,
      frozenHash: null,
      sentAt: null,
      uploadId: null,
      paperId: "",
    },
  };
  const { wordings: _inUse, ...plain } = office;
  return { file, report, office: plain, notice };
}

/** The sample in a wording, with what that wording wants and the line has not. */
export function previewOf(
  sample: LetterInput,
  wording: Wording | undefined,
): { readonly letter: Letter; readonly gaps: readonly string[] } {
  const office = wording === undefined ? sample.office : { ...sample.office, wordings: [wording] };
  const input = { ...sample, office };
  return { letter: composeLetter(input), gaps: wordingGaps(letterFacts(input)) };
}
