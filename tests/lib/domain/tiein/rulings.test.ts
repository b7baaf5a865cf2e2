import { describe, expect, test } from "vitest";
import { dueThings } from "#lib/domain/desk/due.ts";
import type { TieIn } from "#lib/domain/facts/line.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import type { Ruling, RulingKind } from "#lib/domain/facts/ruling.ts";
import { servedBy } from "#lib/domain/line/served-by.ts";
import { sheetState } from "#lib/domain/packet/sheet-states.ts";
import { scheduleSheet } from "#lib/domain/packet/sheets-line.ts";
import { reportOn } from "#lib/domain/report/report-on.ts";
import { sharersOf } from "#lib/domain/sharing/sharers.ts";
import { rulingEffects } from "#lib/domain/tiein/ruling-effects.ts";
import { rulingInForce } from "#lib/domain/tiein/ruling-in-force.ts";
import {
  aFee,
  aFile,
  anAgreement,
  anAnchor,
  anAuthority,
  anEntry,
  anObservation,
  anOffice,
  aPairing,
  aProperty,
  aRecord,
  aRule,
  aRun,
  aTieIn,
} from "#tests/support/file.ts";

const TODAY = "2026-11-25";

function ruled(kind: RulingKind, overrides: Partial<Ruling> = {}): Ruling {
  return {
    id: kind,
    tieInId: "t",
    kind,
    decidedBy: "City of Quillhaven",
    decidedOn: "2026-11-20",
    dueOn: null,
    reference: "case 26-114",
    uploadId: null,
    note: "",
    enteredBy: "Dana Okafor",
    ...overrides,
  };
}

/** T3 at 36.5 ft, on no record, and what a test says of it. */
function fileWith(
  rulings: readonly Ruling[],
  tieIn: Partial<TieIn> = {},
  rest: Omit<Partial<LineFile>, "line"> = {},
): LineFile {
  return aFile({
    authority: anAuthority({ rules: [aRule("rule")], fees: [aFee("fee")] }),
    line: { authorityId: "authority-1", ruleId: "rule" },
    records: [aRecord("card")],
    entries: [anEntry("e", { distance: 8_000, explanation: "Never built", explainedBy: "Ruth" })],
    runs: [aRun("run")],
    anchors: [anAnchor("run")],
    properties: [aProperty("14")],
    tieIns: [aTieIn("t", { label: "T3", kind: "unknown", ...tieIn })],
    observations: [anObservation("o", { counter: 3_650, tieInId: "t" })],
    rulings,
    ...rest,
  });
}

function answers(file: LineFile) {
  const report = reportOn(file, TODAY);
  const [effect] = rulingEffects(file, report.tieIns);
  const [finding] = report.tieIns;
  return { file, report, effect, finding, holds: report.holds.map(({ key }) => key) };
}

describe("rulingInForce()", () => {
  test("is the one decided last; of one day, the one entered last", () => {
    const rulings = [
      ruled("legalise", { decidedOn: "2026-11-22" }),
      ruled("evidence-asked"),
      ruled("disconnect", { decidedOn: "2026-11-22" }),
      ruled("cap", { tieInId: "other", decidedOn: "2026-11-24" }),
    ];
    expect(rulingInForce(rulings, "t")?.kind).toBe("disconnect");
    expect(rulingInForce(rulings, "nobody's")).toBeNull();
  });
});

describe("accepted as it is, or the record corrected", () => {
  test.each(["accepted-as-legacy", "record-corrected"] as const)(
    "%s documents the tie-in of a named property and lifts its hold, with the reference",
    (kind) => {
      const { finding, holds, effect } = answers(fileWith([ruled(kind)], { propertyId: "14" }));
      expect(finding).toMatchObject({ standing: "accepted-by-ruling", decided: true, level: 6 });
      expect(finding?.sentence).toContain("case 26-114");
      expect(finding?.sentenceEs).toContain("case 26-114");
      expect(finding?.live).toBe(true);
      expect(holds).toEqual([]);
      expect(effect).toMatchObject({ done: true, asks: null });
    },
  );

  test("while nobody says whose it is, it goes on stopping the split, a demand and capping", () => {
    const { report } = answers(fileWith([ruled("accepted-as-legacy")]));
    expect(report.holds).toMatchObject([
      { key: "tie-in-owner-unknown:t", stops: ["capping", "final-split", "demand"] },
    ]);
  });

  test("a later ruling takes the acceptance back", () => {
    const later = ruled("evidence-asked", { decidedOn: "2026-11-24" });
    const { finding, holds } = answers(fileWith([ruled("accepted-as-legacy"), later]));
    expect(finding?.standing).toBe("undocumented");
    expect(holds).toEqual(["tie-in-owner-unknown:t"]);
  });

  test("a tie-in that is on record stands by its record, whatever was ruled before", () => {
    const paired = { entries: [anEntry("e", { distance: 3_650 })], pairings: [aPairing("e", "t")] };
    const { finding } = answers(fileWith([ruled("accepted-as-legacy")], {}, paired));
    expect(finding?.standing).toBe("on-record-and-seen");
  });
});

