import type { LineFile } from "../facts/line-file.ts";
import type { Party, PartyKind, PartyRole } from "../facts/party.ts";

/** Somebody whose signature binds a property. */
export interface Signer {
  readonly partyId: string;
  readonly role: PartyRole;
  /** How the name stands over the signature: `Winfield Family Trust, by its trustee`. */
  readonly name: string;
  /** The title holder’s name alone. */
  readonly holder: string;
  /** In what capacity it is signed, as typed; empty where a person signs alone, or nobody said. */
  readonly capacity: string;
  /** A trust, firm, estate, association or public body of which nobody said who signs for it. */
  readonly capacityMissing: boolean;
  /** Who holds title with them without being named; empty where nobody is known to. */
  readonly heldWith: string;
}

type Holders = Pick<LineFile, "roles" | "parties">;

const TITLE_ROLES: readonly PartyRole[] = ["owner", "contract-purchaser", "crossed-lot-owner"];

/**
 * All who must sign for a property: every title holder, contract purchasers too. An association
 * signs where no title holder is known. Trade practice on joint sewers: one owner's word does not
 * bind the others.
 */
export function signersFor(file: Holders, propertyId: string): Signer[] {
  const holders = withRoles(file, propertyId, TITLE_ROLES);
  return holders.length > 0 ? holders : withRoles(file, propertyId, ["association"]);
}

function withRoles(file: Holders, propertyId: string, roles: readonly PartyRole[]): Signer[] {
  const seen = new Set<string>();
  return file.roles.flatMap(({ partyId, propertyId: at, role, capacity, heldWith }) => {
    if (at !== propertyId || !roles.includes(role) || seen.has(partyId)) return [];
    const party = file.parties.find((each) => each.id === partyId);
    if (party === undefined) return [];
    seen.add(partyId);
    const held = { holder: party.name, heldWith: heldWith.trim() };
    return [{ partyId, role, ...held, ...signature(party, capacity.trim()) }];
  });
}

const SIGNS_ITSELF: readonly PartyKind[] = ["person"];

function signature(
  party: Party,
  capacity: string,
): Pick<Signer, "name" | "capacity" | "capacityMissing"> {
  const itself = SIGNS_ITSELF.includes(party.kind);
  if (itself || capacity === "")
    return { name: party.name, capacity: "", capacityMissing: !itself };
  return { name: `${party.name}, by its ${capacity}`, capacity, capacityMissing: false };
}
