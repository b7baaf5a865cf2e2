import { CONSENT_KINDS, type Consent, type ConsentKind } from "#lib/domain/consent/consent.ts";
import type { ConsentRow } from "#lib/domain/consent/table.ts";
import type { LineFile } from "#lib/domain/file/line-file.ts";

/** What one signer said to one kind of consent, and whether anybody needs it. */
export interface SignerCell {
  readonly kind: ConsentKind;
  /** The newest word; null: not asked. */
  readonly consent: Consent | null;
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
export function signerRows(
  file: Pick<LineFile, "consents">,
  table: readonly ConsentRow[],
): SignerRow[] {
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
  file: Pick<LineFile, "consents">,
  row: ConsentRow,
  { kind, partyId }: { readonly kind: ConsentKind; readonly partyId: string },
): SignerCell {
  const { needed, inHand, open } = row.cells[kind];
  const own = file.consents.filter(
    (consent) =>
      consent.kind === kind && consent.partyId === partyId && consent.propertyId === row.propertyId,
  );
  return {
    kind,
    consent: own.toSorted((one, other) => one.stateOn.localeCompare(other.stateOn)).at(-1) ?? null,
    open: needed && !inHand && open.some((each) => each.partyId === partyId),
  };
}
