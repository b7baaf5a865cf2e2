import { describe, expect, test } from "vitest";
import type { LineFile, Office } from "#lib/domain/facts/line-file.ts";
import { LETTER_KINDS, type LetterKind, type Notice } from "#lib/domain/facts/notice.ts";
import { composeLetter } from "#lib/domain/paper/compose.ts";
import { letterGaps } from "#lib/domain/paper/gaps.ts";
import { outdatedVisits } from "#lib/domain/paper/outdated-visits.ts";
import { recipientsOf } from "#lib/domain/paper/recipients.ts";
import { letterText } from "#lib/domain/paper/text.ts";
import { reportOn } from "#lib/domain/report/report-on.ts";
import { LANGUAGES } from "#lib/domain/say/language.ts";
import {
  aClockRule,
  aConsent,
  aCrossing,
  aDigArea,
  aFile,
  aLocateTicket,
  aNotice,
  anAnchor,
  anAuthority,
  anEntry,
  anEvent,
  anInspection,
  anObservation,
  anOffice,
  aPairing,
  aParty,
  aPermit,
  aPermitStep,
  aProperty,
  aRecord,
  aRole,
  aRun,
  aScopeItem,
  aSpillStep,
  aSplit,
  aTestDay,
  aTestStop,
  aTieIn,
  aUnit,
} from "#tests/support/file.ts";
import { aLedgerEntry } from "#tests/support/ledger.ts";
import { aBuiltPiece } from "#tests/support/plan.ts";

const TODAY = "2026-11-25";

/** 12 is settled at 20 ft, a duplex; T2 at 50 ft is nobody's; 14 may be on the line; 9 is crossed. */
function aStreet(rest: Omit<Partial<LineFile>, "line"> = {}, line = {}): LineFile {
  return aFile({
    line,
    properties: [
      aProperty("12"),
      aProperty("14", { stake: "candidate" }),
      aProperty("9", { stake: "crossed" }),
    ],
    units: [aUnit("a", "14", { name: "Unit A" }), aUnit("b", "14", { name: "Unit B" })],
    parties: [
      aParty("ottilie"),
      aParty("nils"),
      aParty("ana"),
      aParty("bea"),
      aParty("georgina"),
      aParty("city", { kind: "public-body" }),
    ],
    roles: [
      aRole("ottilie", "12"),
      aRole("nils", "14"),
      aRole("ana", "14", { role: "occupant", unitId: "a" }),
      aRole("bea", "14", { role: "occupant", unitId: "b" }),
      aRole("georgina", "9", { role: "crossed-lot-owner" }),
    ],
    records: [aRecord("card")],
    entries: [anEntry("House 12", { distance: 2_000, propertyId: "12" })],
    runs: [aRun("run")],
    anchors: [anAnchor("run")],
    tieIns: [aTieIn("T1"), aTieIn("T2", { kind: "unknown" })],
    observations: [
      anObservation("o1", { counter: 2_000, tieInId: "T1" }),
      anObservation("o2", { counter: 5_000, tieInId: "T2" }),
    ],
    pairings: [aPairing("House 12", "T1")],
    ...rest,
  });
}

type Reader = readonly [string, string | null];

function inputFor(
  file: LineFile,
  [partyId, propertyId]: Reader,
  { office = anOffice(), ...notice }: Partial<Notice> & { kind: LetterKind; office?: Office },
) {
  return {
    file,
    report: reportOn(file, TODAY),
    office,
    notice: aNotice("notice", { partyId, propertyId, replyBy: "2026-12-09", ...notice }),
  };
}

function textOf(...asked: Parameters<typeof inputFor>): string {
  return letterText(composeLetter(inputFor(...asked))).replaceAll(/\s+/g, " ");
}

/** What is missing, where an answer is asked for before any day that is told of. */
function gapsOf(file: LineFile, reader: Reader, about: Parameters<typeof inputFor>[2]): string {
  return letterGaps(inputFor(file, reader, { replyBy: "2026-12-01", ...about })).join("\n");
}

