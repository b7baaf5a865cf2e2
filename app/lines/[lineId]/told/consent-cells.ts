import { CONSENT_KINDS, type Consent, type ConsentKind } from "#lib/domain/consent/consent.ts";
import type { LineFile } from "#lib/domain/file/line-file.ts";
import type { PartyRole } from "#lib/domain/party/party.ts";

/** One party for one property, with the newest consent of each kind. */
export interface ConsentRow {
  readonly partyId: string;
  readonly propertyId: string;
  readonly role: PartyRole;
  readonly cells: Readonly<Record<ConsentKind, Consent | null>>;
}

/** Those whose consent counts: whoever can sign for a lot. Occupants are asked to let people in. */
const SIGNERS: readonly PartyRole[] = [
  "owner",
  "contract-purchaser",
  "association",
  "manager",
  "crossed-lot-owner",
];

/** Every signer and every property that they sign for; also occupants once something was recorded. */
export function consentRows(file: Pick<LineFile, "roles" | "consents">): ConsentRow[] {
  const rows: ConsentRow[] = [];
  for (const { partyId, propertyId, role } of file.roles) {
    const own = file.consents.filter(
      (consent) => consent.partyId === partyId && consent.propertyId === propertyId,
    );
    if (!SIGNERS.includes(role) && own.length === 0) continue;
    if (rows.some((row) => row.partyId === partyId && row.propertyId === propertyId)) continue;
    rows.push({ partyId, propertyId, role, cells: cellsOf(own) });
  }
  return rows;
}

function cellsOf(consents: readonly Consent[]): ConsentRow["cells"] {
  const newest = (kind: ConsentKind) =>
    consents
      .filter((consent) => consent.kind === kind)
      .toSorted((one, other) => one.stateOn.localeCompare(other.stateOn))
      .at(-1) ?? null;
  const cells = CONSENT_KINDS.map((kind) => [kind, newest(kind)]);
  return Object.fromEntries(cells) as Record<ConsentKind, Consent | null>;
}
