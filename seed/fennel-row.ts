import type { LineFile } from "#lib/domain/facts/line-file.ts";
import type { DealtHow, ReplyKind } from "#lib/domain/facts/notice.ts";
import { reportOn } from "#lib/domain/report/report-on.ts";
import { proposeTestDay } from "#lib/domain/testing/plan-test-day.ts";
import type { Day } from "#lib/domain/time/day.ts";
import type { Actor } from "#lib/operations/act.ts";
import { addNarration } from "#lib/operations/add-narration.ts";
import { changeDelivery } from "#lib/operations/change-delivery.ts";
import { chooseOption } from "#lib/operations/choose-option.ts";
import { chooseRule } from "#lib/operations/choose-rule.ts";
import { dealWithReply } from "#lib/operations/deal-with-reply.ts";
import { decidePairing } from "#lib/operations/decide-pairing.ts";
import { draftNotices } from "#lib/operations/draft-notices.ts";
import { openLine } from "#lib/operations/open-line.ts";
import { planTestDay } from "#lib/operations/plan-test-day.ts";
import { recordConsent } from "#lib/operations/record-consent.ts";
import { recordHouseholdCall } from "#lib/operations/record-household-call.ts";
import { recordReply } from "#lib/operations/record-reply.ts";
import { saveLine } from "#lib/operations/save-line.ts";
import { sendNotices } from "#lib/operations/send-notices.ts";
import { addRows, type deskAt, fileOf, must } from "./desk.ts";
import { applyForFennel } from "./fennel-application.ts";
import { meetOnFennel } from "./fennel-meeting.ts";
import { BENDS, FIXED_POINTS, PLAN_SHAPES, tiesOf } from "./fennel-plan.ts";
import { AUTHORITY } from "./office.ts";
import {
  anchor,
  crossing,
  entry,
  gap,
  inTown,
  land,
  party,
  point,
  property,
  role,
  run,
  seen,
  unit,
  work,
} from "./rows.ts";

type Desk = ReturnType<typeof deskAt>;

/** A row of houses and a bakery on a back alley: found, reconciled in part, held by two tie-ins. */
export function fillFennelRow(desk: Desk, who: { office: Actor; field: Actor }): void {
  const opened = desk(who.office, "2026-10-29");
  const { lineId } = must(
    openLine(opened, {
      name: "Cinder Alley behind Fennel Row",
      town: "Quillhaven, WA",
      authorityId: AUTHORITY.id,
    }),
  );
  must(
    chooseRule(opened, {
      lineId,
      authorityId: AUTHORITY.id,
      ruleId: AUTHORITY.rules[0]?.id ?? null,
    }),
  );
  must(
    saveLine(opened, {
      lineId,
      facts: {
        material: "concrete",
        diameter: 6,
        upperEnd: 9_600,
        mainStation: 15_600,
        mainNote: "from manhole QH-114",
      },
    }),
  );
  addPeople(desk(who.office, "2026-10-30"), lineId);
  addRecord(desk(who.office, "2026-11-02"), lineId);
  addRuns(desk(who.field, "2026-11-04"), lineId);
  decide(desk(who.office, "2026-11-06"), lineId);
  addPlan(desk(who.office, "2026-11-12"), lineId);
  addTests(desk(who.field, "2026-11-12"), lineId);
  addWork(desk(who.office, "2026-11-13"), lineId);
  writeFinding(desk, who.office, lineId);
  addCapacity(desk(who.office, "2026-11-17"), lineId);
  must(addNarration(desk(who.field, "2026-11-17"), { lineId, runId: "fr-run2", text: SPOKEN }));
  callHouseholds(desk(who.office, "2026-11-20"), lineId);
  askToEnter(desk(who.office, "2026-11-23"), lineId);
  meetOnFennel(desk(who.office, "2026-11-19"), desk(who.office, "2026-11-24"), lineId);
}