describe("test visit", () => {
  const stops = [
    aTestStop("12", { tieInIds: ["T2"], startsAt: "09:00" }),
    aTestStop("14", {
      unitId: "a",
      tieInIds: ["T2"],
      startsAt: "09:30",
      rinseMinutes: 10,
      fixture: "",
      drains: [
        { floor: "basement", drain: "floor-drain" },
        { floor: "first-floor", drain: "toilet" },
      ],
    }),
    aTestStop("14", { unitId: "b", tieInIds: ["T2"], startsAt: "10:00", rinseMinutes: 10 }),
  ];
  const planned = aStreet({ testDays: [aTestDay(stops, { controlPropertyId: "12" })] });

  test("reads day, hour and slot of its own address from the plan", () => {
    const text = textOf(planned, ["ana", "14"], { kind: "test-visit" });
    expect(text).toContain("Thursday, December 3, 2026");
    expect(text).toContain("9:30 AM to 9:55 AM");
    expect(text).toContain("basement floor drain, first floor toilet");
    expect(text).not.toContain("10:00 AM to 10:25 AM");
    expect(text).not.toContain("not yet set");
  });

  test("an owner reads the slot of each unit, and everybody the time without water", () => {
    const text = textOf(planned, ["nils", "14"], { kind: "test-visit" });
    expect(text).toContain("9:30 AM to 9:55 AM (Unit A)");
    expect(text).toContain("10:00 AM to 10:25 AM (Unit B)");
    expect(text).toContain("9:00 AM to 10:15 AM");
    expect(textOf(planned, ["nils", "14"], { kind: "test-visit", language: "es" })).toContain(
      "de 9:30 a. m. a 9:55 a. m. (Unit A)",
    );
  });

  test("the control address is told that it is only compared with", () => {
    const text = textOf(planned, ["ottilie", "12"], { kind: "test-visit" });
    expect(text).toContain("Where the drains of 12 Fennel Row go is known");
    expect(text).toContain("9:00 AM to 9:15 AM");
  });

  test("a letter whose slot was moved since is found, and one that still holds is not", () => {
    const notice = aNotice("sent", { kind: "test-visit", partyId: "ana", propertyId: "14" });
    const input = inputFor(planned, ["ana", "14"], { kind: "test-visit" });
    const frozen = JSON.stringify(composeLetter({ ...input, notice }));
    const sent = { ...notice, state: "sent" as const, frozen };
    const office = anOffice();
    const outdated = (file: LineFile) =>
      outdatedVisits({ file, report: reportOn(file, TODAY), office }).map(({ id }) => id);
    expect(outdated({ ...planned, notices: [sent] })).toEqual([]);
    const later = stops.map((stop) =>
      stop.unitId === "a" ? { ...stop, startsAt: "10:30" } : stop,
    );
    const moved = { ...planned, testDays: [aTestDay(later, { controlPropertyId: "12" })] };
    expect(outdated({ ...moved, notices: [sent] })).toEqual(["sent"]);
    const renewed = inputFor(moved, ["ana", "14"], { kind: "test-visit" });
    const second = {
      ...sent,
      id: "second",
      createdOn: "2026-11-26",
      frozen: JSON.stringify(composeLetter({ ...renewed, notice })),
    };
    expect(outdated({ ...moved, notices: [sent, second] })).toEqual([]);
    // What a letter that can't be read told is unknown: it is told again.
    for (const odd of [" ", "{", "null", "7", '{"blocks":7}'])
      expect(outdated({ ...planned, notices: [{ ...sent, frozen: odd }] }), odd).toEqual(["sent"]);
  });

  test("who is only asked to keep water off is told that nobody comes in", () => {
    const refused = {
      ...planned,
      consents: [
        aConsent("no", { kind: "enter", partyId: "nils", propertyId: "14", state: "refused" }),
      ],
    };
    const text = textOf(refused, ["ana", "14"], { kind: "test-visit" });
    expect(text).toContain("No one will enter 14 Fennel Row");
    const letter = composeLetter(inputFor(refused, ["ana", "14"], { kind: "test-visit" }));
    expect(letter.title).toBe("Please use no water during a drain test");
    expect(letter.asks).toEqual([]);
    const visited = composeLetter(inputFor(planned, ["ana", "14"], { kind: "test-visit" }));
    expect(visited.asks).toEqual(["enter"]);
    expect(text).not.toContain("open the door");
    expect(text).toContain("9:00 AM to 9:15 AM");
  });

  test("says where smoke is used only where no dye day is planned", () => {
    expect(textOf(planned, ["ana", "14"], { kind: "test-visit" })).not.toContain("smoke");
    expect(textOf(aStreet(), ["ana", "14"], { kind: "test-visit" })).toContain("smoke");
  });

  test("goes to every address that is visited or kept from water, the refused one too", () => {
    const found = recipientsOf(planned, reportOn(planned, TODAY), "test-visit");
    expect(found.map(({ partyId }) => partyId)).toEqual(["ottilie", "nils", "ana", "bea"]);
  });

  test("lacks a slot while no day is planned for the address", () => {
    expect(gapsOf(planned, ["ana", "14"], { kind: "test-visit" })).toBe("");
    expect(gapsOf(planned, ["georgina", "9"], { kind: "test-visit" })).toContain(
      "No test day to come has a stop at 9 Fennel Row",
    );
  });
});

