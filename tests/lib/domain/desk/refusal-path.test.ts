import { describe, expect, test } from "vitest";
import { dueThings } from "#lib/domain/desk/due.ts";
import { refusalPaths, sameForAll } from "#lib/domain/desk/refusal-path.ts";
import type { RefusalStep } from "#lib/domain/facts/authority.ts";
import type { Consent } from "#lib/domain/facts/consent.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import { reportOn } from "#lib/domain/report/report-on.ts";
import {
  aConsent,
  aCrossing,
  aFile,
  aNotice,
  anAuthority,
  anEvent,
  aParty,
  aProperty,
  aReply,
  aRole,
  aScopeItem,
  aSplit,
  aTieIn,
} from "#tests/support/file.ts";

const TODAY = "2026-11-25";

function aStep(id: string, overrides: Partial<RefusalStep>): RefusalStep {
  const common = { authorityId: "authority-1", title: id, detail: "", days: null };
  return { ...common, id, kind: "notice", citation: "Code 1", asOf: "2026-01-05", ...overrides };
}

const STEPS = [
  aStep("demand", {}),
  aStep("mediation", { kind: "mediation", days: 30 }),
  aStep("order", { kind: "authority-order", days: 10 }),
];

/** 12 joins at 20 ft and 14 at 50 ft; lining from 10 to 50 ft; the pipe crosses lot 9 at 30 to 40 ft. */
function theFile(overrides: Partial<LineFile>): LineFile {
  const facts = {
    properties: [aProperty("12"), aProperty("14"), aProperty("9", { stake: "crossed" as const })],
    parties: ["ann", "bo", "cy"].map((id) => aParty(id)),
    roles: [
      aRole("ann", "12"),
      aRole("bo", "14"),
      aRole("cy", "9", { role: "crossed-lot-owner" as const }),
    ],
    tieIns: [
      aTieIn("T1", { station: 2_000, propertyId: "12" }),
      aTieIn("T2", { station: 5_000, propertyId: "14" }),
    ],
    crossings: [aCrossing("x9", { propertyId: "9", from: 3_000, to: 4_000 })],
    scope: [
      aScopeItem("lining", { place: "stretch", from: 1_000, to: 5_000, tieInId: null }),
      aScopeItem("branch", { place: "branch", from: null, to: null, tieInId: "T1" }),
    ],
    authority: anAuthority({ refusalSteps: STEPS }),
    ...overrides,
  };
  const { line: _line, ...rest } = aFile(facts);
  const base = { ...rest, line: { ...aFile().line, upperEnd: 6_000 } };
  const outcome = reportOn(base, TODAY).splits.find(({ choice }) => choice.rule === "portion-used");
  if (outcome === undefined) throw new Error("no outcome");
  const split = aSplit("split-1", {
    ...outcome.choice,
    total: outcome.total,
    basis: outcome.basis,
    shares: outcome.shares.map(({ propertyId, tieInId, amount, recoverable }) => ({
      propertyId,
      tieInId,
      amount,
      recoverable,
    })),
  });
  return { ...base, splits: [split] };
}

function no(kind: Consent["kind"], partyId: string, propertyId: string): Consent {
  const said = { kind, partyId, propertyId, state: "refused", stateOn: "2026-10-01" } as const;
  return aConsent(`no ${kind}`, { ...said, splitId: kind === "pay" ? "split-1" : null });
}

function pathsOf(overrides: Partial<LineFile>) {
  const file = theFile(overrides);
  return refusalPaths(file, reportOn(file, TODAY));
}

