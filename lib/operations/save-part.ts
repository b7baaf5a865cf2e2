import type { Db } from "#db/open.ts";
import { getAuthority } from "#db/queries/authority.ts";
import { countOfficeEntries, getLastOfficeEntry } from "#db/queries/history.ts";
import {
  AUTHORITY_PART_NAMES,
  type Authority,
  type AuthorityPart,
} from "#lib/domain/facts/authority.ts";
import { ok, type Result } from "#lib/result.ts";
import type { Act, Refusal } from "./act.ts";
import { refuse } from "./change.ts";
import { saveAuthority } from "./save-authority.ts";
import { changedSince, fieldsSeen } from "./seen.ts";

/** An authority as it stood at one moment. */
export interface ReadAuthority {
  readonly authority: Authority;
  /** How often the office's own facts, authorities among them, were changed: only ever grows. */
  readonly revision: number;
}

/** An authority with the revision of its tables, of one moment; null where there is none. */
export function readAuthority(db: Db, authorityId: string): ReadAuthority | null {
  return db.transaction((one) => {
    const authority = getAuthority(one, authorityId);
    return authority === null ? null : { authority, revision: countOfficeEntries(one) };
  });
}

/** As it comes from a browser: nothing of it is known to be what it should be. */
interface PartInput {
  readonly authorityId: string;
  readonly part: AuthorityPart;
  /** The revision that the rows were read at. */
  readonly base: number;
  readonly rows: unknown;
}

/**
 * Saves one table of an authority; the rest of it stays as it is now. Refuses what is no table of an
 * authority, and where somebody changed the office's facts since `base`: `detail` is who.
 */
export function savePart(
  act: Act,
  { authorityId, part, base, rows }: PartInput,
): Result<{ readonly revision: number }, Refusal> {
  if (!AUTHORITY_PART_NAMES.includes(part) || !Array.isArray(rows))
    return refuse("bad-value", "", "That table does not belong to an authority");
  return act.db.transaction(
    (db) => {
      const read = readAuthority(db, authorityId);
      if (read === null) return refuse("not-found", "", "the authority");
      if (base !== read.revision)
        return refuse("changed-meanwhile", "", getLastOfficeEntry(db)?.by ?? "");
      const changed = { ...read.authority, [part]: rows } as unknown as Authority;
      const saved = saveAuthority({ ...act, db }, changed);
      return saved.ok ? ok({ revision: countOfficeEntries(db) }) : saved;
    },
    { behavior: "immediate" },
  );
}

const FACTS = ["name", "office", "phone", "email", "note", "address"] as const;

/** What an authority is called and how it is reached, as the form was filled in from it. */
export function authorityFactsSeen(authority: Authority) {
  return fieldsSeen(authority, FACTS);
}

/**
 * Saves what an authority is called and how it is reached; its tables stay as they are now. Refuses where
 * somebody changed that since the form was filled in (`seen`: `seenOf(authorityFactsSeen(…))`).
 */
export function saveAuthorityFacts(
  act: Act,
  {
    authorityId,
    seen,
    ...facts
  }: Pick<Authority, (typeof FACTS)[number]> & {
    readonly authorityId: string;
    readonly seen?: string | undefined;
  },
): Result<{ readonly authorityId: string }, Refusal> {
  return act.db.transaction(
    (db) => {
      const authority = getAuthority(db, authorityId);
      if (authority === null) return refuse("not-found", "", "the authority");
      const last = getLastOfficeEntry(db, "save-authority");
      const changed = changedSince(seen, { now: authorityFactsSeen(authority), last });
      if (changed !== null) return changed;
      return saveAuthority({ ...act, db }, { ...authority, ...facts });
    },
    { behavior: "immediate" },
  );
}
