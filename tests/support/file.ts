import {
  type Agreement,
  type Authority,
  type Fee,
  noParts,
  type Requirement,
  type ResponsibilityRule,
} from "#lib/domain/facts/authority.ts";
import type { ClockRule, Holiday } from "#lib/domain/facts/clock-rule.ts";
import type { Consent } from "#lib/domain/facts/consent.ts";
import type { DigArea } from "#lib/domain/facts/dig-area.ts";
import { usualRow } from "#lib/domain/facts/field.ts";
import type { HistoryEntry } from "#lib/domain/facts/history-entry.ts";
import type { Waiver } from "#lib/domain/facts/hold.ts";
import type { HouseholdCall } from "#lib/domain/facts/household-call.ts";
import type { LandStretch } from "#lib/domain/facts/land.ts";
import type { Crossing, LineFacts, LinePoint, TieIn } from "#lib/domain/facts/line.ts";
import type { LineFile, Office } from "#lib/domain/facts/line-file.ts";
import { LIST_NAMES, type ListName } from "#lib/domain/facts/list-name.ts";
import type { Delivery, Notice, Reply } from "#lib/domain/facts/notice.ts";
import type { Pairing } from "#lib/domain/facts/pairing.ts";
import type { Address, Party, Property, Role, Unit } from "#lib/domain/facts/party.ts";
import {
  type DatedEvent,
  INSPECTION,
  type Inspection,
  type LocateTicket,
  type Permit,
  type PermitStep,
  type RequirementMark,
} from "#lib/domain/facts/permit.ts";
import type { PermitRecord, RecordEntry } from "#lib/domain/facts/record.ts";
import type { RollCallWord } from "#lib/domain/facts/roll-call.ts";
import {
  type Anchor,
  type Gap,
  OBSERVATION,
  type Observation,
  type Run,
} from "#lib/domain/facts/run.ts";
import type { ScopeItem } from "#lib/domain/facts/scope.ts";
import type { SpillStep } from "#lib/domain/facts/spill-step.ts";
import type { SplitVersion } from "#lib/domain/facts/split.ts";
import type { TieInTest } from "#lib/domain/facts/test.ts";
import type { TestDay, TestStop } from "#lib/domain/facts/test-day.ts";
import type { Upload } from "#lib/domain/facts/upload.ts";
import type { UtilityResponse } from "#lib/domain/facts/utility-response.ts";

/**
 * Facts with the usual values filled in, so that a test names only what it is about.
 * Stations are hundredths of a foot, money is cents.
 */

const LINE: LineFacts = {
  id: "line-1",
  name: "Alley behind Fennel Row",
  town: "Quillhaven, WA",
  openedOn: "2026-10-29",
  closedOn: null,
  upperEnd: 10_000,
  material: "vitrified-clay",
  diameter: 6,
  mainStation: null,
  mainNote: "",
  bearing: null,
  bearingFrom: "",
  authorityId: null,
  ruleId: null,
  plumbingCode: null,
  leastSlope: null,
  optionId: null,
  statementOthers: false,
  statementRules: false,
  warrantyMonths: null,
  warrantyCovers: "",
  note: "",
};

const NO_ROWS = Object.fromEntries(LIST_NAMES.map((list) => [list, []])) as unknown as {
  readonly [L in ListName]: LineFile[L];
};

/** An empty file on a trunk of 100 ft, with what the test puts into it. */
export function aFile(
  overrides: Omit<Partial<LineFile>, "line"> & { readonly line?: Partial<LineFacts> } = {},
): LineFile {
  const { line, ...rest } = overrides;
  return {
    authority: null,
    ...NO_ROWS,
    ...rest,
    line: { ...LINE, ...line },
  };
}