/** Before the day is planned, the households that cannot simply be without drains are called. */
function callHouseholds(act: SeedAct, lineId: string): void {
  const call = (partyId: string, propertyId: string, words: string) =>
    must(
      recordHouseholdCall(act, {
        lineId,
        partyId,
        propertyId,
        purpose: "test-visit",
        forDay: TEST_DAY,
        outcome: "agreed",
        words,
        calledBy: "Ruth Lindqvist",
        calledOn: act.today,
      }),
    );
  call("fr-p8", "fr-16", "Treatment is over by 8. Water may stay off from 9 until noon.");
  call(
    "fr-p6",
    "fr-20",
    "Ovens are off by 8:30. One sink may be used for dye; call at the back door.",
  );
}

const TEST_DAY = "2026-12-02";

/** A day of dye tests is planned, and one of those who are asked says no. */
function askToEnter(act: SeedAct, lineId: string): void {
  const file = fileOf(act, lineId);
  const { controlPropertyId, stops } = proposeTestDay(file, reportOn(file, act.today));
  must(
    planTestDay(act, {
      lineId,
      dayId: null,
      seen: null,
      on: TEST_DAY,
      controlPropertyId,
      stops,
      plantToldOn: null,
      plantTold: "",
      note: "",
    }),
  );
  must(
    recordConsent(act, {
      lineId,
      kind: "enter",
      partyId: "fr-p9",
      propertyId: "fr-r11",
      state: "refused",
      stateOn: act.today,
      splitId: null,
      amount: null,
      recordingNumber: "",
      uploadId: null,
      note: "By phone: wants to see the video first",
    }),
  );
}

type SeedAct = ReturnType<Desk>;

