import { getPartyName } from "#db/queries/party.ts";
import { insertRow } from "#db/queries/row.ts";
import type { Consent } from "#lib/domain/consent/consent.ts";
import { consentsBy } from "#lib/domain/consent/signable.ts";
import { nameRow } from "#lib/domain/file/references.ts";
import { ok, type Result } from "#lib/result.ts";
import type { Refusal } from "./act.ts";
import { changeLine } from "./change.ts";
import {
  actOfLink,
  findOpenLink,
  isStillOpen,
  type LinkDoor,
  noteVisit,
  stopped,
} from "./link-door.ts";

/**
 * Takes back, by the same party's private link, a consent that was signed on screen. What was signed
 * stays readable; the newest word is that it was withdrawn.
 */
export function withdrawByLink(
  door: LinkDoor,
  { secret, consentId }: { readonly secret: string; readonly consentId: string },
): Result<{ consentId: string }, Refusal> {
  const found = findOpenLink(door, secret, "doing");
  if (!found.ok) return found;
  const link = found.value;
  const { lineId } = link;
  const act = actOfLink(door, link, getPartyName(door.db, link));
  const deal = {
    lineId,
    deed: "answer-own-letter",
    action: "withdraw-by-link",
    evenClosed: true,
  } as const;
  return changeLine(act, deal, (file, db) => {
    if (!isStillOpen(db, link, door.now)) return stopped("gone");
    const notice = file.notices.find(({ id }) => id === link.noticeId);
    const given = file.consents.find(({ id }) => id === consentId);
    const signed = file.signatures.some((each) => each.consentId === consentId);
    if (
      !notice ||
      !given ||
      !signed ||
      given.partyId !== link.partyId ||
      given.propertyId !== notice.propertyId
    )
      return stopped("nothing-to-withdraw");
    const latest = consentsBy(file, notice, given.kind)
      .toSorted((one, other) => one.stateOn.localeCompare(other.stateOn))
      .at(-1);
    if (latest?.state !== "given") return stopped("nothing-to-withdraw");
    const withdrawn: Consent = {
      ...given,
      id: act.newId(),
      state: "withdrawn",
      stateOn: act.today,
      uploadId: null,
      note: "Taken back by private link",
    };
    return ok({
      value: { consentId: withdrawn.id },
      sentence: `Consent to ${given.kind}, ${nameRow(file, "parties", given.partyId)} for ${nameRow(file, "properties", given.propertyId)}: taken back by private link.`,
      detail: { before: given, after: withdrawn },
      write: (one) => {
        insertRow(one, "consents", { lineId, row: withdrawn });
        noteVisit(door, one, link, "withdrew");
      },
    });
  });
}
