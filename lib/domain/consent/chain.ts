import type { Consent } from "../facts/consent.ts";
import type { Signature } from "../facts/signature.ts";

/** SHA-256 of a text's UTF-8 bytes, as 64 lower-case hexadecimal digits. */
export type Sha256 = (text: string) => string;

/** Before the first signature on a line. */
export const CHAIN_START = "0".repeat(64);

type Terms = Pick<Consent, "kind" | "partyId" | "propertyId" | "stateOn" | "splitId" | "amount">;

type Unsealed = Omit<Signature, "hash" | "previousHash">;

/**
 * A signature with its place in the line's chain: the hash of everything that it says, of what it
 * consents to, and of the signature before it. To change one later is to break all that follow.
 */
export function sealSignature(
  unsealed: Unsealed,
  { consent, previousHash, sha256 }: { consent: Terms; previousHash: string; sha256: Sha256 },
): Signature {
  const hash = sha256(sealedText(unsealed, consent, previousHash));
  return { ...unsealed, previousHash, hash };
}

/** The hash that the next signature on a line has to carry. */
export function lastHash(signatures: readonly Pick<Signature, "hash">[]): string {
  return signatures.at(-1)?.hash ?? CHAIN_START;
}

/** Fields by name and order, so that neither may move: any change gives another hash. */
function sealedText(one: Unsealed, consent: Terms, previousHash: string): string {
  // Signatures from before the party's name was kept are sealed without it.
  const named = one.forName === "" ? ["wyebook-signature-1"] : ["wyebook-signature-2", one.forName];
  return JSON.stringify([
    ...named,
    previousHash,
    one.id,
    one.consentId,
    consent.kind,
    consent.partyId,
    consent.propertyId,
    consent.stateOn,
    consent.splitId,
    consent.amount,
    one.linkId,
    one.signedName,
    one.drawingId,
    one.intent,
    one.disclosure,
    one.disclosureVersion,
    one.documentId,
    one.documentHash,
    one.signedAt,
    one.zone,
    one.address,
    one.agent,
    one.views.map(({ at, what }) => [at, what]),
    one.copyMessageId,
  ]);
}

const CHAIN_FAULTS = [
  /** What it says is not what was signed: a field or its consent was changed. */
  "changed",
  /** It does not follow from the one before it: one was taken out, put in or moved. */
  "out-of-order",
] as const;
export type ChainFault = (typeof CHAIN_FAULTS)[number];

export interface ChainLink {
  readonly signatureId: string;
  /** Null: it is what was signed, in its place. */
  readonly fault: ChainFault | null;
}

/** Reads a line's chain of signatures from the first to the last and says where it does not hold. */
export function checkChain(
  { signatures, consents }: { signatures: readonly Signature[]; consents: readonly Consent[] },
  sha256: Sha256,
): ChainLink[] {
  return signatures.map((signature, at) => {
    const consent = consents.find(({ id }) => id === signature.consentId);
    const whole =
      consent !== undefined &&
      sha256(sealedText(signature, consent, signature.previousHash)) === signature.hash;
    const follows = signature.previousHash === lastHash(signatures.slice(0, at));
    return { signatureId: signature.id, fault: faultOf(whole, follows) };
  });
}

function faultOf(whole: boolean, follows: boolean): ChainFault | null {
  if (!whole) return "changed";
  return follows ? null : "out-of-order";
}
