import { deleteAuthority, getAuthority } from "#db/queries/authority.ts";
import { listLines } from "#db/queries/line.ts";
import { ok, type Result } from "#lib/result.ts";
import type { Act, Refusal } from "./act.ts";
import { changeOffice, refuse } from "./change.ts";

/** Takes out an authority that was added by mistake. Refuses while a line, open or closed, lies with it. */
export function removeAuthority(
  act: Act,
  { authorityId }: { readonly authorityId: string },
): Result<null, Refusal> {
  const deal = { deed: "run-the-office", action: "remove-authority" } as const;
  return changeOffice(act, deal, (db) => {
    const before = getAuthority(db, authorityId);
    if (before === null) return refuse("not-found", "", "the authority");
    const lines = listLines(db).filter((line) => line.authorityId === authorityId);
    if (lines.length > 0) {
      const names = lines.slice(0, 3).map(({ name }) => name);
      const more = lines.length > names.length ? ` and ${lines.length - names.length} more` : "";
      return refuse("in-use", "", `It is the authority of ${names.join(", ")}${more}`);
    }
    return ok({
      value: null,
      sentence: `Removed the authority ${before.name}.`,
      detail: { before, after: null },
      write: (one) => deleteAuthority(one, authorityId),
    });
  });
}
