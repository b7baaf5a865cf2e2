import { and, asc, eq, sql } from "drizzle-orm";
import type { Db } from "#db/open.ts";
import { preparedOn } from "#db/prepared.ts";
import { wordings, wordingUses } from "#db/schema.ts";
import type { LetterKind } from "#lib/domain/facts/notice.ts";
import type { Wording, WordingUse } from "#lib/domain/facts/wording.ts";
import type { Language } from "#lib/domain/say/language.ts";

const WORDING = {
  kind: wordings.kind,
  language: wordings.language,
  version: wordings.version,
  text: wordings.text,
  savedBy: wordings.savedBy,
  savedAt: wordings.savedAt,
};

const USE = {
  kind: wordingUses.kind,
  language: wordingUses.language,
  version: wordingUses.version,
  by: wordingUses.by,
  at: wordingUses.at,
};

/** Every version of a kind's wording in a language, the first one first. */
export function listWordings(db: Db, kind: LetterKind, language: Language): Wording[] {
  const selected = preparedOn(db, wordings, () =>
    db
      .select(WORDING)
      .from(wordings)
      .where(
        and(
          eq(wordings.kind, sql.placeholder("kind")),
          eq(wordings.language, sql.placeholder("language")),
        ),
      )
      .orderBy(asc(wordings.version))
      .prepare(),
  );
  return selected.all({ kind, language });
}

/** What is in use of each kind and language that ever had a wording: the last word on each. */
export function listUses(db: Db): WordingUse[] {
  const all = preparedOn(db, wordingUses, () =>
    db.select(USE).from(wordingUses).orderBy(asc(wordingUses.position)).prepare(),
  ).all();
  return [...new Map(all.map((use) => [`${use.kind} ${use.language}`, use])).values()];
}

/** The wordings that letters are written in; a kind in the house's own is not among them. */
export function wordingsInUse(db: Db): Wording[] {
  return listUses(db).flatMap(({ kind, language, version }) =>
    listWordings(db, kind, language).filter((each) => each.version === version),
  );
}

export function insertWording(db: Db, wording: Wording): void {
  db.insert(wordings).values(wording).run();
}

export function insertUse(db: Db, use: WordingUse): void {
  db.insert(wordingUses).values(use).run();
}