/** A house that is known to be on the line, at a known station. */
export function aTieIn(id: string, overrides: Partial<TieIn> = {}): TieIn {
  return {
    id,
    label: id,
    parentId: null,
    station: null,
    side: "left",
    diameter: 4,
    material: "vitrified-clay",
    fitting: "wye",
    kind: "building",
    propertyId: null,
    inactive: false,
    settledReason: "",
    settledBy: "",
    settledOn: null,
    ownerAccepted: false,
    note: "",
    ...overrides,
  };
}

export function aPoint(id: string, overrides: Partial<LinePoint> = {}): LinePoint {
  return { id, kind: "cleanout", station: 0, depth: null, note: "", ...overrides };
}

export function aCrossing(id: string, overrides: Partial<Crossing> = {}): Crossing {
  return {
    id,
    propertyId: "crossed",
    from: 0,
    to: 1_000,
    easement: "unknown",
    recordingNumber: "",
    note: "",
    ...overrides,
  };
}

/** A lot whose owner a plat names, unless said otherwise. */
export function aLand(id: string, overrides: Partial<LandStretch> = {}): LandStretch {
  return {
    id,
    from: 0,
    to: 1_000,
    kind: "lot",
    propertyId: "p",
    shownBy: "Plat of 1958",
    note: "",
    ...overrides,
  };
}

export function anAddress(street: string, overrides: Partial<Address> = {}): Address {
  return { street, unit: "", city: "Quillhaven", state: "WA", zip: "98000", ...overrides };
}

export function aProperty(id: string, overrides: Partial<Property> = {}): Property {
  return {
    id,
    address: anAddress(`${id} Fennel Row`),
    parcel: "",
    legalDescription: "",
    stake: "connected",
    weight: null,
    bothLanguages: false,
    note: "",
    ...overrides,
  };
}

export function aUnit(id: string, propertyId: string, overrides: Partial<Unit> = {}): Unit {
  return { id, propertyId, name: "", use: "dwelling", note: "", ...overrides };
}

export function aParty(id: string, overrides: Partial<Party> = {}): Party {
  return {
    id,
    kind: "person",
    name: id,
    mailing: null,
    careOf: "",
    email: "",
    phone: "",
    language: "en",
    needs: "",
    needsSaidBy: "",
    note: "",
    ...overrides,
  };
}

/** An owner, unless said otherwise. */
export function aRole(partyId: string, propertyId: string, overrides: Partial<Role> = {}): Role {
  return {
    id: `${partyId}-${overrides.role ?? "owner"}-${propertyId}`,
    partyId,
    propertyId,
    role: "owner",
    unitId: null,
    capacity: "",
    heldWith: "",
    ...overrides,
  };
}

export function aRecord(id: string, overrides: Partial<PermitRecord> = {}): PermitRecord {
  return {
    id,
    kind: "card",
    title: "Side sewer card",
    number: id,
    dated: "1958",
    measuredFrom: "main",
    length: null,
    obtainedOn: null,
    uploadId: null,
    note: "",
    ...overrides,
  };
}

export function anEntry(id: string, overrides: Partial<RecordEntry> = {}): RecordEntry {
  return {
    id,
    recordId: "card",
    label: id,
    distance: null,
    uncertainty: null,
    side: "left",
    diameter: 4,
    material: "vitrified-clay",
    fitting: "wye",
    propertyId: null,
    explanation: "",
    explainedBy: "",
    explainedOn: null,
    note: "",
    ...overrides,
  };
}

/** A run upstream from the main, its counter set to zero there; it needs an anchor to say stations. */
export function aRun(id: string, overrides: Partial<Run> = {}): Run {
  return {
    id,
    name: id,
    ranOn: "2026-11-03",
    operator: "Marek Sandoval",
    accessPoint: "Alley cleanout",
    looks: "upstream",
    measuredFrom: "access",
    selfLeveling: "unknown",
    zeroAt: "center of the cleanout",
    fromCounter: 0,
    toCounter: 10_000,
    ended: "unknown",
    crossingSeen: "no",
    uncertainty: null,
    note: "",
    ...overrides,
  };
}

