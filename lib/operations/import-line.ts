import { createHash } from "node:crypto";
import type { Db } from "#db/open.ts";
import { getAuthority, putAuthority } from "#db/queries/authority.ts";
import { insertHistory } from "#db/queries/history.ts";
import { getLine, insertLine } from "#db/queries/line.ts";
import { checkReferencesAtEnd, insertRow, ROW_LISTS } from "#db/queries/row.ts";
import { putKeeper } from "#db/queries/summary.ts";
import { getUpload } from "#db/queries/upload.ts";
import { getUser } from "#db/queries/user.ts";
import { type ChainFault, checkChain } from "#lib/domain/consent/chain.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import { type ActorRole, mayDo } from "#lib/domain/facts/user.ts";
import { withSightings } from "#lib/domain/report/with-sightings.ts";
import { type FileProblem, type ReadFile, readLineFile } from "#lib/exchange/line-file.ts";
import { err, ok, type Result } from "#lib/result.ts";
import { keepBytes } from "#lib/storage/keep-bytes.ts";
import type { Act, Refusal, RefusalReason } from "./act.ts";
import { tell } from "./change.ts";

/** Why a file was not taken in; nothing of it was. */
export interface ImportRefusal extends Refusal {
  readonly problems: readonly FileProblem[];
}

/**
 * Takes a line file into the office as it is, history and stored files included. Refuses a line that
 * is there already, a file with anything wrong in it, and stored files without their bytes. Tie-ins
 * that were seen and written down without one get theirs. Signatures have to be what was signed. An authority that the office knows stays
 * as the office has it; one that it does not know comes in only through an admin.
 */
export function importLine(act: Act, text: string): Result<{ lineId: string }, ImportRefusal> {
  if (!mayDo(act.actor.role, "work-the-file")) return refuse("not-allowed", []);
  const read = readLineFile(text);
  if (!read.ok) return refuse("bad-value", read.error);
  const { contents } = read.value;
  const file = withSightings(read.value.file, act.newId);
  return act.db.transaction(
    (db) => {
      if (getLine(db, file.line.id) !== null)
        return refuse("already-there", [
          { path: "line.id", reason: `There is a line with the id "${file.line.id}" already` },
        ]);
      const problems = [
        ...chainProblems(file),
        ...uploadProblems(db, read.value),
        ...authorityProblems(db, file, act.actor.role),
      ];
      if (problems.length > 0) return refuse("bad-value", problems);
      for (const upload of file.uploads)
        keepBytes(act.dataFolder, upload.sha256, contents.get(upload.id) ?? new Uint8Array());
      insertFile(db, file);
      if (getUser(db, act.actor.id) !== null) putKeeper(db, file.line.id, act.actor.id);
      tell(
        { ...act, db },
        {
          lineId: null,
          action: "import-line",
          sentence: `Imported the line file of ${file.line.name}.`,
          detail: { lineId: file.line.id },
        },
      );
      return ok({ lineId: file.line.id });
    },
    { behavior: "immediate" },
  );
}

function insertFile(db: Db, file: LineFile): void {
  const lineId = file.line.id;
  checkReferencesAtEnd(db);
  if (file.authority !== null && getAuthority(db, file.authority.id) === null)
    putAuthority(db, file.authority);
  insertLine(db, file.line);
  for (const list of ROW_LISTS)
    file[list].forEach((row, position) => {
      insertRow(db, list, { lineId, row: row as never, position });
    });
  for (const entry of file.history) insertHistory(db, lineId, entry);
}

/** A signature that is not what was signed, or not in its place, comes in as no signature at all. */
function chainProblems(file: LineFile): FileProblem[] {
  const sha256 = (text: string) => createHash("sha256").update(text).digest("hex");
  return checkChain(file, sha256).flatMap(({ fault }, at) =>
    fault === null ? [] : [{ path: `signatures.${at}`, reason: CHAIN_WORDS[fault] }],
  );
}

const CHAIN_WORDS: Record<ChainFault, string> = {
  changed: "The signature, or the consent that it stands for, is not what was signed",
  "out-of-order": "The signature does not follow from the one before it",
};

function uploadProblems(db: Db, { file, contents }: ReadFile): FileProblem[] {
  return file.uploads.flatMap(({ id, name }, at) => {
    const path = `uploads.${at}`;
    if (!contents.has(id))
      return [
        { path: `${path}.content`, reason: `The bytes of ${name || "the file"} are missing` },
      ];
    if (getUpload(db, id) !== null)
      return [{ path: `${path}.id`, reason: `Another line has a stored file with the id "${id}"` }];
    return [];
  });
}

/**
 * The office's own authority has to have the rule that the line rests on; one that the office does
 * not know comes in with its rules, fees and clocks, which is for those who run the office.
 */
function authorityProblems(db: Db, { line, authority }: LineFile, role: ActorRole): FileProblem[] {
  if (authority === null) return [];
  const own = getAuthority(db, authority.id);
  if (own === null && !mayDo(role, "run-the-office")) {
    const reason = `The office has no authority with the id "${authority.id}" yet, and its rules are for an admin to import; have an admin import this file or add ${authority.name} first, or write null here and in line.authorityId and line.ruleId`;
    return [{ path: "authority", reason }];
  }
  if (own === null || line.ruleId === null) return [];
  if (own.rules.some(({ id }) => id === line.ruleId)) return [];
  const reason = `The office's own ${own.name} has no rule with the id "${line.ruleId}"; add it under Office first`;
  return [{ path: "line.ruleId", reason }];
}

/** The first problems also make the sentence for people. */
function refuse(
  reason: RefusalReason,
  problems: readonly FileProblem[],
): Result<never, ImportRefusal> {
  const words = problems
    .slice(0, 5)
    .map(({ path, reason: why }) => (path ? `${path}: ${why}` : why));
  const rest = problems.length - words.length;
  const detail = `${words.join("; ")}${rest > 0 ? `; and ${rest} more` : ""}`;
  return err({ reason, path: problems[0]?.path ?? "", detail, problems });
}
