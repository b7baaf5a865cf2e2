import { describe, expect, test } from "vitest";
import { answersOn } from "#lib/domain/desk/answers.ts";
import { dueThings } from "#lib/domain/desk/due.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import type { RollCallWord } from "#lib/domain/facts/roll-call.ts";
import { reportOn } from "#lib/domain/report/report-on.ts";
import { rollCallsOf } from "#lib/domain/rollcall/roll-call.ts";
import { rollCallSentence } from "#lib/domain/rollcall/sentence.ts";
import {
  aFile,
  aHouseholdCall,
  anEntry,
  anEvent,
  anOffice,
  aParty,
  aProperty,
  aRecord,
  aRole,
  aRollCallWord,
  aScopeItem,
  aTieIn,
  aUnit,
} from "#tests/support/file.ts";

const TODAY = "2026-12-01";
const PAUSE = anEvent("pause", {
  event: "drains-paused",
  on: "2026-12-02",
  at: "08:00",
  until: "12:00",
});
const DUG = aScopeItem("dig", {
  kind: "dig-and-replace",
  place: "stretch",
  from: 4_000,
  to: 6_000,
});

/** 12 joins below the work, 14 and 16 (two units) above; a neighbor may be on the line. */
const FACTS = {
  properties: [
    aProperty("12"),
    aProperty("14"),
    aProperty("16"),
    aProperty("maybe", { stake: "candidate" as const }),
    aProperty("far", { stake: "neighbour" as const }),
  ],
  units: [aUnit("16a", "16", { name: "Unit A" }), aUnit("16b", "16", { name: "Unit B" })],
  parties: [aParty("own"), aParty("ada"), aParty("ben")],
  roles: [
    aRole("own", "14"),
    aRole("own", "16", { id: "own-16" }),
    aRole("ada", "16", { role: "occupant" as const, unitId: "16a" }),
    aRole("ben", "12", { role: "occupant" as const }),
  ],
  tieIns: [
    aTieIn("T1", { station: 2_000, propertyId: "12" }),
    aTieIn("T2", { station: 5_000, propertyId: "14" }),
    aTieIn("T3", { station: 8_000, propertyId: "16" }),
  ],
  records: [aRecord("card")],
  entries: [],
  scope: [DUG],
  events: [PAUSE],
};

function aLine(facts: Partial<LineFile> = {}): LineFile {
  return { ...aFile(), ...FACTS, ...facts };
}

function callsOn(file: LineFile, today = TODAY) {
  return rollCallsOf(file, settled(file, today));
}

/** The report with every tie-in settled, as after the work of comparing. */
function settled(file: LineFile, today = TODAY) {
  const report = reportOn(file, today);
  return { ...report, tieIns: report.tieIns.map((each) => ({ ...each, decided: true })) };
}

const doorsOf = (file: LineFile, today = TODAY) =>
  callsOn(file, today)[0]?.doors.map(({ propertyId, unitId, state }) =>
    [propertyId, unitId, state].filter((part) => part !== null).join(" "),
  );

const at = (propertyId: string, more: Partial<RollCallWord> = {}) =>
  aRollCallWord(`${propertyId}${more.id ?? ""}`, { propertyId, ...more });

describe("who must stop", () => {
  test("everybody whose flow passes the work, unit by unit, and whoever may; not who joins below", () => {
    expect(doorsOf(aLine())).toEqual([
      "14 not-asked",
      "16 16a not-asked",
      "16 16b not-asked",
      "maybe not-asked",
    ]);
    const [call] = callsOn(aLine());
    expect(call?.mustStop.below).toEqual(["12"]);
    expect(call?.doors.map(({ passes }) => passes)).toEqual([
      "surely",
      "surely",
      "surely",
      "perhaps",
    ]);
  });

  test("whoever joins below stops too while that is not certain", () => {
    const unsure = aLine();
    expect(rollCallsOf(unsure, reportOn(unsure, TODAY))[0]?.mustStop.below).toEqual([]);
    const unmeasured = aLine({
      tieIns: [aTieIn("T1", { station: null, propertyId: "12" }), ...FACTS.tieIns.slice(1)],
    });
    expect(callsOn(unmeasured)[0]?.mustStop.below).toEqual([]);
    const second = aLine({
      entries: [anEntry("second", { recordId: "card", propertyId: "12", distance: 9_000 })],
    });
    expect(callsOn(second)[0]?.mustStop.below).toEqual([]);
  });

  test("everybody stops while some of the work has no place, or none is priced", () => {
    const nowhere = aLine({
      scope: [
        DUG,
        aScopeItem("more", { kind: "dig-and-replace", place: "general", from: null, to: null }),
      ],
    });
    expect(callsOn(nowhere)[0]?.mustStop).toMatchObject({ below: [], lowest: null });
    expect(callsOn(aLine({ scope: [] }))[0]?.mustStop.below).toEqual([]);
  });
});

