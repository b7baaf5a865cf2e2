import type { LineFile, Office } from "#lib/domain/facts/line-file.ts";
import type { Notice } from "#lib/domain/facts/notice.ts";
import type { Report } from "#lib/domain/findings/report.ts";
import type { Letter } from "#lib/domain/paper/letter.ts";
import { type Statement, statementOf } from "#lib/domain/paper/statement.ts";
import type { Language } from "#lib/domain/say/language.ts";

/** The statements that these letters say they enclose, each under the version that its letter is about. */
export function enclosedStatements(
  sent: readonly { readonly notice: Notice; readonly letter: Letter }[],
  facts: { readonly file: LineFile; readonly report: Report; readonly office: Office },
): Map<Letter, Statement> {
  return new Map(
    sent.flatMap(({ notice, letter }): [Letter, Statement][] => {
      const { propertyId, splitId } = notice;
      if (propertyId === null || !saysEnclosed(letter)) return [];
      const languages = languagesIn(letter);
      const statement = statementOf({ ...facts, propertyId, splitId, languages });
      return statement === null ? [] : [[letter, statement]];
    }),
  );
}

function languagesIn({ language, also }: Letter): readonly [Language, ...Language[]] {
  return also === undefined ? [language] : [language, also.language];
}

/** A proposed split with an amount says so; judged by its parts, since words of old letters differ. */
function saysEnclosed({ kind, blocks }: Letter): boolean {
  return kind === "proposed-split" && blocks.some((block) => block.kind === "amount");
}