describe("hours are a field of their own", () => {
  const events = [
    anEvent("w", {
      event: "work-begins",
      on: "2026-12-07",
      lastOn: "2026-12-09",
      at: "08:00",
      until: "16:30",
      note: "SECRET",
    }),
    anEvent("p", {
      event: "drains-paused",
      on: "2026-12-08",
      at: "09:00",
      until: "15:30",
      note: "SECRET",
    }),
    anEvent("o", { event: "authority-order", reference: "case 26-118", note: "SECRET" }),
  ];
  const file = aStreet({ events });

  test("no letter prints the office’s note of an event", () => {
    for (const kind of LETTER_KINDS)
      for (const language of LANGUAGES)
        expect(textOf(file, ["ottilie", "12"], { kind, language })).not.toContain("SECRET");
  });

  test("a pause prints its hours, and lacks them while one end is open", () => {
    expect(textOf(file, ["ottilie", "12"], { kind: "drain-pause" })).toContain(
      "9:00 AM to 3:30 PM",
    );
    expect(gapsOf(file, ["ottilie", "12"], { kind: "drain-pause" })).toBe("");
    const open = { ...file, events: events.map((each) => ({ ...each, until: "" })) };
    expect(gapsOf(open, ["ottilie", "12"], { kind: "drain-pause" })).toContain(
      "The hours of the shutdown are not set",
    );
  });

  test("a start prints first and last day and its hours, and lacks them otherwise", () => {
    const text = textOf(file, ["ottilie", "12"], { kind: "work-start" });
    expect(text).toContain("Monday, December 7, 2026");
    expect(text).toContain("until Wednesday, December 9, 2026");
    expect(text).toContain("8:00 AM to 4:30 PM");
    expect(gapsOf(aStreet(), ["ottilie", "12"], { kind: "work-start" })).toContain(
      "The first day of work is not set",
    );
    const first = aStreet({ events: [anEvent("w", { event: "work-begins" })] });
    expect(gapsOf(first, ["ottilie", "12"], { kind: "work-start" })).toContain(
      "How long the work takes is not set",
    );
  });

  test("a start names the permits and tickets in force and no others, and lacks what is missing", () => {
    const asked = { kind: "work-start" } as const;
    const permits = [aPermit("p", { number: "SS-1" }), aPermit("q", { number: "SS-2" })];
    const locateTickets = [aLocateTicket("old", { number: "26-1", calledOn: "2026-10-01" })];
    const review = [aPermitStep("s", "p", { state: "in-review" })];
    const open = aStreet({ events, permits, permitSteps: review, locateTickets });
    const text = textOf(open, ["ottilie", "12"], asked);
    expect(text).not.toMatch(/SS-1|SS-2/);
    expect(text).toContain("none in force yet");
    expect(gapsOf(open, ["ottilie", "12"], asked)).toContain(
      "Work cannot begin on December 7, 2026: no side sewer permit is in force: side sewer permit SS-1 is in review, side sewer permit SS-2 is being drafted.",
    );
    const issued = [aPermitStep("s", "p", { state: "issued" })];
    const ready = aStreet({ events, permits, permitSteps: issued, locateTickets });
    expect(textOf(ready, ["ottilie", "12"], asked)).toMatch(/No\. SS-1(?! and)/);
    expect(gapsOf(ready, ["ottilie", "12"], asked)).toBe("");
    const done = [
      aPermitStep("s", "p", { state: "final" }),
      aPermitStep("t", "q", { state: "final" }),
    ];
    expect(
      gapsOf(aStreet({ events, permits, permitSteps: done }), ["ottilie", "12"], asked),
    ).toContain("Nothing left to start");
  });

  test("a start names no ticket that ran out or was called in anew, and minds the locate window", () => {
    const asked = { kind: "work-start" } as const;
    const authority = anAuthority({
      clockRules: [
        aClockRule("opens", {
          title: "Locate window opens",
          event: "locate-called",
          meaning: "not-before",
          count: 14,
        }),
        aClockRule("ends", {
          title: "Ticket runs out",
          event: "locate-called",
          meaning: "not-after",
          count: 30,
        }),
      ],
    });
    const permits = [aPermit("p", { number: "SS-1" })];
    const permitSteps = [aPermitStep("s", "p", { state: "issued" })];
    const facts = { authority, events, permits, permitSteps };
    const old = aLocateTicket("old", { number: "26-1", calledOn: "2026-10-01" });
    const ranOut = aStreet({ ...facts, locateTickets: [old] });
    expect(textOf(ranOut, ["ottilie", "12"], asked)).not.toContain("26-1");
    expect(gapsOf(ranOut, ["ottilie", "12"], asked)).toContain("the locate ticket expired");
    const fresh = aLocateTicket("new", { number: "26-2", calledOn: "2026-11-24" });
    const again = aStreet({ ...facts, locateTickets: [old, fresh] });
    const text = textOf(again, ["ottilie", "12"], asked);
    expect(text).toContain("No. 26-2");
    expect(text).not.toContain("26-1");
    expect(gapsOf(again, ["ottilie", "12"], asked)).toContain(
      "Work cannot begin on December 7, 2026, but not before December 8, 2026, because the locate window opens then.",
    );
    const late = { ...fresh, calledOn: "2026-11-04" };
    expect(
      gapsOf(aStreet({ ...facts, locateTickets: [late] }), ["ottilie", "12"], asked),
    ).toContain("The start must be by December 4, 2026");
  });

  test("the last day of work is one fact, whichever event says it", () => {
    const ends = [
      anEvent("w", { event: "work-begins", on: "2026-12-07", at: "08:00", until: "16:30" }),
      anEvent("e", { event: "work-ends", on: "2026-12-11" }),
    ];
    const asked = { kind: "work-start" } as const;
    expect(textOf(aStreet({ events: ends }), ["ottilie", "12"], asked)).toContain(
      "until Friday, December 11, 2026",
    );
    expect(gapsOf(aStreet({ events: ends }), ["ottilie", "12"], asked)).not.toContain("How long");
  });

  test("an answer to the authority plans nothing for a day that is past", () => {
    const asked = { kind: "authority-response" } as const;
    const on = (day: string) =>
      aStreet({ events: [anEvent("w", { event: "work-begins", on: day })] });
    expect(textOf(on("2026-12-07"), ["city", null], asked)).toContain("is planned to begin on");
    expect(textOf(on("2026-11-02"), ["city", null], asked)).toContain(
      "Work was to begin on Monday, November 2, 2026.",
    );
  });

  test("an answer to the authority counts no connection that is not there", () => {
    const documented = { ...file, tieIns: file.tieIns.slice(0, 1) };
    const none = textOf(documented, ["city", null], { kind: "authority-response" });
    expect(none).not.toMatch(/\b0 of them/);
    expect(none).toContain("none of them is undocumented");
    const asked = { kind: "authority-response", language: "es" } as const;
    expect(textOf(documented, ["city", null], asked)).toContain("ninguna sin documentar");
  });

  test("an answer to the authority prints the number of its order", () => {
    expect(textOf(file, ["city", null], { kind: "authority-response" })).toContain(
      "Your order of November 20, 2026: case 26-118",
    );
  });
});

