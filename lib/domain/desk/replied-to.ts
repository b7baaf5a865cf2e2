import type { LedgerEntry } from "../facts/ledger-entry.ts";
import type { LineFile } from "../facts/line-file.ts";
import type { Notice, Reply } from "../facts/notice.ts";
import { LETTER_SAID } from "../facts/notice-words.ts";
import { billedParties } from "../ledger/billed-to.ts";
import { sayParty, sayProperty } from "../party/say.ts";
import { signersFor } from "../party/signers.ts";

/** What a reply answers: a letter, or an invoice that was sent without one. */
export interface RepliedTo {
  /** Who replied, where only one person can have; else null, and it is somebody of the property. */
  readonly name: string | null;
  /** Those who may be asked back. */
  readonly partyIds: readonly string[];
  readonly propertyId: string | null;
  /** `proposed split`, `invoice No. 3`. */
  readonly what: string;
  readonly notice: Notice | null;
}

type Facts = Pick<LineFile, "notices" | "ledger" | "parties" | "roles" | "properties">;

/** What a reply of the file answers, and whose it is; null where that is no longer there. */
export function repliedTo(
  file: Facts,
  { noticeId, entryId }: Pick<Reply, "noticeId" | "entryId">,
): RepliedTo | null {
  const notice = file.notices.find(({ id }) => id === noticeId);
  if (notice !== undefined) {
    const { partyId, propertyId, kind } = notice;
    const name = sayParty(file, partyId);
    return { name, partyIds: [partyId], propertyId, what: LETTER_SAID[kind], notice };
  }
  const invoice = file.ledger.find(({ id }) => id === entryId);
  if (invoice === undefined) return null;
  const billed = billedParties(file, invoice);
  const [only] = billed;
  return {
    name: only !== undefined && isHeldAlone(file, invoice) ? only.name : null,
    partyIds: billed.map(({ id }) => id),
    propertyId: invoice.propertyId,
    what: `invoice No. ${invoice.number}`,
    notice: null,
  };
}

/**
 * Whether an invoice can only have gone to its own party: it holds title alone, or not at all. Whom a
 * joint account names depends on what was invoiced since.
 */
function isHeldAlone(file: Facts, { partyId, propertyId }: LedgerEntry): boolean {
  const holders = signersFor(file, propertyId).map((holder) => holder.partyId);
  return !holders.includes(partyId) || holders.length === 1;
}

/** Who replied, inside of a sentence: by name, or `someone at 12 Fennel Row`. */
export function sayReplier(file: Facts, { name, propertyId }: RepliedTo): string {
  return name ?? `someone at ${sayProperty(file, propertyId ?? "")}`;
}

/** The same where a sentence begins; a name stays as it is written. */
export function beginWithReplier(file: Facts, to: RepliedTo): string {
  return to.name ?? `S${sayReplier(file, to).slice(1)}`;
}
