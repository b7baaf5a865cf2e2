import "server-only";
import { db } from "#app/db.ts";
import { countOfficeEntries } from "#db/queries/history.ts";

/** How often the office's own facts, authorities among them, were changed: only ever grows. */
export function officeRevision(): number {
  return countOfficeEntries(db());
}