describe("the phone", () => {
  const onCall = anOffice();
  const none = anOffice({ onCallPhone: "", onCallHours: null });

  test("“24 hours” stands only beside a number that is answered so", () => {
    const text = textOf(aStreet(), ["ottilie", "12"], { kind: "work-start", office: onCall });
    expect(text).toContain("Phone (24 hours) (360) 555-0199");
    expect(text).toContain("(360) 555-0101, Monday to Friday, 8:00 AM to 5:00 PM");
    for (const language of LANGUAGES)
      for (const kind of LETTER_KINDS)
        expect(textOf(aStreet(), ["ottilie", "12"], { kind, language, office: none })).not.toMatch(
          /24 hours|las 24 horas/,
        );
  });

  test("hours that nobody entered are not printed", () => {
    const office = anOffice({ hours: null, onCallPhone: "", onCallHours: null });
    const text = textOf(aStreet(), ["ottilie", "12"], { kind: "drain-pause", office });
    expect(text).toContain("Phone (360) 555-0101");
    expect(text).not.toContain("Monday to Friday");
  });

  test("is shown as an American office writes it, however it was typed", () => {
    const office = anOffice({ phone: "3605550101" });
    expect(textOf(aStreet(), ["ottilie", "12"], { kind: "finding", office })).toContain(
      "(360) 555-0101",
    );
  });
});

