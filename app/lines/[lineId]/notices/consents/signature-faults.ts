import "server-only";
import { createHash } from "node:crypto";
import { type ChainFault, checkChain } from "#lib/domain/consent/chain.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import type { Signature } from "#lib/domain/facts/signature.ts";
import { readEnv } from "#lib/env.ts";
import { isStoredWhole } from "#lib/storage/store.ts";

/** What is wrong with a signature today. */
export interface SignatureFault {
  readonly signature: Signature;
  /** In the line's chain; null: it is what was signed, in its place. */
  readonly chain: ChainFault | null;
  /** The stored document is there, byte for byte. */
  readonly whole: boolean;
}

/** Every signature of the line that is no longer what was signed; looked at just now. */
export function signatureFaults(file: LineFile): SignatureFault[] {
  const { dataFolder } = readEnv();
  const chain = checkChain(file, (text) => createHash("sha256").update(text).digest("hex"));
  const whole = new Map<string, boolean>();
  return file.signatures.flatMap((signature, at) => {
    const { documentHash } = signature;
    const known = whole.get(documentHash) ?? isStoredWhole(dataFolder, documentHash);
    whole.set(documentHash, known);
    const fault = chain[at]?.fault ?? null;
    return fault === null && known ? [] : [{ signature, chain: fault, whole: known }];
  });
}