export function anAnchor(runId: string, overrides: Partial<Anchor> = {}): Anchor {
  return {
    id: `${runId}-at-${overrides.counter ?? 0}`,
    runId,
    kind: "main-connection",
    counter: 0,
    station: 0,
    note: "",
    ...overrides,
  };
}

export function aGap(runId: string, overrides: Partial<Gap> = {}): Gap {
  return {
    id: `${runId}-gap-${overrides.fromCounter ?? 0}`,
    runId,
    fromCounter: 0,
    toCounter: 0,
    cause: "under-water",
    note: "",
    ...overrides,
  };
}

/** A tie-in seen at 9 o'clock, unless said otherwise. */
export function anObservation(id: string, overrides: Partial<Observation> = {}): Observation {
  return {
    ...usualRow(OBSERVATION),
    id,
    runId: "run",
    kind: "tie-in",
    counter: 0,
    clock: 9,
    material: "vitrified-clay",
    diameter: 4,
    fitting: "wye",
    ...overrides,
  };
}

/** An accepted pairing, unless said otherwise. */
export function aPairing(
  entryId: string,
  tieInId: string,
  overrides: Partial<Pairing> = {},
): Pairing {
  return {
    id: `${entryId}-${tieInId}`,
    entryId,
    tieInId,
    state: "accepted",
    distance: 0,
    reason: "Same side and place",
    decidedBy: "Dana Okafor",
    decidedOn: "2026-11-06",
    ...overrides,
  };
}

/** A dye test that showed, filmed, with two names and a negative control. */
export function aTest(id: string, tieInId: string, overrides: Partial<TieInTest> = {}): TieInTest {
  return {
    id,
    tieInId,
    propertyId: null,
    unitId: null,
    kind: "dye",
    performedOn: "2026-11-11",
    fixture: "Kitchen sink",
    colour: "green",
    quantity: "1 cup in 5 gallons",
    startedAt: "09:40",
    firstSeenAt: "09:44",
    seenAt: null,
    waitMinutes: 30,
    filmed: "Run 3, 2:10",
    dosedBy: "Marek Sandoval",
    watchedBy: "Ruth Lindqvist",
    otherWaterBarred: true,
    controlPropertyId: null,
    controlResult: "negative",
    result: "positive",
    note: "",
    ...overrides,
  };
}

/** One dosing at an address, at nine, watched for a quarter of an hour. */
export function aTestStop(propertyId: string | null, overrides: Partial<TestStop> = {}): TestStop {
  return {
    propertyId,
    unitId: null,
    pointId: null,
    tieInIds: [],
    drains: [],
    fixture: "Kitchen sink",
    colour: "green",
    dose: "",
    flushGallons: null,
    startsAt: "09:00",
    waitMinutes: 15,
    rinseMinutes: 0,
    passed: null,
    ...overrides,
  };
}

export function aTestDay(stops: readonly TestStop[], overrides: Partial<TestDay> = {}): TestDay {
  return {
    id: "day",
    on: "2026-12-03",
    controlPropertyId: null,
    stops,
    plantToldOn: null,
    plantTold: "",
    note: "",
    plannedBy: "Dana Okafor",
    plannedOn: "2026-11-25",
    ...overrides,
  };
}

export function aWaiver(holdKey: string, overrides: Partial<Waiver> = {}): Waiver {
  return {
    id: `waiver-${holdKey}`,
    holdKey,
    reason: "The authority's inspector stands by",
    by: "Dana Okafor",
    on: "2026-11-20",
    ...overrides,
  };
}

export function anAgreement(id: string, overrides: Partial<Agreement> = {}): Agreement {
  return {
    id,
    title: "Sewer agreement",
    recordingNumber: "198404120331",
    recordedOn: "1984-04-12",
    fromStation: null,
    toStation: null,
    terms: "",
    termsEs: "",
    shares: [],
    ...overrides,
  };
}

