import { getLineFile } from "#db/queries/line-file.ts";
import { getOffice } from "#db/queries/office.ts";
import { type LinkView, linkView } from "#lib/domain/consent/link-view.ts";
import type { LinkDeed, PrivateLink } from "#lib/domain/consent/private-link.ts";
import type { Upload } from "#lib/domain/file/line-file.ts";
import { reportOn } from "#lib/domain/file/report-on.ts";
import { ok, type Result } from "#lib/result.ts";
import type { Refusal } from "./act.ts";
import { findOpenLink, type LinkDoor, noteVisit, stopped } from "./link-door.ts";

/**
 * What a private link shows, with the visit noted. Changes nothing in the line's file. A secret that
 * opens nothing gets one and the same answer whatever the reason.
 */
export function openLink(door: LinkDoor, secret: string): Result<LinkView, Refusal> {
  return opened(door, secret, { deed: "opened", take: ({ view }) => view });
}

/** The stored bytes behind a letter, or behind what its reader signed: nothing else of the line. */
export function openLinkPaper(
  door: LinkDoor,
  secret: string,
  uploadId: string | null,
): Result<Upload, Refusal> {
  return opened(door, secret, {
    deed: "opened-letter",
    take: ({ view, uploads }) => {
      const own = [view.documentId, ...view.signed.map(({ signature }) => signature.documentId)];
      const wanted = uploadId ?? view.documentId;
      const upload = own.includes(wanted) ? uploads.find(({ id }) => id === wanted) : undefined;
      return upload ?? null;
    },
  });
}

interface Opened {
  readonly link: PrivateLink;
  readonly view: LinkView;
  readonly uploads: readonly Upload[];
}

function opened<T>(
  door: LinkDoor,
  secret: string,
  { deed, take }: { deed: LinkDeed; take: (one: Opened) => T | null },
): Result<T, Refusal> {
  return door.db.transaction(
    (db) => {
      const inside = { ...door, db };
      const found = findOpenLink(inside, secret, "opening");
      if (!found.ok) return found;
      const link = found.value;
      const file = getLineFile(db, link.lineId);
      const office = getOffice(db);
      const notice = file?.notices.find(({ id }) => id === link.noticeId);
      if (!file || !office || !notice) return stopped("gone");
      const view = linkView({ file, report: reportOn(file, door.today), office, link, notice });
      if (view === null) return stopped("gone");
      const value = take({ link, view, uploads: file.uploads });
      if (value === null) return stopped("letter-not-ready");
      noteVisit(inside, db, link, deed);
      return ok(value);
    },
    { behavior: "immediate" },
  );
}