function addPeople(act: SeedAct, lineId: string): void {
  addRows(act, { lineId, table: "properties" }, [
    property("fr-12", "12 Fennel Row", {
      parcel: "QH-0412",
      legalDescription: "Lot 12, Fennel Addition",
    }),
    property("fr-14", "14 Fennel Row", {
      parcel: "QH-0414",
      legalDescription: "Lot 14, Fennel Addition",
    }),
    property("fr-16", "16 Fennel Row", {
      parcel: "QH-0416",
      legalDescription: "Lot 16, Fennel Addition",
    }),
    property("fr-18", "18 Fennel Row", {
      parcel: "QH-0418",
      legalDescription: "Lot 18, Fennel Addition",
    }),
    property("fr-20", "20 Fennel Row", {
      parcel: "QH-0420",
      legalDescription: "Lot 20, Fennel Addition",
    }),
    property("fr-r11", "11 Ropewalk Lane", { parcel: "QH-0511", stake: "candidate" }),
    property("fr-r9", "9 Ropewalk Lane", { parcel: "QH-0509", stake: "crossed" }),
  ]);
  addRows(act, { lineId, table: "units" }, [
    unit("fr-12-1", "fr-12"),
    unit("fr-14-1", "fr-14"),
    unit("fr-16-1", "fr-16", { name: "Unit A" }),
    unit("fr-16-2", "fr-16", { name: "Unit B" }),
    unit("fr-18-1", "fr-18"),
    unit("fr-20-1", "fr-20", { name: "Bakery", use: "business" }),
    unit("fr-20-2", "fr-20", { name: "Unit 2" }),
  ]);
  addRows(act, { lineId, table: "parties" }, [
    party("fr-p1", "Ottilie Brandvold", { email: "ottilie@example.com", phone: "(360) 555-0112" }),
    party("fr-p2", "Jesús Peña", {
      language: "es",
      email: "jesus@example.org",
      phone: "(360) 555-0114",
    }),
    party("fr-p3", "Larkspur Holdings LLC", {
      kind: "firm",
      mailing: inTown("900 Signal Hill Road", "Suite 4½"),
      email: "larkspur@example.org",
    }),
    party("fr-p4", "Agnieszka Łódź", { phone: "(360) 555-0118", mailing: inTown("PO BOX 118") }),
    party("fr-p5", "Winfield Family Trust", { kind: "trust", email: "winfield@example.com" }),
    party("fr-p6", "Crumb & Copper Bakery", {
      kind: "firm",
      phone: "(360) 555-0120",
      needs: "Bakes from 3 am; needs water from 2:30 am",
    }),
    party("fr-p7", "Tomas Ferreira", { phone: "(360) 555-0121" }),
    party("fr-p8", "Beatrix Holloway", {
      phone: "(360) 555-0116",
      needs: "Home dialysis; call before any drain shutdown",
    }),
    party("fr-p9", "Nils Adeyemi", { mailing: inTown("11 Ropewalk Lane") }),
    party("fr-p10", "Georgina Stroud", { mailing: inTown("9 Ropewalk Lane") }),
  ]);
  addRows(act, { lineId, table: "roles" }, [
    role("fr-p1", "fr-12", "owner"),
    role("fr-p1", "fr-12", "occupant", { unitId: "fr-12-1" }),
    role("fr-p2", "fr-14", "owner"),
    role("fr-p2", "fr-14", "occupant", { unitId: "fr-14-1" }),
    role("fr-p3", "fr-16", "owner", { capacity: "member" }),
    role("fr-p7", "fr-16", "occupant", { unitId: "fr-16-1" }),
    role("fr-p8", "fr-16", "occupant", { unitId: "fr-16-2" }),
    role("fr-p4", "fr-18", "owner"),
    role("fr-p5", "fr-20", "owner", { capacity: "trustee" }),
    role("fr-p6", "fr-20", "occupant", { unitId: "fr-20-1" }),
    role("fr-p9", "fr-r11", "owner"),
    role("fr-p10", "fr-r9", "crossed-lot-owner"),
  ]);
  addRows(act, { lineId, table: "points" }, [
    point("fr-pt1", "cleanout", 600, { depth: 720, note: "Brass cap in the alley" }),
    point("fr-pt2", "right-of-way-line", 1_200, { depth: 700 }),
  ]);
  addRows(act, { lineId, table: "crossings" }, [
    crossing("fr-x1", "fr-r9", {
      from: 7_600,
      to: 9_000,
      easement: "unknown",
      note: "Old plat shows no easement",
    }),
  ]);
  addRows(act, { lineId, table: "land" }, [
    land("fr-land1", { to: 1_200, kind: "right-of-way", shownBy: "City street map" }),
    land("fr-land2", { from: 1_200, to: 3_000, propertyId: "fr-12" }),
    land("fr-land3", { from: 3_000, to: 4_600, propertyId: "fr-14" }),
  ]);
}

function addRecord(act: SeedAct, lineId: string): void {
  addRows(act, { lineId, table: "records" }, [
    {
      id: "fr-card58",
      kind: "card",
      title: "Side sewer card 1184",
      number: "1184",
      dated: "1958",
      measuredFrom: "main",
      length: null,
      obtainedOn: "2026-11-02",
      uploadId: null,
      note: "Hand drawn, four houses on one permit",
    },
    {
      id: "fr-card94",
      kind: "permit",
      title: "Permit 94-0377",
      number: "94-0377",
      dated: "May 17, 1994",
      measuredFrom: "main",
      length: null,
      obtainedOn: "2026-11-02",
      uploadId: null,
      note: "Bakery conversion",
    },
  ]);
  addRows(act, { lineId, table: "entries" }, [
    entry("fr-e12", "fr-card58", {
      label: "House 12",
      distance: 1_800,
      side: "left",
      material: "concrete",
      propertyId: "fr-12",
    }),
    entry("fr-e14", "fr-card58", {
      label: "House 14",
      distance: 3_400,
      side: "left",
      material: "concrete",
      propertyId: "fr-14",
    }),
    entry("fr-e16", "fr-card58", {
      label: "House 16",
      distance: 5_200,
      side: "left",
      material: "concrete",
      propertyId: "fr-16",
    }),
    entry("fr-e18", "fr-card58", {
      label: "House 18",
      distance: 6_800,
      side: "left",
      material: "concrete",
      propertyId: "fr-18",
    }),
    entry("fr-e22", "fr-card94", {
      label: "Shop 22, to be built",
      distance: 8_000,
      side: "left",
      material: "pvc",
    }),
    entry("fr-e20", "fr-card94", {
      label: "Bakery 20",
      distance: 9_100,
      side: "right",
      diameter: 6,
      material: "pvc",
      propertyId: "fr-20",
    }),
  ]);
}