describe("refusalPaths()", () => {
  test("refusalPaths() is empty where nobody refuses and no answer is late", () => {
    expect(pathsOf({})).toEqual([]);
  });

  test("refusalPaths() frees the stretch that is not priced on who will not pay", () => {
    const [path, ...others] = pathsOf({ consents: [no("pay", "ann", "12")] });
    expect(others).toEqual([]);
    expect(path?.withheld).toMatchObject({ propertyId: "12", how: "refused", kinds: ["pay"] });
    expect(path?.work).toMatchObject([
      { itemId: "lining", can: "part", free: [{ from: 2_000, to: 5_000 }] },
      { itemId: "branch", can: "none" },
    ]);
  });

  test("refusalPaths() says of no work that it can go ahead while nobody has chosen who pays for it", () => {
    const file = theFile({ consents: [no("enter", "ann", "12")] });
    const objection = aReply("no", "letter", { kind: "disagrees" });
    const letter = aNotice("letter", { partyId: "bo", propertyId: "14", state: "sent" });
    const unsplit = { ...file, splits: [], consents: [], notices: [letter], replies: [objection] };
    const [path] = refusalPaths(unsplit, reportOn(unsplit, TODAY));
    expect(path?.work.map(({ can }) => can)).toEqual(["none", "none"]);
    expect(path?.work[0]?.sentence).toContain("no split is chosen");
  });

  test("sameForAll() says once what is so of every piece of work", () => {
    const one = { itemId: "a", title: "Line", free: [], can: "none" as const };
    const no = { ...one, sentence: "Not without them: no split is chosen." };
    const yes = { ...one, can: "all" as const, sentence: "It can proceed without them." };
    expect(sameForAll([no, no])).toBe("None of it without them: no split is chosen.");
    expect(sameForAll([yes, yes])).toBe("All of it can proceed without them.");
    expect(sameForAll([no, yes])).toBeNull();
    // One piece is named.
    expect(sameForAll([no])).toBeNull();
  });

  test("refusalPaths() frees the stretches off the lot that may not be dug", () => {
    const [path] = pathsOf({ consents: [no("dig", "cy", "9")] });
    expect(path?.work).toMatchObject([
      {
        itemId: "lining",
        can: "part",
        free: [
          { from: 1_000, to: 3_000 },
          { from: 4_000, to: 5_000 },
        ],
      },
      { itemId: "branch", can: "all", free: [] },
    ]);
  });

  test("refusalPaths() counts each step from the one before, the first from the no", () => {
    const [path] = pathsOf({ consents: [no("pay", "ann", "12")] });
    expect(path?.steps.map(({ earliest }) => earliest)).toEqual([
      "2026-10-01",
      "2026-10-31",
      "2026-11-10",
    ]);
  });

  test("refusalPaths() counts from the day on which a step was taken, as the file shows", () => {
    const demand = aNotice("demand", {
      kind: "share-demand",
      partyId: "ann",
      propertyId: "12",
      state: "sent",
      sentAt: "2026-10-11T17:00:00.000Z",
    });
    const ordered = anEvent("order", { event: "authority-order", on: "2026-11-20" });
    const [path] = pathsOf({
      consents: [no("pay", "ann", "12")],
      notices: [demand],
      events: [ordered],
    });
    expect(path?.steps).toMatchObject([
      { takenOn: "2026-10-11" },
      { takenOn: null, earliest: "2026-11-10" },
      { takenOn: "2026-11-20" },
    ]);
  });

  test("refusalPaths() knows no day after a step whose wait is not written, and says so", () => {
    const [first, second, third] = STEPS;
    if (!first || !second || !third) throw new Error("no steps");
    const authority = anAuthority({ refusalSteps: [first, { ...second, days: null }, third] });
    const [path] = pathsOf({ consents: [no("pay", "ann", "12")], authority });
    expect(path?.steps.map(({ earliest }) => earliest)).toEqual(["2026-10-01", null, null]);
    expect(path?.notSaid.join(" ")).toContain("No waiting period before “mediation”");
    expect(path?.notSaid.join(" ")).toContain("arbitration, a court");
  });

  test("refusalPaths() says that nothing is written where no steps are entered", () => {
    const authority = anAuthority({ refusalSteps: [] });
    const [path] = pathsOf({ consents: [no("pay", "ann", "12")], authority });
    expect(path?.steps).toEqual([]);
    expect(path?.notSaid.join(" ")).toContain("No steps after a refusal are entered");
  });

  test("refusalPaths() takes a letter that was not answered in time as silence, from its day", () => {
    const letter = aNotice("letter", {
      kind: "proposed-split",
      partyId: "bo",
      propertyId: "14",
      state: "sent",
      sentAt: "2026-10-02T17:00:00.000Z",
      replyBy: "2026-10-20",
    });
    const [path] = pathsOf({ notices: [letter] });
    expect(path?.withheld).toMatchObject({
      propertyId: "14",
      how: "silent",
      kinds: ["pay"],
      since: "2026-10-20",
    });
  });

  test("refusalPaths() takes an objection for a no until somebody has dealt with it, however it came", () => {
    const letter = aNotice("letter", {
      kind: "proposed-split",
      partyId: "bo",
      propertyId: "14",
      state: "sent",
      sentAt: "2026-10-02T17:00:00.000Z",
      replyBy: "2026-10-20",
    });
    for (const takenBy of ["Dana Okafor", "private link"]) {
      const objection = aReply("no", "letter", {
        kind: "disagrees",
        receivedOn: "2026-10-12",
        words: "I do not agree. Call me",
        takenBy,
      });
      const [path, ...others] = pathsOf({ notices: [letter], replies: [objection] });
      expect(others).toEqual([]);
      expect(path?.withheld).toMatchObject({
        propertyId: "14",
        how: "objected",
        kinds: ["pay"],
        partyIds: ["bo"],
        since: "2026-10-12",
      });
      expect(path?.work[0]).toMatchObject({ itemId: "lining", can: "none" });
      expect(path?.steps[0]).toMatchObject({
        earliest: "2026-10-12",
        counted: "no waiting period stated",
      });
      const dealt = { dealtBy: "Dana Okafor", dealtOn: "2026-10-14", dealtWords: "Called" };
      const after = pathsOf({
        notices: [letter],
        replies: [{ ...objection, ...dealt, dealtHow: "called-back" }],
      });
      expect(after[0]?.withheld).toMatchObject({ how: "silent", since: "2026-10-20" });
    }
  });

  test("refusalPaths() counts on nothing of somebody who objects to a letter that asks for nothing yet", () => {
    const letter = aNotice("letter", { partyId: "cy", propertyId: "9", state: "sent" });
    const objection = aReply("no", "letter", { kind: "disagrees" });
    const bare = { notices: [letter], replies: [objection], scope: [] };
    expect(pathsOf(bare)[0]?.withheld).toMatchObject({
      propertyId: "9",
      kinds: ["enter", "dig", "pay"],
    });
    const other = aReply("no", "letter", { kind: "asks" });
    expect(pathsOf({ ...bare, replies: [other] })).toEqual([]);
  });

  test("refusalPaths() names the option under which they have a line of their own", () => {
    const [path] = pathsOf({
      consents: [no("pay", "ann", "12")],
      options: [{ id: "own", title: "A line for 12", kind: "separate-lines", note: "" }],
      scope: [
        aScopeItem("new", {
          place: "general",
          from: null,
          to: null,
          optionId: "own",
          payerId: "12",
        }),
      ],
    });
    expect(path?.ownLine).toEqual(["A line for 12"]);
  });
});

