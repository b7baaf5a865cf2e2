import { and, eq } from "drizzle-orm";
import type { Db } from "#db/open.ts";
import { parties } from "#db/schema.ts";

/** What a party is called; empty where it is no longer in the file. */
export function getPartyName(
  db: Db,
  { lineId, partyId }: { readonly lineId: string; readonly partyId: string },
): string {
  const found = db
    .select({ name: parties.name })
    .from(parties)
    .where(and(eq(parties.lineId, lineId), eq(parties.id, partyId)))
    .get();
  return found?.name ?? "";
}