describe("to disconnect", () => {
  test("holds, and the tie-in still counts, until it is off", () => {
    const { file, report, holds, effect } = answers(
      fileWith([ruled("disconnect", { dueOn: "2026-12-20" })], {
        propertyId: "14",
        ownerAccepted: true,
      }),
    );
    expect(holds).toEqual(["ruling-not-done:t"]);
    expect(effect?.asks).toBe("T3 must be disconnected by December 20, 2026");
    expect(servedBy(report.tieIns, 1_000).properties).toEqual(["14"]);
    expect(sharersOf(file, report.tieIns).map(({ key }) => key)).toEqual(["14"]);
  });

  test.each([{ inactive: true }, { kind: "capped-stub" as const }])(
    "once it is off (%j) it leaves served-by and split, and nothing holds",
    (off) => {
      const settled = { settledBy: "Dana Okafor", settledReason: "Cut at the wye", ...off };
      const { file, report, holds, effect } = answers(
        fileWith([ruled("disconnect")], { propertyId: "14", ...settled }),
      );
      expect(holds).toEqual([]);
      expect(effect).toMatchObject({ done: true, asks: null });
      expect(servedBy(report.tieIns, 1_000).properties).toEqual([]);
      expect(sharersOf(file, report.tieIns)).toEqual([]);
    },
  );
});

test("to cap is not done by being dead, only by being capped", () => {
  const dead = { inactive: true, settledBy: "Dana Okafor", settledReason: "Plugged and watched" };
  expect(answers(fileWith([ruled("cap")], dead)).holds).toEqual(["ruling-not-done:t"]);
  const capped = answers(fileWith([ruled("cap")], { ...dead, kind: "capped-stub" }));
  expect(capped.holds).toEqual([]);
  expect(capped.effect?.done).toBe(true);
});

test("to legalise asks a permit, the authority's fees and an agreement, and the branch stays live", () => {
  const { effect, finding, holds } = answers(
    fileWith([ruled("legalise", { dueOn: "2026-12-01" })]),
  );
  expect(effect).toMatchObject({
    done: false,
    holds: false,
    asks: "T3 needs a permit, the fees (Side sewer permit $310.00) and a recorded agreement by December 1, 2026",
  });
  expect(finding).toMatchObject({ live: true, standing: "undocumented" });
  expect(holds).toEqual(["tie-in-owner-unknown:t"]);
  const joined = answers(fileWith([ruled("legalise")], {}, { agreements: [anAgreement("a")] }));
  expect(joined.effect?.asks).toContain("its part in the recorded agreement");
});

test("asked evidence is there once tests or the owner show whose it is", () => {
  expect(answers(fileWith([ruled("evidence-asked")])).effect?.asks).toBe(
    "The authority requires evidence of who owns T3; confidence is level 0 of 6",
  );
  const shown = { propertyId: "14", ownerAccepted: true };
  expect(answers(fileWith([ruled("evidence-asked")], shown)).effect?.done).toBe(true);
});

test.each([
  ["2026-11-24", "late"],
  ["2026-11-30", "due"],
  ["2027-03-01", "waiting"],
  [null, "waiting"],
] as const)("a ruling to be carried out by %s is %s on the desk", (dueOn, kind) => {
  const file = fileWith([ruled("own-connection", { dueOn })]);
  const thing = dueThings(file, reportOn(file, TODAY)).find(({ sentence }) =>
    sentence.includes("its own connection"),
  );
  expect(thing).toMatchObject({ kind, on: dueOn, question: "reconcile" });
});

test("the packet says that the schedule is not complete while a ruling is not carried out", () => {
  const state = (kind: RulingKind) => {
    const file = fileWith([ruled(kind)], { propertyId: "14", ownerAccepted: true });
    const input = { file, report: reportOn(file, TODAY), office: anOffice() };
    return sheetState("schedule-of-connections", input);
  };
  expect(state("disconnect")).toEqual({ complete: false, sentences: ["T3 must be disconnected."] });
  expect(state("accepted-as-legacy").complete).toBe(true);
});

test("the packet's schedule prints each ruling with its reference, and where the as-built shows it", () => {
  const file = fileWith([ruled("record-corrected")], { propertyId: "14" });
  const input = { file, report: reportOn(file, TODAY), office: anOffice() };
  const printed = JSON.stringify(scheduleSheet(input).blocks);
  expect(printed).toContain("not on record, accepted by the authority");
  expect(printed).toContain(
    "T3 is right; the record is corrected by the as-built, per City of Quillhaven, November 20, 2026 (case 26-114). The as-built shows it at 36.5 ft, left looking upstream. Done.",
  );
});