function addRuns(act: SeedAct, lineId: string): void {
  addRows(act, { lineId, table: "runs" }, [
    run("fr-run1", {
      name: "Run 1",
      ranOn: "2026-11-03",
      accessPoint: "Bakery cleanout, southeast corner of the yard",
      looks: "downstream",
      selfLeveling: "yes",
      zeroAt: "top of the cleanout riser",
      toCounter: 9_860,
      ended: "reached-main",
    }),
    run("fr-run2", {
      name: "Run 2",
      ranOn: "2026-11-04",
      accessPoint: "Alley cleanout",
      looks: "upstream",
      selfLeveling: "yes",
      zeroAt: "center of the cleanout",
      toCounter: 3_300,
      ended: "blocked",
      note: "Stopped by roots",
    }),
  ]);
  addRows(act, { lineId, table: "anchors" }, [
    anchor("fr-a1", "fr-run1", {
      kind: "main-connection",
      counter: 9_860,
      station: 0,
      note: "Main seen",
    }),
    anchor("fr-a2", "fr-run1", { kind: "cleanout", counter: 9_250, station: 600 }),
    anchor("fr-a3", "fr-run2", { kind: "cleanout", counter: 0, station: 600 }),
  ]);
  addRows(act, { lineId, table: "gaps" }, [
    gap("fr-g1", "fr-run1", {
      fromCounter: 5_160,
      toCounter: 5_760,
      note: "Camera under water in the belly",
    }),
  ]);
  addRows(act, { lineId, table: "observations" }, [
    seen("fr-o1", "fr-run1", {
      counter: 540,
      clock: 9,
      diameter: 6,
      material: "pvc",
      fitting: "wye",
      videoSecond: 41,
      note: "Bakery side",
    }),
    seen("fr-o2", "fr-run1", {
      kind: "material",
      counter: 2_060,
      material: "concrete",
      diameter: 6,
      videoSecond: 150,
      note: "Lining ends going up",
    }),
    seen("fr-o3", "fr-run1", {
      counter: 2_410,
      clock: 9,
      diameter: 4,
      material: "vitrified-clay",
      fitting: "break-in",
      videoSecond: 178,
      note: "Hole broken in, wet edge",
    }),
    seen("fr-o4", "fr-run1", {
      counter: 2_820,
      clock: 3,
      diameter: 4,
      material: "concrete",
      fitting: "wye",
      videoSecond: 205,
    }),
    seen("fr-o5", "fr-run1", {
      kind: "material",
      counter: 3_860,
      material: "cured-in-place-liner",
      diameter: 6,
      videoSecond: 286,
      note: "Lining begins going up",
    }),
    seen("fr-o6", "fr-run1", {
      counter: 4_430,
      clock: 3,
      diameter: 4,
      material: "concrete",
      fitting: "wye",
      videoSecond: 330,
    }),
    seen("fr-o7", "fr-run1", {
      kind: "fault",
      fault: "belly",
      counter: 5_160,
      toCounter: 5_760,
      videoSecond: 392,
      waterDepth: 4,
      note: "Full of water",
    }),
    seen("fr-o8", "fr-run1", {
      counter: 6_200,
      clock: 3,
      diameter: 4,
      material: "concrete",
      fitting: "wye",
      videoSecond: 470,
    }),
    seen("fr-o9", "fr-run1", {
      kind: "fault",
      fault: "roots",
      counter: 6_560,
      toCounter: 6_860,
      clock: 12,
      videoSecond: 505,
      note: "Half of the pipe",
    }),
    seen("fr-o10", "fr-run1", {
      counter: 7_060,
      clock: 10,
      diameter: 3,
      material: "pvc",
      fitting: "saddle",
      videoSecond: 548,
    }),
    seen("fr-o11", "fr-run1", {
      counter: 7_820,
      clock: 3,
      diameter: 4,
      material: "concrete",
      fitting: "wye",
      videoSecond: 610,
    }),
    seen("fr-o12", "fr-run1", {
      kind: "fault",
      fault: "crack",
      counter: 8_360,
      clock: 12,
      videoSecond: 655,
    }),
    seen("fr-o13", "fr-run2", {
      counter: 1_450,
      clock: 9,
      diameter: 4,
      material: "concrete",
      fitting: "wye",
      videoSecond: 66,
    }),
    seen("fr-o14", "fr-run2", {
      counter: 2_220,
      clock: 2,
      diameter: 3,
      material: "pvc",
      fitting: "saddle",
      videoSecond: 104,
      note: "Leaves in it",
    }),
    seen("fr-o15", "fr-run2", {
      counter: 3_040,
      clock: 9,
      diameter: 4,
      material: "concrete",
      fitting: "wye",
      videoSecond: 140,
    }),
  ]);
}

