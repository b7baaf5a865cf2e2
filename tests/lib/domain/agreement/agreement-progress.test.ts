import { describe, expect, test } from "vitest";
import { agreementProgress, stepProblem } from "#lib/domain/agreement/agreement-progress.ts";
import { rankedAgreements } from "#lib/domain/agreement/agreement-standing.ts";
import type { AgreementStep, AgreementStepKind } from "#lib/domain/facts/agreement-step.ts";
import {
  aConsent,
  aFile,
  anAgreement,
  anAuthority,
  aParty,
  aProperty,
  aRequirement,
  aRole,
} from "#tests/support/file.ts";

const AGREEMENT = anAgreement("a", {
  recordingNumber: "",
  recordedOn: null,
  shares: [
    { propertyId: "12", parts: 1 },
    { propertyId: "14", parts: 2 },
    { propertyId: "16", parts: 0 },
  ],
});

type Told = readonly [kind: AgreementStepKind, on: string, partyId?: string | undefined];

function step([kind, on, partyId]: Told, at: number): AgreementStep {
  const part = { agreementId: "a", by: "Dana Okafor", number: "", uploadId: null, note: "" };
  return { ...part, id: `s${at}`, kind, on, partyId: partyId ?? null };
}

function fileWith(steps: readonly Told[], review = false) {
  const asks = { title: "Review of the joint agreement before recording" };
  return aFile({
    properties: ["12", "14", "16"].map((id) => aProperty(id)),
    parties: ["ann", "bo", "cy", "dee"].map((id) => aParty(id)),
    roles: [aRole("ann", "12"), aRole("bo", "12"), aRole("cy", "14"), aRole("dee", "16")],
    agreements: [AGREEMENT],
    agreementSteps: steps.map(step),
    authority: anAuthority({ requirements: review ? [aRequirement("r", asks)] : [] }),
  });
}

const DRAFTED: Told = ["drafted", "2026-10-01"];
const SIGNED: readonly Told[] = [
  ["signed", "2026-10-05", "ann"],
  ["signed", "2026-10-06", "bo"],
  ["signed", "2026-10-04", "cy"],
];
const NOTARISED = SIGNED.map(([, , who]): Told => ["notarised", "2026-10-08", who]);

function stateAfter(...steps: readonly Told[]) {
  return agreementProgress(fileWith(steps), AGREEMENT).state;
}

describe("agreementProgress()", () => {
  test("agreementProgress() goes from draft to filed in order", () => {
    expect(stateAfter()).toBe("not-begun");
    expect(stateAfter(DRAFTED)).toBe("draft");
    expect(stateAfter(DRAFTED, ...SIGNED.slice(0, 2))).toBe("being-signed");
    expect(stateAfter(DRAFTED, ...SIGNED)).toBe("signed");
    expect(stateAfter(DRAFTED, ...SIGNED, ...NOTARISED)).toBe("notarised");
    const recorded: readonly Told[] = [...SIGNED, ...NOTARISED, ["recorded", "2026-10-20"]];
    expect(stateAfter(DRAFTED, ...recorded)).toBe("recorded");
    expect(stateAfter(DRAFTED, ...recorded, ["number-filed", "2026-10-21"])).toBe("filed");
    expect(stateAfter(DRAFTED, ["given-up", "2026-10-21"])).toBe("given-up");
  });

  test("agreementProgress() asks every title holder of the properties with parts, and nobody else", () => {
    const { holders, waits } = agreementProgress(fileWith([DRAFTED]), AGREEMENT);
    expect(holders.map(({ partyId }) => partyId)).toEqual(["ann", "bo", "cy"]);
    expect(waits).toContain("To sign on paper");
  });

  test("agreementProgress() counts no signature on an earlier text", () => {
    const file = fileWith([DRAFTED, ...SIGNED, ["returned", "2026-10-10"]]);
    const { state, holders } = agreementProgress(file, AGREEMENT);
    expect(state).toBe("returned");
    expect(holders.every(({ signedOn }) => signedOn === null)).toBe(true);
    expect(stateAfter(DRAFTED, ...SIGNED, ["drafted", "2026-10-10"])).toBe("draft");
  });
});

describe("stepProblem()", () => {
  const tried = (
    steps: readonly Told[],
    [kind, on, partyId]: Told,
    { number = "", review = false } = {},
  ) =>
    stepProblem(fileWith(steps, review), AGREEMENT, {
      kind,
      on,
      partyId: partyId ?? null,
      number,
    });

  test("stepProblem() lets nobody sign before the review that the authority asks for", () => {
    const sign: Told = ["signed", "2026-10-05", "ann"];
    expect(tried([DRAFTED], sign)).toBeNull();
    expect(tried([DRAFTED], sign, { review: true })?.words).toContain("Review of the joint");
    const reviewed: Told = ["reviewed", "2026-10-03"];
    expect(tried([DRAFTED, reviewed], sign, { review: true })).toBeNull();
  });

  test("stepProblem() refuses a signer who holds no title in it, or who signed already", () => {
    expect(tried([DRAFTED], ["signed", "2026-10-05", "dee"])?.path).toBe("partyId");
    expect(tried([DRAFTED], ["signed", "2026-10-05"])?.path).toBe("partyId");
    expect(tried([DRAFTED, ...SIGNED.slice(0, 1)], ["signed", "2026-10-09", "ann"])?.path).toBe(
      "partyId",
    );
  });

  test("stepProblem() refuses an acknowledgment before the signature", () => {
    const before = [DRAFTED, ...SIGNED.slice(0, 1)];
    expect(tried(before, ["notarised", "2026-10-08", "cy"])?.path).toBe("partyId");
    expect(tried(before, ["notarised", "2026-10-02", "ann"])?.path).toBe("on");
    expect(tried(before, ["notarised", "2026-10-08", "ann"])).toBeNull();
  });

  test("stepProblem() records only what all have signed before a notary, and only with its number", () => {
    const recorded: Told = ["recorded", "2026-10-20"];
    expect(tried([DRAFTED, ...SIGNED], recorded, { number: "1" })?.path).toBe("kind");
    const ready = [DRAFTED, ...SIGNED, ...NOTARISED];
    expect(tried(ready, recorded)?.path).toBe("number");
    expect(tried(ready, recorded, { number: "202610200017" })).toBeNull();
    expect(tried(ready, ["recorded", "2026-10-07"], { number: "1" })?.path).toBe("on");
  });
});

describe("rankedAgreements()", () => {
  const ranks = (steps: readonly Told[]) =>
    rankedAgreements({
      ...fileWith(steps),
      consents: ["12", "14"].map((id) =>
        aConsent(`c${id}`, { kind: "agreement-signed", propertyId: id, state: "given" }),
      ),
    }).map(({ rank }) => rank);

  test("rankedAgreements() goes by the steps where there are any: a draft decides nothing", () => {
    expect(ranks([DRAFTED])).toEqual([]);
    expect(ranks([DRAFTED, ...SIGNED.slice(0, 2)])).toEqual([]);
    expect(ranks([DRAFTED, ...SIGNED])).toEqual(["signed"]);
    expect(ranks([DRAFTED, ...SIGNED, ["given-up", "2026-10-30"]])).toEqual([]);
    expect(ranks([])).toEqual(["signed"]);
  });
});
