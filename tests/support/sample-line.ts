import type { SheetKind } from "#lib/domain/facts/authority.ts";
import type { LineFile, Office } from "#lib/domain/facts/line-file.ts";
import type { Notice } from "#lib/domain/facts/notice.ts";
import type { Report } from "#lib/domain/findings/report.ts";
import {
  aFinding,
  aHold,
  anEntryFinding,
  anOutcome,
  aReach,
  aReport,
  aShare,
  aSpan,
  aStationed,
} from "./answers.ts";
import {
  aConsent,
  aCrossing,
  aDelivery,
  aFee,
  aFile,
  aGap,
  aLocateTicket,
  aNotice,
  anAddress,
  anAgreement,
  anAuthority,
  anEntry,
  anEvent,
  anObservation,
  anOffice,
  aPairing,
  aParty,
  aPermit,
  aPermitStep,
  aPoint,
  aProperty,
  aRecord,
  aRequirement,
  aRequirementMark,
  aRole,
  aRule,
  aRun,
  aScopeItem,
  aSplit,
  aTest,
  aTieIn,
  aUnit,
  aWaiver,
} from "./file.ts";

/**
 * One line with everything on it, its answers written by hand: four houses on the pipe, a lot that
 * is crossed, a tie-in that belongs to nobody yet, work of $19,250.00 split by portion used.
 */
export function sampleLine(): { file: LineFile; report: Report; office: Office } {
  return { file: sampleFile(), report: sampleReport(), office: anOffice() };
}

export const SAMPLE_AMOUNTS = { p12: 318_333, p14: 318_333, p16: 568_334, p18: 720_000 };

const T1 = aTieIn("T1", { station: 1_820, propertyId: "p12" });
const T2 = aTieIn("T2", { station: 2_600, propertyId: "p14", side: "right" });
const T3 = aTieIn("T3", { station: 4_310, kind: "unknown", side: "right", fitting: "break-in" });
const T4 = aTieIn("T4", { station: 5_140, propertyId: "p16" });
const T5 = aTieIn("T5", { station: 7_725, propertyId: "p18", side: "right" });

