import { getLineFile } from "#db/queries/line-file.ts";
import { listVisits } from "#db/queries/link.ts";
import { getOffice } from "#db/queries/office.ts";
import type { LinkDeed } from "#lib/domain/consent/private-link.ts";
import type { Upload } from "#lib/domain/facts/upload.ts";
import type { Letter } from "#lib/domain/paper/letter.ts";
import { type LinkView, linkView } from "#lib/domain/paper/link-view.ts";
import { reportOn } from "#lib/domain/report/report-on.ts";
import { ok, type Result } from "#lib/result.ts";
import type { Refusal } from "./act.ts";
import { findOpenLink, type LinkDoor, noteVisit, stopped } from "./link-door.ts";

/**
 * What a private link shows, with the visit noted (`noted: false`: the page comes back after the
 * reader's own deed). Nothing is noted of somebody of the office who looks at it. Changes nothing in the line's file. A secret that opens nothing gets one and
 * the same answer whatever the reason.
 */
export function openLink(
  door: LinkDoor,
  secret: string,
  { noted = true }: { readonly noted?: boolean } = {},
): Result<LinkView, Refusal> {
  return opened(door, secret, ({ view }) => ({ value: view, deed: noted ? "opened" : null }));
}

/**
 * The stored bytes behind a letter, behind what its reader signed, or of a picture in it: nothing
 * else of the line. Without an id: the letter itself.
 */
export function openLinkPaper(
  door: LinkDoor,
  secret: string,
  uploadId: string | null,
): Result<Upload, Refusal> {
  return opened(door, secret, ({ view, uploads }) => {
    const documents = [
      view.documentId,
      ...view.signed.map(({ signature }) => signature.documentId),
    ];
    const wanted = uploadId ?? view.documentId;
    const isDocument = documents.includes(wanted);
    const mine = isDocument || picturesOf(view.letter).some((id) => id === wanted);
    const upload = mine ? uploads.find(({ id }) => id === wanted) : undefined;
    return upload && { value: upload, deed: isDocument ? "opened-letter" : null };
  });
}

function picturesOf(letter: Letter | null): string[] {
  return (letter?.blocks ?? []).flatMap((block) =>
    block.kind === "pictures" ? block.pictures.map(({ uploadId }) => uploadId) : [],
  );
}

interface Opened {
  readonly view: LinkView;
  readonly uploads: readonly Upload[];
}

/** What is handed out, and what the visit is noted as; null: not at all. */
interface Taken<T> {
  readonly value: T;
  readonly deed: LinkDeed | null;
}

function opened<T>(
  door: LinkDoor,
  secret: string,
  take: (one: Opened) => Taken<T> | undefined,
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
      const report = reportOn(file, door.today);
      const visits = listVisits(db, link.id);
      const view = linkView({ file, report, office, link, notice, visits });
      if (view === null) return stopped("gone");
      const taken = take({ view, uploads: file.uploads });
      if (taken === undefined) return stopped("letter-not-ready");
      if (taken.deed !== null && door.officeUser === "") noteVisit(inside, db, link, taken.deed);
      return ok(taken.value);
    },
    { behavior: "immediate" },
  );
}
