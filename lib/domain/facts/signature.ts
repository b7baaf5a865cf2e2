import type { Instant } from "../time/day.ts";

/**
 * What is kept of a signature that was given on screen (15 U.S.C. 7001 and UETA practice): who, what
 * exactly, with what intent, when, from where, and what they had seen before. Append-only; each one
 * carries the hash of the one before it on the same line.
 */
export interface Signature {
  readonly id: string;
  readonly consentId: string;
  readonly linkId: string;
  /** The name exactly as typed; several, where several people are one party, parted by a semicolon. */
  readonly signedName: string;
  /** The party's name as the file had it then; empty in signatures from before it was kept. */
  readonly forName: string;
  /** A drawn signature, as a stored PNG; null where the name was only typed. */
  readonly drawingId: string | null;
  /** The sentence of intent that was ticked. */
  readonly intent: string;
  /** The consent to electronic records as shown, and its version. */
  readonly disclosure: string;
  readonly disclosureVersion: string;
  /** The stored document that was shown, and the SHA-256 of its bytes. */
  readonly documentId: string;
  readonly documentHash: string;
  readonly signedAt: Instant;
  /** The office's zone at that moment, IANA name. */
  readonly zone: string;
  readonly address: string;
  readonly agent: string;
  /** What the signer opened and ticked before, in order. */
  readonly views: readonly SignatureView[];
  /** Message-ID of the copy that was sent; empty where it was only downloaded. */
  readonly copyMessageId: string;
  readonly previousHash: string;
  readonly hash: string;
}

export interface SignatureView {
  readonly at: Instant;
  readonly what: string;
}
