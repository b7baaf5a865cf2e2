import { createHash } from "node:crypto";
import fc from "fast-check";
import { expect, test } from "vitest";
import { CHAIN_START, checkChain, lastHash, sealSignature } from "#lib/domain/consent/chain.ts";
import type { Consent } from "#lib/domain/facts/consent.ts";
import type { Signature } from "#lib/domain/facts/signature.ts";

function sha256(text: string): string {
  return createHash("sha256").update(text).digest("hex");
}

function aConsent(id: string): Consent {
  return {
    id,
    kind: "pay",
    partyId: "owner",
    propertyId: "12",
    state: "given",
    stateOn: "2026-11-25",
    splitId: "split",
    amount: 10_000,
    recordingNumber: "",
    uploadId: null,
    note: "",
    restsOnId: null,
    enteredBy: "",
  };
}

/** A line's chain of so many signatures, each with its consent. */
function aChain(
  length: number,
  forName = "Ottilie Brandvold",
): { signatures: Signature[]; consents: Consent[] } {
  const consents = Array.from({ length }, (_, at) => aConsent(`consent-${at}`));
  const signatures: Signature[] = [];
  for (const [at, consent] of consents.entries()) {
    const unsealed = {
      id: `signature-${at}`,
      consentId: consent.id,
      linkId: "link",
      signedName: "Ottilie Brandvold",
      forName,
      drawingId: null,
      intent: "I agree",
      disclosure: "You can sign here",
      disclosureVersion: "1",
      documentId: "letter",
      documentHash: "a".repeat(64),
      signedAt: "2026-11-25T18:00:00.000Z",
      zone: "America/Los_Angeles",
      address: "203.0.113.7",
      agent: "Test browser",
      views: [{ at: "2026-11-25T17:59:00.000Z", what: "opened" }],
      copyMessageId: "",
    };
    const previousHash = lastHash(signatures);
    signatures.push(sealSignature(unsealed, { consent, previousHash, sha256 }));
  }
  return { signatures, consents };
}

const faults = (chain: ReturnType<typeof aChain>) =>
  checkChain(chain, sha256).map(({ fault }) => fault);

test("checkChain() finds nothing in a chain that nobody touched", () => {
  const chain = aChain(3);
  expect(chain.signatures[0]?.previousHash).toBe(CHAIN_START);
  expect(faults(chain)).toEqual([null, null, null]);
  expect(faults(aChain(0))).toEqual([]);
});

test("checkChain() still reads signatures from before the party's name was kept", () => {
  // Sealed as it was then: SHA-256 of the JSON without that name.
  const old = aChain(1, "");
  const [one] = old.signatures;
  const { consents } = old;
  const sealed = [
    ...["wyebook-signature-1", CHAIN_START, one?.id, one?.consentId],
    ...["pay", "owner", "12", "2026-11-25", "split", 10_000],
    ...[one?.linkId, one?.signedName, null, one?.intent, one?.disclosure, one?.disclosureVersion],
    ...[one?.documentId, one?.documentHash, one?.signedAt, one?.zone, one?.address, one?.agent],
    [["2026-11-25T17:59:00.000Z", "opened"]],
    "",
  ];
  expect(one?.hash).toBe(sha256(JSON.stringify(sealed)));
  expect(checkChain({ ...old, consents }, sha256)).toMatchObject([{ fault: null }]);
});

test("checkChain() finds every field that was changed, whichever it is", () => {
  const fields = Object.keys(aChain(1).signatures[0] ?? {}) as (keyof Signature)[];
  expect(fields).toHaveLength(19);
  fc.assert(
    fc.property(fc.constantFrom(...fields), fc.nat(2), (field, at) => {
      const chain = aChain(3);
      const one = chain.signatures[at];
      if (one === undefined) return false;
      const changed = field === "views" ? [] : `${one[field]}x`;
      chain.signatures[at] = { ...one, [field]: changed } as Signature;
      return checkChain(chain, sha256)[at]?.fault === "changed";
    }),
  );
});

test("checkChain() finds a consent that was changed behind its signature", () => {
  for (const change of [
    { amount: 1 },
    { kind: "dig" as const },
    { partyId: "other" },
    { propertyId: "14" },
    { splitId: null },
    { stateOn: "2026-11-26" },
  ]) {
    const chain = aChain(2);
    chain.consents[1] = { ...aConsent("consent-1"), ...change };
    expect(faults(chain), JSON.stringify(change)).toEqual([null, "changed"]);
  }
  expect(faults({ ...aChain(2), consents: [] })).toEqual(["changed", "changed"]);
});

test("checkChain() finds one that was taken out, and two that were swapped", () => {
  const chain = aChain(3);
  const [first, second, third] = chain.signatures;
  if (!first || !second || !third) throw new Error("no chain");
  expect(faults({ ...chain, signatures: [first, third] })).toEqual([null, "out-of-order"]);
  expect(faults({ ...chain, signatures: [second, third] })).toEqual(["out-of-order", null]);
  expect(faults({ ...chain, signatures: [second, first, third] })).toEqual([
    "out-of-order",
    "out-of-order",
    "out-of-order",
  ]);
});

test("two fields can't trade their words without changing the hash", () => {
  fc.assert(
    fc.property(fc.string(), fc.string(), (one, other) => {
      fc.pre(one !== other);
      const { signatures, consents } = aChain(1);
      const [consent] = consents;
      const [signature] = signatures;
      if (!consent || !signature) return false;
      const { hash: _hash, previousHash, ...unsealed } = signature;
      const seal = (address: string, agent: string) =>
        sealSignature({ ...unsealed, address, agent }, { consent, previousHash, sha256 }).hash;
      return seal(one, other) !== seal(other, one);
    }),
  );
});
