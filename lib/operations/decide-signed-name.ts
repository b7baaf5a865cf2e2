import { insertRow } from "#db/queries/row.ts";
import { heldNames } from "#lib/domain/consent/held-names.ts";
import type { Consent } from "#lib/domain/facts/consent.ts";
import { nameRow } from "#lib/domain/facts/references.ts";
import { ok, type Result } from "#lib/result.ts";
import type { Act, Refusal } from "./act.ts";
import { changeLine, refuse } from "./change.ts";

interface NameDecision {
  readonly lineId: string;
  /** The word that was signed in a name which is not the party's. */
  readonly consentId: string;
  readonly accepted: boolean;
  /** How the office knows that it was, or was not, the party. */
  readonly reason: string;
}

/**
 * Takes a name typed under a signature for the party's, or does not, in the name of who acts and with
 * their reason: a further word that rests on the signed one, whose signature stays as it is. Refuses
 * a word that no name holds, or on which something was said since.
 */
export function decideSignedName(
  act: Act,
  { lineId, consentId, accepted, reason }: NameDecision,
): Result<{ consentId: string }, Refusal> {
  const deal = { lineId, deed: "work-the-file", action: "decide-signed-name" } as const;
  return changeLine(act, deal, (file) => {
    const held = heldNames(file).find(({ consent }) => consent.id === consentId);
    if (held === undefined)
      return refuse(
        "not-in-this-state",
        "consentId",
        "No name waits to be looked at here any more",
      );
    if (reason.trim() === "")
      return refuse("missing-value", "reason", "Enter how you know who signed");
    const { consent, signature } = held;
    const decided: Consent = {
      ...consent,
      id: act.newId(),
      state: accepted ? "given" : "name-refused",
      stateOn: act.today,
      note: reason.trim(),
      restsOnId: consent.id,
      enteredBy: act.actor.name,
    };
    const who = `${nameRow(file, "parties", consent.partyId)} for ${nameRow(file, "properties", consent.propertyId)}`;
    const took = accepted ? "Accepted" : "Did not accept";
    return ok({
      value: { consentId: decided.id },
      sentence: `${took} the name “${signature.signedName}” under the consent to ${consent.kind} of ${who}: ${decided.note}`,
      detail: { before: consent, after: decided, signatureId: signature.id },
      write: (db) => insertRow(db, "consents", { lineId, row: decided }),
    });
  });
}