function sampleFile(): LineFile {
  return aFile({
    line: { id: "line-fennel", ruleId: "rule-1", authorityId: "authority-1", upperEnd: 9_600 },
    authority: anAuthority({
      name: "Quillhaven Sewer Utility",
      office: "Side sewer counter",
      rules: [aRule("rule-1")],
      requirements: [
        aRequirement("r-application", { sheet: "application", title: "Application data" }),
        aRequirement("r-drawing", { sheet: "line-drawing", title: "Drawing to scale" }),
        aRequirement("r-easement", { sheet: "upload", title: "Recorded easement" }),
        aRequirement("r-standing", {
          sheet: "contractor-standing",
          title: "License, bond and insurance in force",
        }),
        aRequirement("r-consents", { sheet: "consents", title: "Consent of all owners" }),
        aRequirement("r-photos", {
          sheet: "upload",
          title: "Photographs of the painted line",
          mandatory: false,
        }),
      ],
      fees: [aFee("fee-1")],
    }),
    properties: [
      aProperty("p12", {
        address: anAddress("12 Fennel Row"),
        parcel: "QH-0412",
        legalDescription: "Lot 12, Fennel Addition",
      }),
      aProperty("p14", { address: anAddress("14 Fennel Row"), parcel: "QH-0414" }),
      aProperty("p16", { address: anAddress("16 Fennel Row"), parcel: "QH-0416" }),
      aProperty("p18", { address: anAddress("18 Fennel Row"), parcel: "QH-0418" }),
      aProperty("p11", {
        address: anAddress("11 Ropewalk Lane"),
        parcel: "QH-0511",
        stake: "candidate",
      }),
      aProperty("p9", {
        address: anAddress("9 Ropewalk Lane"),
        parcel: "QH-0509",
        stake: "crossed",
      }),
    ],
    units: [aUnit("u16a", "p16", { name: "Unit A" }), aUnit("u16b", "p16", { name: "Unit B" })],
    parties: [
      aParty("ottilie", { name: "Ottilie Brandvold", email: "ottilie@example.com" }),
      aParty("jesus", { name: "Jesús Peña", language: "es" }),
      aParty("larkspur", {
        name: "Larkspur Holdings LLC",
        kind: "firm",
        mailing: anAddress("900 Signal Hill Road", { unit: "Suite 4½" }),
      }),
      aParty("lodz", { name: "Agnieszka Łódź", mailing: anAddress("PO Box 118") }),
      aParty("tenant", { name: "Beatrix Holloway", needs: "Home dialysis" }),
      aParty("nils", { name: "Nils Adeyemi" }),
      aParty("georgina", { name: "Georgina Stroud" }),
      aParty("utility", {
        name: "Quillhaven Sewer Utility",
        kind: "public-body",
        mailing: anAddress("1 Civic Square"),
      }),
    ],
    roles: [
      aRole("ottilie", "p12"),
      aRole("ottilie", "p12", { role: "occupant" }),
      aRole("jesus", "p14"),
      aRole("larkspur", "p16", { capacity: "member" }),
      aRole("tenant", "p16", { role: "occupant", unitId: "u16b" }),
      aRole("lodz", "p18"),
      aRole("nils", "p11"),
      aRole("georgina", "p9", { role: "crossed-lot-owner" }),
    ],
    points: [
      aPoint("row", { kind: "right-of-way-line", station: 1_200 }),
      aPoint("co", { kind: "cleanout", station: 9_200, depth: 420 }),
    ],
    crossings: [aCrossing("x9", { propertyId: "p9", from: 5_400, to: 7_000 })],
    tieIns: [T1, T2, T3, T4, T5],
    records: [aRecord("card", { title: "Side sewer card", number: "4471" })],
    entries: [
      anEntry("e12", { label: "House 12", distance: 1_840, propertyId: "p12" }),
      anEntry("e14", { label: "House 14", distance: 2_650, propertyId: "p14", side: "right" }),
      anEntry("e16", { label: "House 16", distance: 5_200, propertyId: "p16" }),
      anEntry("e20", { label: "House 20", distance: 8_600, propertyId: null }),
    ],
    runs: [
      aRun("run", { ranOn: "2026-11-03", toCounter: 8_800 }),
      aRun("run2", {
        ranOn: "2026-11-10",
        looks: "downstream",
        accessPoint: "Cleanout at the upper end",
        crossingSeen: "cannot-tell",
        toCounter: 5_000,
      }),
    ],
    gaps: [aGap("run", { fromCounter: 3_300, toCounter: 3_900 })],
    observations: [
      anObservation("o1", { tieInId: "T1", counter: 1_820, videoSecond: 72 }),
      anObservation("o2", { tieInId: "T2", counter: 2_600, clock: 3, videoSecond: 118 }),
      anObservation("o3", { tieInId: "T3", counter: 4_310, clock: 2.5, fitting: "break-in" }),
      anObservation("o4", { tieInId: "T4", counter: 5_140, videoSecond: 260 }),
      anObservation("o5", { tieInId: "T5", counter: 7_725, clock: 3, videoSecond: 402 }),
      anObservation("f1", { kind: "fault", fault: "roots", counter: 2_240, toCounter: 2_480 }),
      anObservation("f2", { kind: "fault", fault: "broken", counter: 6_150, videoSecond: 310 }),
    ],
    pairings: [aPairing("e12", "T1"), aPairing("e14", "T2"), aPairing("e16", "T4")],
    tests: [aTest("dye1", "T3", { propertyId: "p11", result: "not-seen", firstSeenAt: "" })],
    waivers: [aWaiver("easement-missing:x9")],
    agreements: [anAgreement("a1", { title: "Joint sewer agreement" })],
    scope: [
      aScopeItem("s1", { title: "Replace pipe", from: 1_000, to: 3_000, quantity: 2_000 }),
      aScopeItem("s2", {
        title: "Mend broken place",
        place: "point",
        from: 6_150,
        to: null,
        quantity: 100,
        unit: "place",
        rate: 625_000,
        work: "repair",
      }),
      aScopeItem("s3", {
        title: "Permit, traffic control and restoration of surface",
        place: "general",
        from: null,
        to: null,
        quantity: 100,
        unit: "job",
        rate: 1_000_000,
        markup: 1_000,
      }),
    ],
    splits: [
      aSplit("split-1", {
        number: 2,
        total: 1_925_000,
        basis: "basis-1",
        shares: Object.entries(SAMPLE_AMOUNTS).map(([propertyId, amount]) => ({
          propertyId,
          tieInId: null,
          amount,
          recoverable: propertyId === "p18" ? 41_250 : 0,
        })),
      }),
    ],
    notices: [
      aNotice("n-1", {
        partyId: "ottilie",
        propertyId: "p12",
        state: "sent",
        sentAt: "2026-11-16T18:00:00.000Z",
      }),
      aNotice("n-2", {
        partyId: "jesus",
        propertyId: "p14",
        state: "sent",
        sentAt: "2026-11-16T18:00:00.000Z",
      }),
    ],
    deliveries: [
      aDelivery("d-1", "n-1", {
        method: "certified",
        tracking: "9407 1000 0000 0000 0001",
        outcome: "delivered",
        outcomeOn: "2026-11-19",
      }),
      aDelivery("d-2", "n-2", { outcome: "returned", outcomeOn: "2026-11-22" }),
    ],
    consents: [
      aConsent("c1", {
        kind: "pay",
        partyId: "ottilie",
        propertyId: "p12",
        splitId: "split-1",
        amount: SAMPLE_AMOUNTS.p12,
      }),
      aConsent("c2", { kind: "dig", partyId: "georgina", propertyId: "p9", state: "asked" }),
    ],
    permits: [aPermit("permit-1", { number: "SS-26-0412" })],
    permitSteps: [aPermitStep("ps-1", "permit-1", { state: "waiting-on-signatures" })],
    requirementMarks: [
      aRequirementMark("r-photos", { state: "does-not-apply", note: "Alley is gravel" }),
    ],
    locateTickets: [aLocateTicket("t-1", { workBeginsOn: "2026-12-02" })],
    events: [
      anEvent("ev1", { event: "tenant-entry", on: "2026-12-01", at: "09:00", until: "11:30" }),
      anEvent("ev2", { event: "drains-paused", on: "2026-12-07", at: "08:00", until: "15:30" }),
      anEvent("ev3", { event: "authority-order", on: "2026-11-12", reference: "case 26-118" }),
    ],
  });
}