describe("consent to enter", () => {
  const scope = [aScopeItem("dig", { from: 1_000, to: 3_000 })];
  const crossings = [aCrossing("x", { propertyId: "9", from: 500, to: 4_000 })];
  const area = aDigArea("area", "9", {
    place: "back yard, along the fence",
    length: 2_000,
    width: 400,
    firstOn: "2026-12-07",
    lastOn: "2026-12-09",
    restoration: "seed",
    notRestored: "the rose bed",
    plantings: "replanted",
    plants: "the apple tree",
    contact: "Marek Sandoval",
    contactPhone: "3605550102",
  });
  const ready = aStreet({ scope, crossings, digAreas: [area] });

  test("says where, how large, when, who puts what back and whom to call, as it was entered", () => {
    const text = textOf(ready, ["georgina", "9"], { kind: "entry-consent" });
    expect(text).toContain("about 20.0 by 4.0 ft: back yard, along the fence");
    expect(text).toContain("Monday, December 7, 2026 to Wednesday, December 9, 2026");
    expect(text).toContain("backfill, compact and reseed");
    expect(text).toContain("New grass, plants and patches may not match");
    expect(text).toContain("We do not replace: the rose bed");
    expect(text).toContain("We take out and replant: the apple tree.");
    expect(text).toContain("Marek Sandoval, (360) 555-0102");
    expect(gapsOf(ready, ["georgina", "9"], { kind: "entry-consent" })).toBe("");
  });

  test("sets in quotes what the office typed, where the letter is in Spanish", () => {
    const text = textOf(ready, ["georgina", "9"], { kind: "entry-consent", language: "es" });
    expect(text).toContain("pies: «back yard, along the fence».");
    expect(text).toContain("Sacamos y volvemos a plantar: «the apple tree».");
    expect(text).toContain("No reponemos: «the rose bed».");
  });

  test("promises nothing that was not entered, and lacks it", () => {
    const bare = aStreet({ scope, crossings });
    const text = textOf(bare, ["georgina", "9"], { kind: "entry-consent" });
    expect(text).not.toMatch(/backfill|may not match|Photographs/);
    const gaps = gapsOf(bare, ["georgina", "9"], { kind: "entry-consent" });
    const plants = aStreet({ scope, crossings, digAreas: [{ ...area, plantings: "not-set" }] });
    expect(gapsOf(plants, ["georgina", "9"], { kind: "entry-consent" })).toBe(
      "Of the area at 9 Fennel Row is not entered: what happens to trees and plantings.",
    );
    const unnamed = aStreet({ scope, crossings, digAreas: [{ ...area, plants: " " }] });
    expect(gapsOf(unnamed, ["georgina", "9"], { kind: "entry-consent" })).toMatch(
      /which trees and plantings are taken out/,
    );
    const none = aStreet({ scope, crossings, digAreas: [{ ...area, plantings: "none" as const }] });
    expect(textOf(none, ["georgina", "9"], { kind: "entry-consent", language: "es" })).toContain(
      "En el área no hay árboles ni plantas.",
    );
    expect(gaps).toContain("The area to enter or dig at 9 Fennel Row is not entered");
    const half = aStreet({ scope, crossings, digAreas: [aDigArea("area", "9")] });
    const lacking = gapsOf(half, ["georgina", "9"], { kind: "entry-consent" });
    expect(lacking).toContain("how large it is");
    expect(lacking).toContain("first and last day");
    expect(lacking).toContain("who puts the surface back");
  });

  test("speaks of the drawing only where the drawing shows work on the lot", () => {
    expect(textOf(ready, ["georgina", "9"], { kind: "entry-consent" })).toContain(
      "Where the pipe crosses your lot",
    );
    const apart = aStreet({ digAreas: [{ ...area, propertyId: "14" }] });
    const letter = composeLetter(inputFor(apart, ["nils", "14"], { kind: "entry-consent" }));
    expect(letter.blocks.some(({ kind }) => kind === "strip")).toBe(false);
    expect(JSON.stringify(letter)).not.toContain("drawing");
  });

  test("speaks of liability insurance only as far as it is on file and in force", () => {
    const asked = { kind: "entry-consent" } as const;
    const reader: Reader = ["georgina", "9"];
    expect(textOf(ready, reader, asked)).toContain(
      "We carry liability insurance (Harbor Mutual 55-0102), valid through June 30, 2027.",
    );
    const none = anOffice({ insurance: "" });
    expect(textOf(ready, reader, { ...asked, office: none })).not.toContain("insurance");
    expect(gapsOf(ready, reader, { ...asked, office: none })).toContain(
      "Liability insurance: not on file",
    );
    const ends = anOffice({ insuranceExpiresOn: "2026-12-08" });
    expect(gapsOf(ready, reader, { ...asked, office: ends })).toContain(
      "expires on December 8, 2026, before the work ends on December 9, 2026",
    );
    const over = anOffice({ insuranceExpiresOn: "2026-11-24" });
    expect(textOf(ready, reader, { ...asked, office: over })).not.toContain("insurance");
    const unknown = anOffice({ insuranceExpiresOn: null });
    expect(textOf(ready, reader, { ...asked, office: unknown })).not.toContain("insurance");
  });

  test("goes to the owners of lots with an area entered, too", () => {
    const file = aStreet({ digAreas: [{ ...area, propertyId: "14" }] });
    const found = recipientsOf(file, reportOn(file, TODAY), "entry-consent");
    expect(found.map(({ partyId }) => partyId)).toContain("nils");
  });
});

