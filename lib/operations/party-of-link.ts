import type { Db } from "#db/open.ts";
import { getLineFile } from "#db/queries/line-file.ts";
import type { PrivateLink } from "#lib/domain/consent/private-link.ts";

/** The name of who a link was made for; empty where they are no longer in the file. */
export function partyOfLink(db: Db, { lineId, partyId }: PrivateLink): string {
  return getLineFile(db, lineId)?.parties.find(({ id }) => id === partyId)?.name ?? "";
}