function sampleReport(): Report {
  const all = ["p12", "p14", "p16", "p18"];
  return aReport({
    extent: 9_600,
    stations: [
      aStationed("o1", { station: 1_820 }),
      aStationed("o2", { station: 2_600, side: "right" }),
      aStationed("o3", { station: 4_310, side: "right" }),
      aStationed("o4", { station: 5_140 }),
      aStationed("o5", { station: 7_725, side: "right" }),
      aStationed("f1", { station: 2_240, toStation: 2_480 }),
      aStationed("f2", { station: 6_150 }),
    ],
    tieIns: [
      aFinding(T1, { entryId: "e12" }),
      aFinding(T2, { entryId: "e14" }),
      aFinding(T3, {
        standing: "undocumented",
        level: 1,
        propertyId: null,
        sentence: "Seen at 43.1 ft from the right; no record entry is near.",
      }),
      aFinding(T4, { entryId: "e16", decided: false }),
      aFinding(T5, {
        standing: "undocumented",
        level: 5,
        sentence:
          "Seen at 77.25 ft from the right; not on record; two dye tests show 18 Fennel Row.",
      }),
    ],
    entries: [
      anEntryFinding("e12", { recordStation: 1_840, station: 1_815, tieInId: "T1" }),
      anEntryFinding("e14", { recordStation: 2_650, station: 2_610, tieInId: "T2" }),
      anEntryFinding("e16", {
        recordStation: 5_200,
        station: 5_150,
        tieInId: "T4",
        decided: false,
      }),
      anEntryFinding("e20", {
        recordStation: 8_600,
        station: 8_600,
        standing: "on-record-not-seen",
      }),
    ],
    coverage: [
      aSpan(0, 3_300, "seen"),
      aSpan(3_300, 3_900, "under-water"),
      aSpan(3_900, 8_800, "seen"),
      aSpan(8_800, 9_600, "not-inspected"),
    ],
    reaches: [
      aReach(0, 1_200, { servedBy: all, unknownTieIns: ["T3"], holder: "authority" }),
      aReach(1_200, 1_820, { servedBy: all, unknownTieIns: ["T3"] }),
      aReach(1_820, 2_600, { servedBy: ["p14", "p16", "p18"], unknownTieIns: ["T3"] }),
      aReach(2_600, 4_310, { servedBy: ["p16", "p18"], unknownTieIns: ["T3"] }),
      aReach(4_310, 5_140, { servedBy: ["p16", "p18"], material: "pvc" }),
      aReach(5_140, 7_725, { servedBy: ["p18"], material: "pvc", crossedBy: ["p9"] }),
      aReach(7_725, 9_600, {
        servedBy: [],
        material: "unknown",
        diameter: null,
        holder: "unclear",
      }),
    ],
    holds: [
      aHold("tie-in-owner-unknown:T3"),
      aHold("easement-missing:x9", {
        cause: "easement-missing",
        subjectId: "x9",
        subjectLabel: "9 Ropewalk Lane",
        stops: ["submission", "digging"],
        sentence: "No easement is recorded where the line crosses 9 Ropewalk Lane.",
        closes: "Record an easement, or get consent to dig.",
        waiver: aWaiver("easement-missing:x9"),
      }),
    ],
    splits: [
      anOutcome({
        total: 1_925_000,
        oddCents: "1 cent was left over and went to 16 Fennel Row.",
        shares: [
          shareOf("p12", "955000/3", [
            ["s1", "10.0–18.2 ft at $100.00 a foot: $820.00 ÷ 4", "20500/1"],
            ["s3", "part of the general work", "893500/3"],
          ]),
          shareOf("p14", "955000/3", [["s1", "10.0–26.0 ft: $1,600.00 ÷ 3", "955000/3"]]),
          shareOf("p16", "1705001/3", [["s1", "10.0–30.0 ft", "1705001/3"]]),
          shareOf("p18", "720000/1", [
            ["s1", "10.0–30.0 ft", "95000/1"],
            ["s2", "61.5 ft: $6,250.00, alone", "625000/1"],
          ]),
        ],
      }),
      anOutcome({
        choice: { rule: "equal", faultStation: null, payerId: null, unknownShares: "carried" },
        title: "Equal",
        total: 1_925_000,
        shares: Object.keys(SAMPLE_AMOUNTS).map((id) =>
          aShare(id, { amount: 481_250, exact: "481250/1" }),
        ),
      }),
    ],
  });
}