const SAME_PLACE = "Same side and size, and within a foot once the card's zero is allowed for";

function decide(act: SeedAct, lineId: string): void {
  const pairs = [
    ["fr-e12", "fr-o11"],
    ["fr-e14", "fr-o8"],
    ["fr-e16", "fr-o6"],
    ["fr-e18", "fr-o4"],
    ["fr-e20", "fr-o1"],
  ] as const;
  for (const [entryId, observationId] of pairs) {
    const tieInId = tieInOf(fileOf(act, lineId), observationId);
    must(decidePairing(act, { lineId, entryId, tieInId, state: "accepted", reason: SAME_PLACE }));
  }
}

function tieInOf(file: LineFile, observationId: string): string {
  const id = file.observations.find((each) => each.id === observationId)?.tieInId;
  if (!id) throw new Error(`Observation ${observationId} became no tie-in`);
  return id;
}

/** Where the line lies on the ground, and what holds it there. */
function addPlan(act: SeedAct, lineId: string): void {
  must(saveLine(act, { lineId, facts: { bearing: 76, bearingFrom: "plat" } }));
  addRows(act, { lineId, table: "bends" }, BENDS);
  addRows(act, { lineId, table: "fixedPoints" }, FIXED_POINTS);
  addRows(act, { lineId, table: "planShapes" }, PLAN_SHAPES);
  const ties = tiesOf(tieInOf(fileOf(act, lineId), "fr-o10"));
  addRows(act, { lineId, table: "ties" }, ties);
}

function addTests(act: SeedAct, lineId: string): void {
  const file = fileOf(act, lineId);
  const usual = {
    unitId: null,
    fixture: "",
    colour: "",
    quantity: "",
    startedAt: "",
    firstSeenAt: "",
    seenAt: null,
    waitMinutes: null,
    filmed: "",
    dosedBy: "Marek Łódź",
    watchedBy: "Ruth Lindqvist",
    otherWaterBarred: true,
    controlPropertyId: null,
    controlResult: "not-run",
    note: "",
  };
  addRows(act, { lineId, table: "tests" }, [
    {
      ...usual,
      id: "fr-t1",
      tieInId: tieInOf(file, "fr-o10"),
      propertyId: "fr-14",
      kind: "flow",
      performedOn: "2026-11-11",
      fixture: "Yard drain by the shed, garden hose",
      quantity: "10 gallons",
      startedAt: "09:40",
      firstSeenAt: "09:42",
      seenAt: 2_800,
      waitMinutes: 5,
      filmed: "Run 3, 2:10",
      result: "positive",
      note: "Clear water from the yard only",
    },
    {
      ...usual,
      id: "fr-t2",
      tieInId: tieInOf(file, "fr-o3"),
      propertyId: "fr-r11",
      kind: "dye",
      performedOn: "2026-11-11",
      fixture: "Kitchen sink",
      colour: "green",
      quantity: "2 tablets",
      startedAt: "10:30",
      waitMinutes: 20,
      result: "not-seen",
      note: "Basement bath not reached; occupant away",
    },
  ]);
}

