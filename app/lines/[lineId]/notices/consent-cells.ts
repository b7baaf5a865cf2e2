import { sentDayOf } from "#lib/domain/calendar/happenings.ts";
import type { ConsentRow } from "#lib/domain/consent/table.ts";
import { CONSENT_KINDS, type Consent, type ConsentKind } from "#lib/domain/facts/consent.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import { askedByLetter } from "#lib/domain/notices/asked-by-letter.ts";
import type { Day } from "#lib/domain/time/day.ts";

/** What one signer said to one kind of consent, and whether anybody needs it. */
export interface SignerCell {
  readonly kind: ConsentKind;
  /** The newest word; null: they have said nothing. */
  readonly consent: Consent | null;
  /** The day of the letter that asked them, while they have said nothing; null: not asked. */
  readonly askedOn: Day | null;
  /** Asked for by the work, the split or an agreement that is begun, and not in hand yet. */
  readonly open: boolean;
}

export interface SignerRow {
  readonly partyId: string;
  readonly propertyId: string;
  readonly cells: readonly SignerCell[];
}

/**
 * Every signer of every property with the newest word on each consent; also others, such as an
 * occupant who let somebody in, once something of theirs was recorded.
 */
export function signerRows(file: LineFile, table: readonly ConsentRow[]): SignerRow[] {
  return table.flatMap((row) => {
    const signers = row.signers.map((signer) => signer.partyId);
    const others = file.consents
      .filter((consent) => consent.propertyId === row.propertyId)
      .map((consent) => consent.partyId);
    return [...new Set([...signers, ...others])].map((partyId) => ({
      partyId,
      propertyId: row.propertyId,
      cells: CONSENT_KINDS.map((kind) => cellOf(file, row, { kind, partyId })),
    }));
  });
}

function cellOf(
  file: LineFile,
  row: ConsentRow,
  { kind, partyId }: { readonly kind: ConsentKind; readonly partyId: string },
): SignerCell {
  const { needed, inHand, open } = row.cells[kind];
  const own = file.consents.filter(
    (consent) =>
      consent.kind === kind && consent.partyId === partyId && consent.propertyId === row.propertyId,
  );
  const consent = own.toSorted((one, other) => one.stateOn.localeCompare(other.stateOn)).at(-1);
  const letter = askedByLetter(file, { kind, partyId, propertyId: row.propertyId });
  return {
    kind,
    consent: consent ?? null,
    askedOn: consent === undefined && letter !== null ? sentDayOf(file, letter) : null,
    open: needed && !inHand && open.some((each) => each.partyId === partyId),
  };
}