function shareOf(
  propertyId: keyof typeof SAMPLE_AMOUNTS,
  exact: string,
  steps: readonly (readonly [string, string, string])[],
) {
  return aShare(propertyId, {
    amount: SAMPLE_AMOUNTS[propertyId],
    recoverable: propertyId === "p18" ? 41_250 : 0,
    exact,
    steps: steps.map(([itemId, words, part]) => ({
      itemId,
      words,
      exact: part,
      piece: { from: null, to: null, cost: part, part: "1/1", sharers: 1 },
    })),
  });
}

/** A line, by default the sample line, with an authority that asks for these sheets too. */
export function askingFor<L extends { readonly file: LineFile }>(
  kinds: readonly SheetKind[],
  line: L,
): L {
  const authority = line.file.authority ?? anAuthority();
  const more = kinds.map((sheet) => aRequirement(`asks-${sheet}`, { sheet, title: sheet }));
  const requirements = [...authority.requirements, ...more];
  return { ...line, file: { ...line.file, authority: { ...authority, requirements } } };
}

/** A notice on the sample line, in the language of its party. */
export function sampleNotice(
  partyId: string,
  propertyId: string | null,
  overrides: Partial<Notice> = {},
): Notice {
  return aNotice("notice-7f2a1", {
    partyId,
    propertyId,
    replyBy: "2026-12-09",
    splitId: "split-1",
    language: partyId === "jesus" ? "es" : "en",
    ...overrides,
  });
}