const DIG = "fr-dig";
const LINING = "fr-lining";

const SCOPE = [
  work("fr-s7", "Line the pipe and open each tie-in again", {
    kind: "line",
    work: "repair",
    place: "stretch",
    from: 2_800,
    to: 4_800,
    quantity: 2_000,
    unit: "ft",
    rate: 12_500,
    optionId: LINING,
  }),
  work("fr-s1", "Dig and replace the rooted section", {
    kind: "dig-and-replace",
    work: "replacement",
    place: "stretch",
    from: 2_800,
    to: 3_600,
    quantity: 800,
    unit: "ft",
    rate: 18_500,
    optionId: DIG,
    allegedCause: "Roots; whose tree is not settled",
  }),
  work("fr-s2", "Dig and relay the belly to grade", {
    kind: "dig-and-replace",
    work: "replacement",
    place: "stretch",
    from: 4_000,
    to: 4_800,
    quantity: 800,
    unit: "ft",
    rate: 24_000,
    optionId: DIG,
  }),
  work("fr-s3", "Spot repair of the crack", {
    kind: "spot-repair",
    place: "point",
    from: 1_500,
    quantity: 100,
    unit: "each",
    rate: 185_000,
  }),
  work("fr-s4", "Alley restoration", {
    kind: "restore",
    place: "general",
    quantity: 100,
    unit: "each",
    rate: 242_000,
  }),
  work("fr-s5", "Permit and inspection fees", {
    kind: "permit-fee",
    place: "general",
    quantity: 100,
    unit: "each",
    rate: 33_000,
  }),
  work("fr-s6", "Camera runs and tests", {
    kind: "test",
    place: "general",
    quantity: 100,
    unit: "each",
    rate: 68_000,
    spread: "equally",
  }),
];

/** Two ways of doing the work, one of them chosen. */
function addWork(act: SeedAct, lineId: string): void {
  addRows(act, { lineId, table: "options" }, [
    { id: DIG, title: "Dig and replace", kind: "spot-repair", note: "" },
    { id: LINING, title: "Line it, 28 to 48 ft", kind: "lining", note: "Belly first" },
  ]);
  addRows(act, { lineId, table: "scope" }, SCOPE);
  const reason = "A liner would close T2, and no one knows yet whose it is";
  must(chooseOption(act, { lineId, optionId: DIG, reason }));
  applyForFennel(act, lineId);
}

/** Depths as located, and the fixtures that owners have counted so far. */
function addCapacity(act: SeedAct, lineId: string): void {
  must(saveLine(act, { lineId, facts: { plumbingCode: "ipc", leastSlope: "quarter-inch" } }));
  const usual = { invert: null, uncertainty: null, note: "" };
  addRows(act, { lineId, table: "levels" }, [
    { ...usual, id: "fr-l1", station: 200, ground: 10_000, depth: 720, method: "locator" },
    { ...usual, id: "fr-l2", station: 4_000, ground: 10_060, depth: 690, method: "locator" },
    { ...usual, id: "fr-l3", station: 9_200, ground: 10_090, depth: 490, method: "cleanout-drop" },
  ]);
  const group = { unitId: null, fixture: "bathroom-group", note: "" };
  addRows(act, { lineId, table: "fixtures" }, [
    { ...group, id: "fr-f1", propertyId: "fr-12", count: 2 },
    { ...group, id: "fr-f2", propertyId: "fr-14", count: 1 },
    { ...group, id: "fr-f3", propertyId: "fr-16", count: 2 },
    { ...group, id: "fr-f4", propertyId: "fr-18", count: 1 },
    { ...group, id: "fr-f5", propertyId: "fr-12", fixture: "clothes-washer", count: 1 },
  ]);
}

