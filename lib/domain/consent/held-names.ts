import type { Consent } from "../facts/consent.ts";
import type { LineFile } from "../facts/line-file.ts";
import type { Signature } from "../facts/signature.ts";
import { consentStanding } from "./standing.ts";

/** A signature in a name that a person of the office has yet to look at. */
export interface HeldName {
  readonly consent: Consent;
  readonly signature: Signature;
}

/** Every signature whose name waits to be looked at, the oldest first. */
export function heldNames(file: Pick<LineFile, "consents" | "signatures" | "splits">): HeldName[] {
  return file.consents
    .filter((consent) => consentStanding(file, consent) === "name-held")
    .flatMap((consent) => {
      const signature = file.signatures.find(({ consentId }) => consentId === consent.id);
      return signature === undefined ? [] : [{ consent, signature }];
    });
}
