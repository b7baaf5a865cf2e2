import { describe, expect, test } from "vitest";
import type { Delivery, LetterKind } from "#lib/domain/facts/notice.ts";
import type { ProofRule } from "#lib/domain/facts/proof-rule.ts";
import { arrivalOf } from "#lib/domain/notices/arrival.ts";
import { isReached } from "#lib/domain/notices/told.ts";
import { wayRule } from "#lib/domain/notices/way-rule.ts";
import { noticeSheet } from "#lib/domain/packet/sheet-notice.ts";
import { EXAMPLE_CITATION, starterAuthority } from "#lib/domain/starters/authorities.ts";
import { aDelivery, aFile, aNotice, aParty } from "#tests/support/file.ts";

const AUTHORITY = starterAuthority("city-to-main", {
  id: "a",
  name: "",
  state: "WA",
  today: "2026-11-25",
});

function aRule(rest: Partial<ProofRule>): ProofRule {
  return {
    id: `rule ${JSON.stringify(rest)}`,
    authorityId: "a",
    letter: null,
    method: "certified",
    counts: "attempted",
    citation: "Code 13.40.050",
    asOf: "2026-11-02",
    ...rest,
  };
}

function fileWith(
  proofRules: readonly ProofRule[] | null,
  attempt: Partial<Delivery>,
  kind: LetterKind = "finding",
) {
  const notice = aNotice("n", { kind, partyId: "ann", state: "sent", uploadId: "pdf" });
  const file = aFile({
    authority: proofRules === null ? null : { ...AUTHORITY, proofRules },
    parties: [aParty("ann")],
    notices: [notice],
    deliveries: [aDelivery("d", "n", { sentOn: "2026-11-16", ...attempt })],
  });
  return { file, notice };
}

function standing(...given: Parameters<typeof fileWith>) {
  const { file, notice } = fileWith(...given);
  const { state, on, by } = arrivalOf(file, notice);
  return { state, on, by };
}

const UNCLAIMED = {
  method: "certified",
  outcome: "unclaimed",
  outcomeOn: "2026-11-24",
  tracking: "9407 1118 9956 0000 0555 15",
} as const;
const NOTHING = { on: null, by: null };

describe("what an authority counts as delivered", () => {
  test("certified mail that was offered and not collected counts only where the authority says so", () => {
    expect(standing(null, UNCLAIMED)).toEqual({ state: "unclaimed", ...NOTHING });
    expect(standing([], UNCLAIMED)).toEqual({ state: "unclaimed", ...NOTHING });
    expect(standing([aRule({})], UNCLAIMED)).toEqual({
      state: "counts",
      on: "2026-11-24",
      by: "attempted",
    });
    const accepted = { ...UNCLAIMED, outcome: "delivered" } as const;
    expect(standing([aRule({})], accepted)).toMatchObject({ state: "arrived", by: "receipt" });
  });

  test("what is not known does not count: no number, no day, an address that was wrong", () => {
    const rules = [aRule({})];
    expect(standing(rules, { ...UNCLAIMED, tracking: "" })).toMatchObject(NOTHING);
    expect(standing(rules, { ...UNCLAIMED, outcomeOn: null })).toMatchObject(NOTHING);
    expect(standing(rules, { ...UNCLAIMED, outcome: "returned" })).toMatchObject(NOTHING);
    expect(standing(rules, { ...UNCLAIMED, outcome: "on-its-way" })).toMatchObject(NOTHING);
  });

  test("a posting counts with its place and its photo, for the letter that the rule names", () => {
    const rules = [aRule({ letter: "work-start", method: "posted", counts: "photo" })];
    const posted = { method: "posted", place: "Front door", proofUploadId: "photo" } as const;
    expect(standing(rules, posted, "work-start")).toEqual({
      state: "counts",
      on: "2026-11-16",
      by: "photo",
    });
    expect(standing(rules, { ...posted, place: " " }, "work-start")).toMatchObject(NOTHING);
    expect(standing(rules, { ...posted, proofUploadId: null }, "work-start")).toMatchObject(
      NOTHING,
    );
    expect(standing(rules, posted, "finding")).toEqual({ state: "left", ...NOTHING });
  });

  test("a row for one letter stands in place of the rows for every letter, also where it asks more", () => {
    const hand = { method: "by-hand" } as const;
    const rules = [
      aRule({ method: "by-hand", counts: "handed-over" }),
      aRule({ method: "by-hand", counts: "never", letter: "share-demand" }),
    ];
    expect(standing(rules, hand)).toMatchObject({ state: "arrived", by: "handed-over" });
    expect(standing(rules, hand, "share-demand")).toMatchObject(NOTHING);
  });

  test("where rows differ each has to be met", () => {
    const rules = [aRule({ counts: "attempted" }), aRule({ counts: "accepted" })];
    expect(standing(rules, UNCLAIMED)).toMatchObject(NOTHING);
    expect(standing(rules, { ...UNCLAIMED, outcome: "delivered" })).toMatchObject({
      by: "receipt",
    });
  });

  test("a row without a source of its own can only ask for more", () => {
    for (const citation of ["", "  ", EXAMPLE_CITATION]) {
      expect(standing([aRule({ citation })], UNCLAIMED), citation).toMatchObject(NOTHING);
      const never = aRule({ citation, method: "by-hand", counts: "never" });
      expect(standing([never], { method: "by-hand" }), citation).toMatchObject(NOTHING);
    }
  });

  test("mail that counts once sent no longer does when it came back", () => {
    const rules = [aRule({ method: "first-class", counts: "sent" })];
    const mailed = { method: "first-class" } as const;
    expect(standing(rules, mailed)).toEqual({ state: "counts", on: "2026-11-16", by: "sent" });
    expect(
      standing(rules, { ...mailed, outcome: "returned", outcomeOn: "2026-11-20" }),
    ).toMatchObject({ state: "returned", ...NOTHING });
  });

  test("examples to start from are no easier than the house's table", () => {
    for (const { method } of AUTHORITY.proofRules) {
      const house = wayRule({ authority: null }, "finding", method).counts;
      expect(wayRule({ authority: AUTHORITY }, "finding", method).counts).toEqual(house);
    }
  });
});

describe("where it is read", () => {
  test("who counts as reached, and the packet's proof with its source", () => {
    expect(isReached(fileWith([], UNCLAIMED).file, "ann")).toBe(false);
    const { file } = fileWith([aRule({})], UNCLAIMED);
    expect(isReached(file, "ann")).toBe(true);
    expect(JSON.stringify(noticeSheet({ file }))).toContain(
      "offered, not collected; counts as delivered November 24, 2026 (Code 13.40.050)",
    );
  });

  test("the packet says where something was handed over and the authority asks for more", () => {
    const { file } = fileWith([aRule({ method: "by-hand", counts: "never" })], {
      method: "by-hand",
    });
    expect(JSON.stringify(noticeSheet({ file }))).toMatch(
      /arrived November 16, 2026, handed over by .*; not enough for this authority \(Code 13.40.050\)/,
    );
  });
});