export function aRule(id: string, overrides: Partial<ResponsibilityRule> = {}): ResponsibilityRule {
  return {
    id,
    authorityId: "authority-1",
    title: "Owners answer for the pipe to the main",
    pattern: "owners-to-main",
    boundary: "main-connection",
    sharedRule: "all-whose-flow-passes",
    clearingBy: "owners",
    repairBy: "authority",
    replacementBy: "authority",
    citation: "QMC 13.08.010",
    url: "https://example.org/qmc/13.08.010",
    asOf: "2026-10-01",
    note: "",
    ...overrides,
  };
}

export function aRequirement(id: string, overrides: Partial<Requirement> = {}): Requirement {
  return {
    id,
    authorityId: "authority-1",
    sheet: "upload",
    title: id,
    detail: "",
    citation: "QMC 13.08.050",
    asOf: "2026-10-01",
    mandatory: true,
    due: "submission",
    permitKind: null,
    paper: null,
    ...overrides,
  };
}

export function aFee(id: string, overrides: Partial<Fee> = {}): Fee {
  return {
    id,
    authorityId: "authority-1",
    title: "Side sewer permit",
    amount: 31_000,
    per: "permit",
    permitKind: null,
    included: 0,
    step: null,
    partCounts: "whole",
    least: null,
    most: null,
    surface: null,
    citation: "QMC 3.20.010",
    asOf: "2026-10-01",
    ...overrides,
  };
}

export function aClockRule(id: string, overrides: Partial<ClockRule> = {}): ClockRule {
  return {
    id,
    authorityId: "authority-1",
    title: id,
    event: "letter-sent",
    count: 10,
    unit: "calendar-days",
    way: "after",
    countsEventDay: false,
    fullDays: false,
    roll: "forwards",
    mailDays: 0,
    meaning: "due-by",
    whiteLineFirst: false,
    citation: "QMC 13.08.070",
    asOf: "2026-10-01",
    ...overrides,
  };
}

export function aHoliday(day: string, overrides: Partial<Holiday> = {}): Holiday {
  return {
    id: `holiday-${day}`,
    authorityId: "authority-1",
    day,
    name: "Founders' Day",
    source: "",
    ...overrides,
  };
}

export function anAuthority(overrides: Partial<Authority> = {}): Authority {
  return {
    id: "authority-1",
    name: "City of Quillhaven",
    office: "Permit counter",
    address: anAddress("1 Harbor Square"),
    phone: "(360) 555-0100",
    email: "permits@example.org",
    note: "",
    ...noParts(),
    ...overrides,
  };
}

/** A stretch of pipe to replace at $100.00 a foot, unless said otherwise. */
export function aScopeItem(id: string, overrides: Partial<ScopeItem> = {}): ScopeItem {
  return {
    id,
    title: id,
    kind: "dig-and-replace",
    work: "replacement",
    place: "stretch",
    from: 0,
    to: 1_000,
    tieInId: null,
    quantity: 1_000,
    unit: "ft",
    rate: 10_000,
    markup: 0,
    tax: 0,
    spread: "by-placed-cost",
    rule: null,
    payerId: null,
    allegedCause: "",
    optionId: null,
    addedById: null,
    droppedById: null,
    note: "",
    ...overrides,
  };
}

export function aSplit(id: string, overrides: Partial<SplitVersion> = {}): SplitVersion {
  return {
    id,
    number: 1,
    rule: "portion-used",
    faultStation: null,
    payerId: null,
    unknownShares: "carried",
    reason: "Each foot among those whose flow passes it",
    chosenBy: "Dana Okafor",
    chosenOn: "2026-11-20",
    total: 0,
    shares: [],
    basis: "",
    optionId: null,
    sentAt: null,
    ...overrides,
  };
}

