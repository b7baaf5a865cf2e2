import { createHash } from "node:crypto";
import type { Db } from "#db/open.ts";
import { openDb } from "#db/open.ts";
import { listAuthorities } from "#db/queries/authority.ts";
import { isWhole } from "#db/queries/backup.ts";
import { databaseState } from "#db/queries/database-state.ts";
import { listForms } from "#db/queries/form.ts";
import { listLines } from "#db/queries/line.ts";
import { getKeptFile } from "#db/queries/line-file.ts";
import { missingGuards, takenOut } from "#db/queries/proof.ts";
import { type ChainFault, checkChain } from "#lib/domain/consent/chain.ts";
import type { Authority } from "#lib/domain/facts/authority.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import { contradictions } from "#lib/domain/facts/recorded.ts";
import { nameRow } from "#lib/domain/facts/references.ts";
import { ok, type Result } from "#lib/result.ts";
import { databaseOf } from "#lib/storage/data-folder.ts";
import { isStoredWhole } from "#lib/storage/store.ts";
import type { Refusal } from "./act.ts";
import { refuse } from "./change.ts";

/** Something that was changed behind the program's back, or got lost. */
interface DataFault {
  /** The line's name; empty for the office as a whole. */
  readonly where: string;
  readonly words: string;
}

export interface OfficeCheck {
  readonly lines: number;
  readonly signatures: number;
  readonly letters: number;
  readonly files: number;
  readonly faults: readonly DataFault[];
}

/**
 * Looks through everything that counts as proof in an office's data, changing nothing of it: the
 * database and its guards, the numbering of the history, each line's chain of signatures, the words of
 * sent letters and the bytes of stored files against their fingerprints, and money, consents, replies,
 * deliveries, steps and splits against what the history says was written. Recordings are not read.
 */
export function checkOffice({
  dataFolder,
}: {
  readonly dataFolder: string;
}): Result<OfficeCheck, Refusal> {
  const file = databaseOf(dataFolder);
  const state = databaseState(file);
  if (state !== "ours") return refuse("not-found", "", `the database in ${dataFolder} is ${state}`);
  const guards = missingGuards(file);
  const db = openDb(file);
  try {
    const files = listLines(db).flatMap(({ id }) => getKeptFile(db, id) ?? []);
    return ok({
      lines: files.length,
      signatures: sum(files, ({ signatures }) => signatures.length),
      letters: sum(files, ({ notices }) => notices.filter(({ frozen }) => frozen !== null).length),
      files: sum(files, ({ uploads }) => uploads.length),
      faults: [
        ...(isWhole(db) ? [] : [{ where: "", words: "SQLite finds the database damaged" }]),
        ...(guards.length === 0 ? [] : [{ where: "", words: guardWords(guards) }]),
        ...takenOut(db).map(({ words, count }) => ({
          where: "",
          words: `${count} ${count === 1 ? "entry was" : "entries were"} removed from ${words}`,
        })),
        ...files.flatMap((each) => faultsOf(dataFolder, each)),
        ...listAuthorities(db).flatMap((authority) => formFaults(db, dataFolder, authority)),
      ],
    });
  } finally {
    db.$client.close();
  }
}

function sum(files: readonly LineFile[], count: (file: LineFile) => number): number {
  return files.reduce((total, file) => total + count(file), 0);
}

function guardWords(names: readonly string[]): string {
  return `${names.length} of the database's guards were missing or changed and are there again: ${names.join(", ")}`;
}

/** Forms whose PDF is gone or is another one. */
function formFaults(db: Db, dataFolder: string, { id, name }: Authority): DataFault[] {
  return listForms(db, id)
    .filter(({ sha256: hash }) => !isStoredWhole(dataFolder, hash))
    .map(({ title }) => ({
      where: name,
      words: `The form “${title}”: its PDF is missing, or is not the one that came in`,
    }));
}

function faultsOf(dataFolder: string, file: LineFile): DataFault[] {
  const where = file.line.name;
  return [
    ...chainFaults(file),
    ...letterFaults(file),
    ...storedFaults(dataFolder, file),
    ...recordFaults(file),
  ].map((words) => ({ where, words }));
}

const CHAIN_WORDS: Record<ChainFault, string> = {
  changed: "its words, or the consent that it stands for, are not what was signed",
  "out-of-order": "it does not follow from the one before it",
};

function chainFaults(file: LineFile): string[] {
  return checkChain(file, sha256).flatMap(({ signatureId, fault }) => {
    if (fault === null) return [];
    const signature = file.signatures.find(({ id }) => id === signatureId);
    return [
      `The signature of ${signature?.signedName ?? ""}, ${signature?.signedAt ?? ""}: ${CHAIN_WORDS[fault]}`,
    ];
  });
}

function letterFaults(file: LineFile): string[] {
  return file.notices.flatMap(({ id, frozen, frozenHash }) =>
    frozen === null || sha256(frozen) === frozenHash
      ? []
      : [`The ${nameRow(file, "notices", id)}: its words are not those that were sent`],
  );
}

function storedFaults(dataFolder: string, { uploads }: LineFile): string[] {
  return uploads.flatMap(({ name, sha256: hash }) =>
    isStoredWhole(dataFolder, hash)
      ? []
      : [`The stored file ${name}: its bytes are missing, or are not those that came in`],
  );
}

function recordFaults(file: LineFile): string[] {
  const { found, gone } = contradictions(file);
  return [
    ...found.map(
      ({ list, id, fields }) =>
        `${nameRow(file, list, id)} is not as it was recorded: ${fields.join(", ")}`,
    ),
    ...gone.map(({ list, id }) => `A row of ${list} that was recorded is gone (${id})`),
  ];
}

function sha256(text: string): string {
  return createHash("sha256").update(text).digest("hex");
}
