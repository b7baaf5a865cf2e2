import type { Db } from "#db/open.ts";
import { insertJob } from "#db/queries/job.ts";
import { insertLink, revokeLinks } from "#db/queries/link.ts";
import {
  isLinkSecret,
  MOST_LINK_DAYS,
  type PrivateLink,
} from "#lib/domain/consent/private-link.ts";
import type { Notice } from "#lib/domain/facts/notice.ts";
import type { Act } from "./act.ts";
import { refuse } from "./change.ts";
import { hashSecret } from "./link-door.ts";
import { waitingJob } from "./waiting-job.ts";

interface Wanted {
  readonly lineId: string;
  readonly notice: Notice;
  readonly days: number;
  readonly secret: string;
}

/** A refusal where a link can't be good for so long; null where it can. */
export function wrongDays(days: number) {
  if (Number.isInteger(days) && days >= 1 && days <= MOST_LINK_DAYS) return null;
  return refuse("bad-value", "days", `Enter a whole number of days from 1 to ${MOST_LINK_DAYS}`);
}

/** A new link to a letter. The secret stays with who asked; only its hash is in the row. */
export function newLink(act: Act, { lineId, notice, days, secret }: Wanted): PrivateLink {
  if (!isLinkSecret(secret))
    throw new RangeError("Not a link's secret: 32 random bytes are wanted");
  return {
    id: act.newId(),
    lineId,
    noticeId: notice.id,
    partyId: notice.partyId,
    tokenHash: hashSecret(secret),
    createdBy: act.actor.name,
    createdAt: act.now,
    expiresAt: new Date(Date.parse(act.now) + days * 86_400_000).toISOString(),
    revokedAt: null,
    revokedBy: "",
  };
}

/** Writes a link; those to the same letter that were good until now are called back. */
export function putLink(db: Db, act: Act, link: PrivateLink): void {
  revokeLinks(db, link, { at: act.now, by: act.actor.name });
  insertLink(db, link);
}

/** Has the letter's PDF made where it is not there yet: what is signed is its bytes. */
export function askForPaper(db: Db, act: Act, { lineId, notice }: Omit<Wanted, "days" | "secret">) {
  if (notice.uploadId !== null) return;
  insertJob(db, waitingJob(act, { lineId, kind: "letters", subjectIds: [notice.id] }));
}