export function aNotice(id: string, overrides: Partial<Notice> = {}): Notice {
  return {
    id,
    kind: "finding",
    partyId: "party",
    propertyId: null,
    tieInId: null,
    splitId: null,
    language: "en",
    alsoIn: null,
    state: "draft",
    createdOn: "2026-11-16",
    createdBy: "Dana Okafor",
    replyBy: null,
    ownWords: "",
    frozen: null,
    frozenHash: null,
    sentAt: null,
    uploadId: null,
    paperId: "",
    ...overrides,
  };
}

export function aDelivery(
  id: string,
  noticeId: string,
  overrides: Partial<Delivery> = {},
): Delivery {
  return {
    id,
    noticeId,
    method: "first-class",
    sentOn: "2026-11-16",
    by: "Dana Okafor",
    tracking: "",
    outcome: "on-its-way",
    outcomeOn: null,
    proofUploadId: null,
    note: "",
    at: "",
    place: "",
    handedTo: "",
    declaredUploadId: null,
    ...overrides,
  };
}

export function aReply(id: string, noticeId: string | null, overrides: Partial<Reply> = {}): Reply {
  return {
    id,
    noticeId,
    entryId: null,
    kind: "agrees",
    receivedOn: "2026-11-21",
    takenBy: "Dana Okafor",
    words: "",
    suitsOn: null,
    uploadId: null,
    dealtBy: "",
    dealtOn: null,
    dealtHow: null,
    dealtWords: "",
    ...overrides,
  };
}

/** A call about a test visit that ended in agreement, unless said otherwise. */
export function aHouseholdCall(id: string, overrides: Partial<HouseholdCall> = {}): HouseholdCall {
  return {
    id,
    partyId: "party",
    propertyId: "property",
    purpose: "test-visit",
    forDay: "2026-12-02",
    outcome: "agreed",
    words: "Between her treatments, 9 to 12",
    calledBy: "Ruth Lindqvist",
    calledOn: "2026-11-20",
    needs: "Home dialysis",
    ...overrides,
  };
}

/** Somebody who was told of the pause of December 2, 8 am to noon. */
export function aRollCallWord(id: string, overrides: Partial<RollCallWord> = {}): RollCallWord {
  return {
    id,
    matter: "drains-off",
    forDay: "2026-12-02",
    from: "08:00",
    until: "12:00",
    propertyId: "property",
    unitId: null,
    answer: "aware",
    spokeWith: "",
    words: "",
    by: "Ines Peña",
    at: "2026-12-01T18:00:00.000Z",
    ...overrides,
  };
}

export function aConsent(id: string, overrides: Partial<Consent> = {}): Consent {
  return {
    id,
    kind: "dig",
    partyId: "party",
    propertyId: "property",
    state: "given",
    stateOn: "2026-11-21",
    splitId: null,
    amount: null,
    recordingNumber: "",
    uploadId: null,
    note: "",
    restsOnId: null,
    enteredBy: "",
    ...overrides,
  };
}

export function aPermit(id: string, overrides: Partial<Permit> = {}): Permit {
  return {
    id,
    kind: "side-sewer",
    number: "",
    expiresOn: null,
    postedOn: null,
    postedBy: "",
    postedPlace: "",
    note: "",
    ...overrides,
  };
}

export function aPermitStep(
  id: string,
  permitId: string,
  overrides: Partial<PermitStep> = {},
): PermitStep {
  return {
    id,
    permitId,
    state: "drafting",
    on: "2026-11-20",
    by: "Dana Okafor",
    note: "",
    uploadId: null,
    ...overrides,
  };
}

export function aRequirementMark(
  requirementId: string,
  overrides: Partial<RequirementMark> = {},
): RequirementMark {
  return {
    id: `mark-${requirementId}`,
    requirementId,
    state: "in-hand",
    uploadId: null,
    note: "",
    ...overrides,
  };
}