describe("a spill", () => {
  const steps = [
    aSpillStep("k", {
      kind: "known",
      place: "the alley at 12",
      gallons: 150,
      reached: "a street drain",
    }),
    aSpillStep("c", { kind: "office-called", at: "06:20" }),
    aSpillStep("r", { kind: "reported", at: "07:00", place: "the county", number: "26-77" }),
  ];
  const file = aStreet({ spillSteps: steps });

  test("says only what happened, with its day and hour", () => {
    const text = textOf(file, ["ottilie", "12"], { kind: "spill" });
    expect(text).toContain("Sewage has spilled at or near the alley at 12");
    expect(text).toContain("was called on November 24, 2026, 6:20 AM");
    expect(text).toContain(
      "We reported this to the county on November 24, 2026, 7:00 AM (No. 26-77)",
    );
    expect(text).not.toMatch(/crew|stopped/i);
    expect(textOf(aStreet(), ["ottilie", "12"], { kind: "spill" })).not.toMatch(
      /called on|reported/,
    );
  });

  test("an authority gets the figures, a resident what to do", () => {
    const resident = textOf(file, ["ottilie", "12"], { kind: "spill" });
    const authority = textOf(file, ["city", null], { kind: "spill" });
    expect(resident).toContain("Keep away from it");
    expect(resident).not.toContain("150 gallons");
    expect(authority).toContain("150 gallons");
    expect(authority).toContain("a street drain");
    expect(authority).not.toContain("Throw out food");
    expect(authority).toContain("Report of a sewage spill");
  });

  test("lacks when and where it was first noticed", () => {
    expect(gapsOf(aStreet(), ["ottilie", "12"], { kind: "spill" })).toContain(
      "When and where the spill was first noticed is not entered",
    );
    expect(gapsOf(file, ["ottilie", "12"], { kind: "spill" })).toBe("");
    expect(gapsOf(file, ["city", null], { kind: "spill" })).toContain(
      "whether the flow was stopped is not entered",
    );
    const untold = aStreet({ spillSteps: steps.filter(({ kind }) => kind !== "reported") });
    expect(gapsOf(untold, ["city", null], { kind: "spill" })).toContain("who was told, and when");
    expect(textOf(untold, ["city", null], { kind: "spill" })).toContain(
      "It is not on file yet that any agency was told.",
    );
    expect(textOf(untold, ["ottilie", "12"], { kind: "spill" })).not.toContain("agency");
  });
});