/** What Marek said on run 2, as typed up from the recording. */
const SPOKEN = `0:05 Run two, going in at the alley cleanout, counter on zero, looking up the line.
0:40 Six inch concrete. Hairline crack at nine feet, top of the pipe.
1:10 Fourteen four, tap on the left, four inch clay, that'll be twelve.
1:55 Twenty-two one, there's a saddle on the right, three inch plastic, and that one's not on the card.
2:20 Roots from about twenty-four to thirty.
2:48 Another tie-in on the left, maybe four inch clay.
2:58 Thirty-one even.
3:15 Can't get past the roots at thirty-three. Pulling back.
`;

/** Invented numbers of certified mail, with check digits that fit. */
const NUMBERS = [
  "9407555010000000000004",
  "9407555010000000000011",
  "9407555010000000000028",
  "9407555010000000000035",
  "9407555010000000000042",
  "9407555010000000000059",
];

function writeFinding(desk: Desk, actor: Actor, lineId: string): void {
  const act = desk(actor, "2026-11-16");
  const owners = [
    ["fr-p1", "fr-12"],
    ["fr-p2", "fr-14"],
    ["fr-p3", "fr-16"],
    ["fr-p4", "fr-18"],
    ["fr-p5", "fr-20"],
    ["fr-p10", "fr-r9"],
  ] as const;
  const { noticeIds } = must(
    draftNotices(act, {
      lineId,
      kind: "finding",
      replyBy: "2026-12-01",
      recipients: owners.map(([partyId, propertyId]) => ({
        partyId,
        propertyId,
        tieInId: null,
        splitId: null,
      })),
    }),
  );
  must(sendNotices(act, { lineId, noticeIds, method: "certified", sentOn: "2026-11-16" }));
  const file = fileOf(act, lineId);
  file.deliveries.forEach((delivery, at) => {
    const outcome = at === 3 ? "returned" : "delivered";
    must(
      changeDelivery(desk(actor, "2026-11-20"), {
        lineId,
        deliveryId: delivery.id,
        outcome,
        outcomeOn: "2026-11-19",
        tracking: NUMBERS[at] ?? "",
        note: outcome === "returned" ? "Box closed" : "",
        proofUploadId: null,
      }),
    );
  });
  answerFinding(desk, actor, { lineId, noticeIds });
}

/** What came back to the finding: two replies are dealt with, three wait, one of them an objection. */
function answerFinding(
  desk: Desk,
  actor: Actor,
  { lineId, noticeIds }: { readonly lineId: string; readonly noticeIds: readonly string[] },
): void {
  const reply = (at: number, kind: ReplyKind, on: Day, words: string): string => {
    const noticeId = noticeIds[at] ?? "";
    const said = { lineId, noticeId, kind, receivedOn: on, words, uploadId: null };
    return must(recordReply(desk(actor, on), said)).replyId;
  };
  const deal = (replyId: string, how: DealtHow, on: Day, words: string) =>
    must(dealWithReply(desk(actor, on), { lineId, replyId, how, on, words }));
  const comes = reply(0, "agrees", "2026-11-21", "Will come to the meeting.");
  deal(comes, "called-back", "2026-11-21", "Told her the day and the place of the meeting.");
  const paper = reply(
    2,
    "wants-paper",
    "2026-11-20",
    "Please mail the drawing to our office, large.",
  );
  deal(paper, "answered", "2026-11-23", "Mailed the drawing on 11 by 17 paper.");
  reply(1, "asks", "2026-11-23", "Is the drain by my shed on this pipe?");
  reply(
    4,
    "disagrees",
    "2026-11-24",
    "Our building got its own line in 1994. No one has shown us that we are on this one.",
  );
  reply(5, "offers-a-record", "2026-11-24", "I have the plat of 1911 with the alley on it.");
}