export function aLocateTicket(id: string, overrides: Partial<LocateTicket> = {}): LocateTicket {
  return {
    id,
    number: "26-555-0171",
    calledOn: "2026-11-23",
    calledAt: "",
    workBeginsOn: null,
    workBeginsAt: "",
    whiteLinedOn: null,
    whiteLinedBy: "",
    whiteLinedHow: null,
    whiteLinePhotoId: null,
    note: "",
    ...overrides,
  };
}

export function anInspection(
  id: string,
  permitId: string,
  overrides: Partial<Inspection> = {},
): Inspection {
  return {
    ...usualRow(INSPECTION),
    id,
    permitId,
    title: "Open trench",
    bookedFor: "2026-12-02",
    bookedAt: "",
    inspector: "",
    result: "booked",
    note: "",
    ...overrides,
  };
}

export function anEvent(id: string, overrides: Partial<DatedEvent> = {}): DatedEvent {
  return {
    id,
    event: "authority-order",
    on: "2026-11-20",
    at: "",
    until: "",
    lastOn: null,
    reference: "",
    note: "",
    ...overrides,
  };
}

/** An area of which nothing is said yet but the lot. */
export function aDigArea(
  id: string,
  propertyId: string,
  overrides: Partial<DigArea> = {},
): DigArea {
  return {
    id,
    propertyId,
    place: "",
    length: null,
    width: null,
    firstOn: null,
    lastOn: null,
    restoration: "not-set",
    notRestored: "",
    plantings: "not-set",
    plants: "",
    contact: "",
    contactPhone: "",
    note: "",
    ...overrides,
  };
}

export function aSpillStep(id: string, overrides: Partial<SpillStep> = {}): SpillStep {
  return {
    id,
    kind: "known",
    on: "2026-11-24",
    at: "",
    place: "",
    number: "",
    gallons: null,
    reached: "",
    note: "",
    ...overrides,
  };
}

export function anUpload(id: string, overrides: Partial<Upload> = {}): Upload {
  return {
    id,
    name: `${id}.pdf`,
    type: "application/pdf",
    bytes: 1_000,
    sha256: "0".repeat(64),
    addedBy: "Dana Okafor",
    addedAt: "2026-11-20T17:00:00.000Z",
    note: "",
    ...overrides,
  };
}

export function aHistoryEntry(id: string, overrides: Partial<HistoryEntry> = {}): HistoryEntry {
  return {
    id,
    at: "2026-11-20T17:00:00.000Z",
    by: "Dana Okafor",
    action: "save-rows",
    sentence: "",
    detail: "{}",
    ...overrides,
  };
}

export function anOffice(overrides: Partial<Office> = {}): Office {
  return {
    name: "Bellwether Drain and Sewer",
    license: "BELLWDS555QH",
    licenseExpiresOn: "2027-06-30",
    bond: "Harbor Surety 55-0101",
    bondExpiresOn: "2027-06-30",
    insurance: "Harbor Mutual 55-0102",
    insuranceExpiresOn: "2027-06-30",
    compensation: "",
    compensationExpiresOn: null,
    businessLicense: "",
    businessLicenseExpiresOn: null,
    address: anAddress("7 Dock Street"),
    phone: "(360) 555-0101",
    hours: { days: "monday-to-friday", from: "08:00", to: "17:00" },
    onCallPhone: "(360) 555-0199",
    onCallHours: { days: "every-day", from: "", to: "" },
    email: "office@example.com",
    payee: "Bellwether Drain and Sewer",
    payMethods: ["check", "bank-transfer"],
    payDays: 30,
    depositPercent: 0,
    bothLanguages: false,
    zone: "America/Los_Angeles",
    ...overrides,
  };
}

/** A gas company that marked on November 24, unless said otherwise. */
export function aUtilityResponse(
  id: string,
  overrides: Partial<UtilityResponse> = {},
): UtilityResponse {
  return {
    id,
    ticketId: "ticket",
    utility: "Harbor Gas",
    kind: "gas",
    answer: "marked",
    answeredOn: "2026-11-24",
    goodUntil: null,
    note: "",
    ...overrides,
  };
}