describe("money letters", () => {
  const shares = [{ propertyId: "12", tieInId: null, amount: 100_000, recoverable: 0 }];
  const file = aStreet({ splits: [aSplit("split", { shares, total: 100_000 })] });
  const silent = anOffice({ payee: "", payMethods: [], payDays: null, depositPercent: null });

  test("a proposed split says how it would be paid, and lacks it where nobody said", () => {
    const text = textOf(file, ["ottilie", "12"], { kind: "proposed-split" });
    expect(text).toContain("due 30 days after");
    expect(text).toContain("No deposit is required");
    expect(text).toContain("Nothing is due because of this letter");
    expect(gapsOf(file, ["ottilie", "12"], { kind: "proposed-split", office: silent })).toContain(
      "How and when a share is paid is not entered",
    );
  });

  test("a demand says to whom, how, by when, and how to dispute it", () => {
    const text = textOf(file, ["ottilie", "12"], { kind: "share-demand" });
    expect(text).toContain("Pay to Bellwether Drain and Sewer, by check or bank transfer");
    expect(text).toContain(
      "If you dispute any of it, write to us by Wednesday, December 9, 2026: which amount, and why. No answer is not counted as agreement.",
    );
    expect(gapsOf(file, ["ottilie", "12"], { kind: "share-demand", office: silent })).toContain(
      "Payee and payment methods are not entered",
    );
  });
});

