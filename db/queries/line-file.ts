import type { Db } from "#db/open.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import { LIST_NAMES, type ListName } from "#lib/domain/facts/list-name.ts";
import { withPartiesAsOne } from "#lib/domain/party/as-one.ts";
import { getAuthority } from "./authority.ts";
import { getLine } from "./line.ts";
import { listRows } from "./row.ts";

/** Everything that is known of a line, merged parties as one; null where there is no such line. */
export function getLineFile(db: Db, lineId: string): LineFile | null {
  const kept = getKeptFile(db, lineId);
  return kept === null ? null : withPartiesAsOne(kept);
}

/** The same as it is kept: each party by itself, with who said which of them are one. */
export function getKeptFile(db: Db, lineId: string): LineFile | null {
  return db.transaction((one) => readLineFile(one, lineId));
}

function readLineFile(db: Db, lineId: string): LineFile | null {
  const line = getLine(db, lineId);
  if (line === null) return null;
  const lists = LIST_NAMES.map((list) => [list, listRows(db, list, lineId)]);
  return {
    line,
    authority: line.authorityId === null ? null : getAuthority(db, line.authorityId),
    ...(Object.fromEntries(lists) as Pick<LineFile, ListName>),
  };
}
