import type { LineFile, Office } from "#lib/domain/file/line-file.ts";
import type { Report } from "#lib/domain/file/report.ts";
import { LETTER_WORDS } from "#lib/domain/letter/facts.ts";
import type { Letter } from "#lib/domain/letter/letter.ts";
import type { Notice } from "#lib/domain/letter/notice.ts";
import { type Statement, statementOf } from "#lib/domain/split/statement.ts";

/** The statements that these letters say they enclose, each under the version that its letter is about. */
export function enclosedStatements(
  sent: readonly { readonly notice: Notice; readonly letter: Letter }[],
  facts: { readonly file: LineFile; readonly report: Report; readonly office: Office },
): Map<Letter, Statement> {
  return new Map(
    sent.flatMap(({ notice, letter }): [Letter, Statement][] => {
      const { propertyId, splitId } = notice;
      if (propertyId === null || !saysEnclosed(letter)) return [];
      const statement = statementOf({ ...facts, propertyId, splitId });
      return statement === null ? [] : [[letter, statement]];
    }),
  );
}

function saysEnclosed({ blocks, language }: Letter): boolean {
  const { enclosed } = LETTER_WORDS[language].split;
  return blocks.some((block) => block.kind === "paragraph" && block.text === enclosed);
}