test("dueThings() tells the next lawful step once its day is near, if they are shown to be on the line", () => {
  const told = (ownerAccepted: boolean) => {
    const file = theFile({
      tieIns: [
        aTieIn("T1", { station: 2_000, propertyId: "12", ownerAccepted }),
        aTieIn("T2", { station: 5_000, propertyId: "14" }),
      ],
      consents: [no("pay", "ann", "12")],
    });
    return dueThings(file, reportOn(file, TODAY)).map(({ sentence }) => sentence);
  };
  expect(told(true).some((sentence) => sentence.includes("“demand”"))).toBe(true);
  expect(told(false).some((sentence) => sentence.includes("“demand”"))).toBe(false);
});

test("dueThings() presses no step against an objection that nobody has dealt with", () => {
  const letter = aNotice("letter", { partyId: "ann", propertyId: "12", state: "sent" });
  const file = theFile({
    tieIns: [
      aTieIn("T1", { station: 2_000, propertyId: "12", ownerAccepted: true }),
      aTieIn("T2", { station: 5_000, propertyId: "14" }),
    ],
    notices: [letter],
    replies: [aReply("no", "letter", { kind: "disagrees" })],
  });
  const told = dueThings(file, reportOn(file, TODAY)).map(({ sentence }) => sentence);
  expect(told.some((sentence) => sentence.includes("“demand”"))).toBe(false);
  expect(told.some((sentence) => sentence.startsWith("ann objects"))).toBe(true);
});

test("refusalPaths() says whether they are shown to be on the line, for no step rests on a guess", () => {
  const file = theFile({
    tieIns: [
      aTieIn("T1", { station: 2_000, propertyId: "12", ownerAccepted: true }),
      aTieIn("T2", { station: 5_000, propertyId: null }),
    ],
    consents: [
      aConsent("c1", { kind: "enter", partyId: "ann", propertyId: "12", state: "refused" }),
      aConsent("c2", { kind: "enter", partyId: "cy", propertyId: "9", state: "refused" }),
    ],
  });
  const paths = refusalPaths(file, reportOn(file, TODAY));
  expect(paths.map(({ withheld, shown }) => [withheld.propertyId, shown])).toEqual([
    ["12", true],
    ["9", false],
  ]);
});
