import { describe, expect, test } from "vitest";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import { DELIVERY_METHODS, type Delivery, type LetterKind } from "#lib/domain/facts/notice.ts";
import { arrivalOf } from "#lib/domain/notices/arrival.ts";
import { ARRIVAL_RULES } from "#lib/domain/notices/way-rule.ts";
import { aConsent, aDelivery, aFile, aNotice, aReply } from "#tests/support/file.ts";

function arrival(
  attempt: Partial<Delivery> | null,
  facts: Partial<LineFile> & { kind?: LetterKind } = {},
) {
  const { kind = "proposed-split", ...rest } = facts;
  const notice = aNotice("n", {
    kind,
    partyId: "ann",
    propertyId: "12",
    splitId: "s1",
    state: "sent",
    uploadId: "pdf",
  });
  const deliveries =
    attempt === null ? [] : [aDelivery("d", "n", { sentOn: "2026-11-16", ...attempt })];
  return arrivalOf(aFile({ notices: [notice], deliveries, ...rest }), notice);
}

const DELIVERED = { outcome: "delivered", outcomeOn: "2026-11-19" } as const;

describe("what a way of delivery proves", () => {
  test("every way says for itself what it proves, and why", () => {
    expect(Object.keys(ARRIVAL_RULES).sort()).toEqual([...DELIVERY_METHODS].sort());
    for (const { because } of Object.values(ARRIVAL_RULES)) expect(because).toMatch(/\.$/);
  });

  test("first-class mail proves that it was mailed, whatever the office says became of it", () => {
    expect(arrival({ method: "first-class", ...DELIVERED })).toMatchObject({
      on: null,
      state: "mailed",
    });
    expect(arrival({ method: "first-class" })).toMatchObject({ on: null, state: "mailed" });
    const certificate = { tracking: "9405 5550", proofUploadId: "certificate-of-mailing" };
    expect(arrival({ method: "first-class", ...DELIVERED, ...certificate }).on).toBeNull();
  });

  test("certified mail proves its arrival by its tracking number or its receipt, else by nothing", () => {
    expect(arrival({ method: "certified", ...DELIVERED })).toMatchObject({
      on: null,
      state: "unproven",
    });
    expect(arrival({ method: "certified", ...DELIVERED, tracking: "9407 5550" })).toMatchObject({
      on: "2026-11-19",
      by: "receipt",
      state: "arrived",
    });
    expect(arrival({ method: "certified", ...DELIVERED, proofUploadId: "receipt" }).on).toBe(
      "2026-11-19",
    );
    expect(arrival({ method: "certified", tracking: "9407 5550" })).toMatchObject({
      on: null,
      state: "on-its-way",
    });
  });

  test("a letter that a named person handed over has arrived that day, unless it says otherwise", () => {
    expect(arrival({ method: "by-hand" })).toMatchObject({ on: "2026-11-16", by: "handed-over" });
    expect(arrival({ method: "by-hand", by: " " }).on).toBeNull();
    expect(
      arrival({ method: "by-hand", outcome: "failed", outcomeOn: "2026-11-16" }),
    ).toMatchObject({ on: null, state: "failed" });
  });

  test("e-mail, a posting and a door hanger prove no arrival by themselves", () => {
    const mail = { method: "mail-message", ...DELIVERED, tracking: "<1@example.com>" } as const;
    expect(arrival(mail)).toMatchObject({ on: null, state: "mailed" });
    expect(arrival({ method: "posted", ...DELIVERED, proofUploadId: "photo" })).toMatchObject({
      on: null,
      state: "left",
    });
    expect(arrival({ method: "door-hanger" })).toMatchObject({ on: null, state: "left" });
  });
});

describe("what comes back proves that the letter is there", () => {
  test("a reply is proof, however the letter went, and though it came back", () => {
    const replies = [aReply("r", "n", { receivedOn: "2026-11-21" })];
    for (const method of DELIVERY_METHODS)
      expect(arrival({ method, outcome: "returned" }, { replies })).toMatchObject({
        on: "2026-11-21",
        by: "answer",
        state: "arrived",
      });
  });

  test("a signature on what the letter asks for is proof and an answer", () => {
    const word = { kind: "pay", partyId: "ann", propertyId: "12", stateOn: "2026-11-20" } as const;
    const pay = aConsent("c", { ...word, splitId: "s1" });
    expect(arrival({ method: "first-class" }, { consents: [pay] })).toMatchObject({
      on: "2026-11-20",
      by: "signature",
    });
    expect(
      arrival({ method: "first-class" }, { consents: [{ ...pay, state: "refused" }] }).on,
    ).toBe("2026-11-20");
  });

  test("a word that is not on this letter proves nothing of it", () => {
    const word = { kind: "pay", partyId: "ann", propertyId: "12", splitId: "s1" } as const;
    const none = (consent: Parameters<typeof aConsent>[1]) =>
      arrival({ method: "first-class" }, { consents: [aConsent("c", { ...word, ...consent })] }).on;
    expect(none({ splitId: "s2" })).toBeNull();
    expect(none({ partyId: "bo" })).toBeNull();
    expect(none({ propertyId: "14" })).toBeNull();
    expect(none({ kind: "dig" })).toBeNull();
    expect(none({ state: "asked" })).toBeNull();
    expect(none({ stateOn: "2026-11-15" })).toBeNull();
  });

  test("a signed agreement is proof of the letter that asks for it", () => {
    const word = { partyId: "ann", propertyId: "12", kind: "agreement-signed" } as const;
    expect(
      arrival(null, { kind: "joint-agreement", consents: [aConsent("c", word)] }),
    ).toMatchObject({ by: "signature" });
  });
});