describe("how a door stands", () => {
  test("the latest word counts; not reached, other hours and help stay open", () => {
    const file = aLine({
      rollCall: [
        at("14", { id: "1", answer: "not-reached" }),
        at("14", { id: "2", answer: "aware", spokeWith: "Ada" }),
        at("16", { unitId: "16a", answer: "needs-help", words: "A portable toilet" }),
        at("16", { id: "b", unitId: "16b", answer: "agreed", until: "10:00" }),
        at("maybe", { answer: "waived", words: "Empty lot, no house" }),
      ],
    });
    expect(doorsOf(file)).toEqual([
      "14 reached",
      "16 16a needs-help",
      "16 16b other-hours",
      "maybe waived",
    ]);
    const [call] = callsOn(file);
    expect(call && rollCallSentence(call)).toBe("1 of 4 not reached, 1 needs help");
  });

  test("a word about another day, or for the whole of a house with units, reaches nobody", () => {
    const file = aLine({ rollCall: [at("14", { forDay: "2026-12-03" }), at("16")] });
    expect(doorsOf(file)).toEqual(doorsOf(aLine()));
  });

  test("where a need is on file, only a call about that day settles it; a waiver does not", () => {
    const parties = [aParty("own"), aParty("ada", { needs: "Home dialysis" }), aParty("ben")];
    const rollCall = [at("16", { unitId: "16a", answer: "waived", words: "No time" })];
    expect(doorsOf(aLine({ parties, rollCall }))).toContain("16 16a call-first");
    expect(doorsOf(aLine({ parties, rollCall }))).toContain("16 16b not-asked");
    const householdCalls = [
      aHouseholdCall("call", {
        partyId: "ada",
        propertyId: "16",
        purpose: "drain-pause",
        forDay: PAUSE.on,
      }),
    ];
    const told = [at("16", { unitId: "16a", answer: "agreed" })];
    expect(doorsOf(aLine({ parties, rollCall: told, householdCalls }))).toContain("16 16a reached");
  });

  test("people at a door are its occupants, or else whoever manages or owns it", () => {
    const people = callsOn(aLine())[0]?.doors.map(({ people }) => people.map(({ id }) => id));
    expect(people).toEqual([["own"], ["ada"], ["own"], []]);
  });
});

describe("when it is asked", () => {
  const all = FACTS.properties
    .slice(1, 4)
    .flatMap(({ id }) =>
      id === "16" ? [at("16", { unitId: "16a" }), at("16", { id: "b", unitId: "16b" })] : [at(id)],
    );

  test("the desk and the line say it until every door is settled, late on the day itself", () => {
    const said = (file: LineFile, today: string) =>
      dueThings(file, settled(file, today))
        .filter(({ where }) => where === "schedule/roll-call")
        .map(({ kind, sentence }) => `${kind}: ${sentence}`);
    expect(said(aLine(), TODAY)).toEqual(["due: Drain shutdown tomorrow: 4 of 4 not reached"]);
    expect(said(aLine(), PAUSE.on)).toEqual(["late: Drain shutdown today: 4 of 4 not reached"]);
    expect(said(aLine(), "2026-11-01")).toEqual([]);
    expect(said(aLine({ rollCall: all }), TODAY)).toEqual([]);
    const schedule = answersOn(aLine(), settled(aLine()), anOffice()).find(
      ({ question }) => question === "schedule",
    );
    expect(schedule).toMatchObject({
      closes: "Drain shutdown tomorrow: 4 of 4 not reached",
      where: "schedule/roll-call",
    });
  });

  test("once the pause is over the same doors are told that drains are on again", () => {
    const after = callsOn(aLine({ rollCall: all }), "2026-12-03");
    expect(after).toMatchObject([{ matter: "drains-on", pressing: true }]);
    expect(after[0] && rollCallSentence(after[0])).toBe("4 of 4 not told");
    const [word] = all;
    const back = aLine({
      rollCall: [...all, { ...(word ?? at("14")), id: "back", matter: "drains-on" as const }],
    });
    expect(callsOn(back, "2026-12-03")[0]?.doors[0]?.state).toBe("reached");
  });

  test("on the day of the pause both can be called, and the second presses once it is begun", () => {
    expect(
      callsOn(aLine({ rollCall: all }), PAUSE.on).map(({ matter, pressing }) => [matter, pressing]),
    ).toEqual([
      ["drains-off", true],
      ["drains-on", false],
    ]);
  });

  test("a pause that is over and was never called asks nobody", () => {
    expect(callsOn(aLine(), "2026-12-03")).toEqual([]);
    const days = anEvent("pause", {
      event: "drains-paused",
      on: "2026-12-02",
      lastOn: "2026-12-04",
    });
    expect(callsOn(aLine({ events: [days] }), "2026-12-03")).toMatchObject([
      { matter: "drains-off" },
    ]);
  });
});
