import type { Db } from "#db/open.ts";
import { listForms } from "#db/queries/form.ts";
import type { AuthorityForm } from "#lib/domain/facts/form.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import { readStored } from "#lib/storage/store.ts";

/** The forms in use of a line's authority. */
export function formsOf(db: Db, { authority }: Pick<LineFile, "authority">): AuthorityForm[] {
  return authority === null ? [] : listForms(db, authority.id).filter(({ retired }) => !retired);
}

/** Their PDFs by hash; one that is not in the store is left out. */
export function formBytes(
  dataFolder: string,
  forms: readonly AuthorityForm[],
): Map<string, Uint8Array> {
  return new Map(
    forms.flatMap(({ sha256 }): [string, Uint8Array][] => {
      const bytes = readStored(dataFolder, sha256);
      return bytes === null ? [] : [[sha256, bytes]];
    }),
  );
}
