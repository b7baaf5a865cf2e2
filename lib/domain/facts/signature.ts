import {
  instant,
  late,
  maybe,
  type RowOf,
  ref,
  row,
  several,
  sha256,
  type ValuesOf,
  words,
} from "./field.ts";

export type SignatureView = ValuesOf<typeof SIGNATURE_VIEW>;

const SIGNATURE_VIEW = {
  at: instant,
  what: words,
};

/**
 * What is kept of a signature that was given on screen (15 U.S.C. 7001 and UETA practice): who, what
 * exactly, with what intent, when, from where, and what they had seen before. Append-only; each one
 * carries the hash of the one before it on the same line.
 */
export type Signature = RowOf<typeof SIGNATURE>;

export const SIGNATURE = row({
  one: "signature",
  fields: {
    consentId: ref("consents"),
    linkId: words,
    /** The name exactly as typed; several, where several people are one party, parted by a semicolon. */
    signedName: words,
    /** The party's name as the file had it then; empty in signatures from before it was kept. */
    forName: late(words),
    /** A drawn signature, as a stored PNG; null where the name was only typed. */
    drawingId: maybe(ref("uploads")),
    /** The sentence of intent that was ticked. */
    intent: words,
    /** The consent to electronic records as shown, and its version. */
    disclosure: words,
    disclosureVersion: words,
    /** The stored document that was shown, and the SHA-256 of its bytes. */
    documentId: ref("uploads"),
    documentHash: sha256,
    signedAt: instant,
    /** The office's zone at that moment, IANA name. */
    zone: words,
    address: words,
    agent: words,
    /** What the signer opened and ticked before, in order. */
    views: several(SIGNATURE_VIEW),
    /** Message-ID of the copy that was sent; empty where it was only downloaded. */
    copyMessageId: words,
    previousHash: words,
    hash: words,
  },
});