describe("close-out", () => {
  const shares = [{ propertyId: "12", tieInId: null, amount: 100_000, recoverable: 0 }];
  const base = {
    scope: [aScopeItem("dig", { from: 1_000, to: 3_000 })],
    splits: [aSplit("split", { shares, total: 100_000 })],
    permits: [aPermit("p", { number: "SS-1" })],
  };
  const at = (state: "approved-fees-due" | "final") => [aPermitStep("s", "p", { state })];
  const reader: Reader = ["ottilie", "12"];

  test("does not say that work is done whose permit is not final, and lacks that", () => {
    const open = aStreet({ ...base, permitSteps: at("approved-fees-due") });
    expect(textOf(open, reader, { kind: "close-out" })).not.toMatch(/is done/);
    expect(gapsOf(open, reader, { kind: "close-out" })).toContain("Permit SS-1 is not final");
    expect(gapsOf(aStreet(), reader, { kind: "close-out" })).toContain("No permit is final");
    expect(textOf(aStreet(), reader, { kind: "close-out" })).toContain(
      "as of today; no permit for work on it is on file",
    );
  });

  test("says whose the pipe is only by the rule or agreement on file", () => {
    const file = aStreet({ ...base, permitSteps: at("final") });
    expect(textOf(file, reader, { kind: "close-out" })).toContain(
      "WHO IS RESPONSIBLE FOR THE PIPE, UNDER THE RULE OR AGREEMENT ON FILE",
    );
  });

  test("says what came in by the money book, and lacks what is open", () => {
    const ledger = [
      aLedgerEntry(1, { partyId: "ottilie", propertyId: "12", amount: 90_000 }),
      aLedgerEntry(2, { partyId: "ottilie", propertyId: "12", kind: "payment", amount: 40_000 }),
    ];
    const file = aStreet({ ...base, permitSteps: at("final"), ledger });
    const text = textOf(file, reader, { kind: "close-out" });
    expect(text).toContain("$900.00");
    expect(text).toContain("$400.00 paid or credited; balance due: $500.00.");
    expect(text).not.toContain("$1,000.00");
    expect(gapsOf(file, reader, { kind: "close-out" })).toContain("$500.00 is still due");
  });

  test("states the warranty as entered, or that there is none", () => {
    const file = aStreet({ ...base, permitSteps: at("final") });
    expect(textOf(file, reader, { kind: "close-out" })).toContain(
      "There is no separate warranty on file",
    );
    const covered = aStreet(
      { ...base, permitSteps: at("final") },
      { warrantyMonths: 12, warrantyCovers: "the replaced pipe" },
    );
    expect(textOf(covered, reader, { kind: "close-out" })).toContain(
      "12 months from November 20, 2026, on: the replaced pipe",
    );
  });

  test("tells each piece as it was measured, with its feet and its pipe, in both languages", () => {
    const word = {
      id: "b",
      itemId: "dig",
      on: "2026-11-24",
      by: "Marek",
      words: "",
      uploadId: null,
    };
    const made = { ...base, permitSteps: at("final"), built: [word] };
    const file = aStreet({ ...made, builtPieces: [aBuiltPiece("m")] });
    const text = textOf(file, reader, { kind: "close-out" });
    expect(text).toContain("AS BUILT, MEASURED IN FEET FROM THE CITY’S MAIN");
    expect(text).toMatch(/Replaced[\s\S]*5\.0[\s\S]*15\.0 ft[\s\S]*10\.0 ft[\s\S]*6 in PVC/);
    expect(textOf(file, reader, { kind: "close-out", language: "es" })).toContain("Reemplazo");
    const unmeasured = aStreet({ ...made, builtPieces: [aBuiltPiece("m", { measuredBy: "" })] });
    expect(textOf(unmeasured, reader, { kind: "close-out" })).not.toContain("AS BUILT");
  });

  test("says what was built as it was said, and the plan only while nobody has said it", () => {
    const file = aStreet({ ...base, permitSteps: at("final") });
    expect(textOf(file, reader, { kind: "close-out" })).toContain("THE WORK AS PLANNED");
    expect(gapsOf(file, reader, { kind: "close-out" })).toContain("What was built is not on file");
    const built = [
      {
        id: "b",
        itemId: "dig",
        on: "2026-11-18",
        by: "Marek Sandoval",
        words: "2 ft longer than priced",
        uploadId: null,
      },
    ];
    const done = textOf({ ...file, built }, reader, { kind: "close-out" });
    expect(done).toContain(
      "dig, 10.0 to 30.0 ft from the city’s main, done on November 18, 2026: 2 ft longer than priced",
    );
    expect(done).not.toContain("AS PLANNED");
    expect(gapsOf({ ...file, built }, reader, { kind: "close-out" })).not.toContain("built");
  });

  test("names inspections with their results and the as-built drawing only where it went in", () => {
    const file = aStreet({
      ...base,
      permitSteps: [aPermitStep("b", "p", { state: "as-built-submitted" }), ...at("final")],
      inspections: [anInspection("i", "p", { title: "Pipe test", result: "passed" })],
    });
    const text = textOf(file, reader, { kind: "close-out" });
    expect(text).toContain("As-built drawing, given to the authority on November 20, 2026");
    expect(text).toContain("Pipe test, passed on");
  });
});
