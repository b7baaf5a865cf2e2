import { getPartyName } from "#db/queries/party.ts";
import { insertRow, listRows } from "#db/queries/row.ts";
import { MOST_LINK_FILES, type PrivateLink } from "#lib/domain/consent/private-link.ts";
import type { Upload } from "#lib/domain/facts/upload.ts";
import { ok, type Result } from "#lib/result.ts";
import type { StoredFile } from "#lib/storage/store.ts";
import type { Refusal } from "./act.ts";
import { plainName } from "./add-upload.ts";
import { changeLine } from "./change.ts";
import {
  actOfLink,
  findOpenLink,
  isStillOpen,
  type LinkDoor,
  noteVisit,
  stopped,
} from "./link-door.ts";

interface LinkFile {
  readonly name: string;
  readonly stored: StoredFile;
}

/** Marks the files that came by one link: only those can go with an answer by it. */
export function fileNote({ id }: Pick<PrivateLink, "id">): string {
  return `By private link ${id}`;
}

/** The link that may take in one more file: asked before the file is taken in. */
export function mayAddLinkFile(door: LinkDoor, secret: string): Result<PrivateLink, Refusal> {
  const found = findOpenLink(door, secret, "doing");
  if (!found.ok) return found;
  const uploads = listRows(door.db, "uploads", found.value.lineId);
  return hasRoom(uploads, found.value) ? found : stopped("too-many-files");
}

/** Puts a file that a neighbor sent by their link into the line's file. */
export function addLinkFile(
  door: LinkDoor,
  link: PrivateLink,
  { name, stored }: LinkFile,
): Result<{ uploadId: string }, Refusal> {
  const { lineId } = link;
  const act = actOfLink(door, link, getPartyName(door.db, link));
  const deal = {
    lineId,
    deed: "answer-own-letter",
    action: "add-upload",
    evenClosed: true,
  } as const;
  return changeLine(act, deal, (file, db) => {
    if (!isStillOpen(db, link, door.now)) return stopped("gone");
    if (!hasRoom(file.uploads, link)) return stopped("too-many-files");
    const upload: Upload = {
      id: act.newId(),
      name: plainName(name),
      ...stored,
      addedBy: act.actor.name,
      addedAt: act.now,
      note: fileNote(link),
    };
    return ok({
      value: { uploadId: upload.id },
      sentence: `Added the file ${upload.name}, which came by private link.`,
      detail: { after: upload },
      write: (one) => {
        insertRow(one, "uploads", { lineId, row: upload });
        noteVisit(door, one, link, "added-file");
      },
    });
  });
}

function hasRoom(uploads: readonly Upload[], link: PrivateLink): boolean {
  return uploads.filter(({ note }) => note === fileNote(link)).length < MOST_LINK_FILES;
}
