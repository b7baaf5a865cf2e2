import { describe, expect, test } from "vitest";
import { digCard, marksGoodUntil, nextDigDay } from "#lib/domain/crew/dig-card.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import { reportOn } from "#lib/domain/report/report-on.ts";
import {
  aClockRule,
  aFile,
  aHouseholdCall,
  aLocateTicket,
  anAuthority,
  anEvent,
  aParty,
  aPoint,
  aProperty,
  aRole,
  aRollCallWord,
  aRun,
  aScopeItem,
  aTieIn,
  aUtilityResponse,
} from "#tests/support/file.ts";

const TODAY = "2026-12-01";
const DAY = "2026-12-02";
const PAUSE = anEvent("pause", { event: "drains-paused", on: DAY, at: "08:00", until: "12:00" });

const FACTS = {
  properties: [aProperty("12"), aProperty("14")],
  parties: [aParty("bea", { name: "Beatrix Holloway", needs: "Home dialysis" }), aParty("jo")],
  roles: [aRole("bea", "14", { role: "occupant" as const }), aRole("jo", "12")],
  tieIns: [
    aTieIn("T1", { station: 2_000, propertyId: "12" }),
    aTieIn("T2", { station: 8_000, propertyId: "14" }),
  ],
  points: [aPoint("deep", { kind: "cleanout", station: 5_000, depth: 800 })],
  scope: [aScopeItem("dig", { kind: "spot-repair", place: "stretch", from: 4_000, to: 5_000 })],
  locateTickets: [aLocateTicket("ticket", { calledOn: "2026-11-20", workBeginsOn: DAY })],
  utilityResponses: [
    aUtilityResponse("gas", { goodUntil: "2026-12-10" }),
    aUtilityResponse("water", { utility: "City Water", goodUntil: "2026-12-10" }),
  ],
  events: [PAUSE],
};

function cardOf(facts: Partial<LineFile> = {}, on = DAY) {
  const file = { ...aFile(), ...FACTS, ...facts };
  return digCard(file, reportOn(file, TODAY), on);
}

describe("what is against digging comes first", () => {
  test("a utility that has not responded, marks that end before the day, no response, no ticket", () => {
    const awaited = aUtilityResponse("power", { utility: "Light & Power", answer: "awaited" });
    expect(cardOf({ utilityResponses: [awaited] }).stops).toContain(
      "Light & Power has not responded.",
    );
    const old = aUtilityResponse("gas", { goodUntil: TODAY });
    expect(cardOf({ utilityResponses: [old] }).stops).toContain(
      "Harbor Gas marks expired December 1, 2026.",
    );
    expect(cardOf({ utilityResponses: [] }).stops).toContain(
      "No utility’s response to the locate ticket is on file: check each one before digging.",
    );
    expect(cardOf({ utilityResponses: [], locateTickets: [] }).stops).toContain(
      "No locate ticket is on file: call 811 first.",
    );
    expect(cardOf().stops.join(" ")).not.toMatch(/Gas|Water|locate ticket/);
    // Where a rule tells from when it lets dig, nobody is told twice that it was not called in.
    const clockRules = [aClockRule("call", { event: "locate-called", meaning: "not-before" })];
    const uncalled = cardOf({ authority: anAuthority({ clockRules }), locateTickets: [] });
    expect(uncalled.stops[0]).toMatch(
      /^No locate ticket is on file: call 811 first\. If called in today, its window opens .*\d\.$/,
    );
    expect(uncalled.stops.join(" ").match(/locate/gi)).toHaveLength(1);
  });

  test("marks of which nobody said until when they are good, and no rule does", () => {
    const marked = aUtilityResponse("gas", { answer: "marked", goodUntil: null });
    const said = "Harbor Gas marked, but until when its marks are good is not on file.";
    expect(cardOf({ utilityResponses: [marked] }).stops).toContain(said);
    const good = { ...marked, goodUntil: DAY };
    expect(cardOf({ utilityResponses: [good] }).stops).not.toContain(said);
    const clear = { ...marked, answer: "clear" as const };
    expect(cardOf({ utilityResponses: [clear] }).stops).not.toContain(said);
  });

  test("doors that are not reached, and a day without a pause while live branches drain to the work", () => {
    expect(cardOf().stops).toContain(
      "Drain shutdown tomorrow: 1 of 2 not reached, 1 household to call first.",
    );
    const told = {
      rollCall: [
        aRollCallWord("a", { propertyId: "14" }),
        aRollCallWord("b", { propertyId: "12" }),
      ],
      householdCalls: [
        aHouseholdCall("c", {
          partyId: "bea",
          propertyId: "14",
          purpose: "drain-pause",
          forDay: DAY,
        }),
      ],
    };
    expect(cardOf(told).stops.join(" ")).not.toContain("Drain shutdown");
    expect(cardOf({ events: [] }).stops).toContain(
      "No drain shutdown is entered for this day, and active branches drain to the work.",
    );
    expect(cardOf({ events: [], tieIns: [] }).stops.join(" ")).not.toContain("shutdown");
  });
});

describe("gas through the pipe", () => {
  test("is clear only where every run says that nothing crosses", () => {
    expect(cardOf().gas.state).toBe("cannot-tell");
    expect(cardOf({ runs: [aRun("run", { crossingSeen: "cannot-tell" })] }).gas.state).toBe(
      "cannot-tell",
    );
    expect(cardOf({ runs: [aRun("run", { crossingSeen: "yes" })] }).gas.state).toBe("seen");
    expect(cardOf({ runs: [aRun("run", { crossingSeen: "no" })] }).gas.state).toBe("clear");
  });
});

describe("what the crew keeps in mind", () => {
  test("the depth of the dig and what it asks for", () => {
    const { trench } = cardOf();
    expect(trench?.why).toContain("Deepest dig: 8.5 ft");
    expect(trench?.rules.map(({ key }) => key)).toContain("protection");
  });

  test("live branches at and above the work, not those that join below it", () => {
    expect(cardOf().branches.map(({ finding }) => finding.tieIn.id)).toEqual(["T2"]);
    const unplaced = { ...FACTS.scope[0], place: "general" as const, from: null, to: null };
    expect(
      cardOf({ scope: [aScopeItem("dig", { ...unplaced, kind: "dig-and-replace" })] }).branches,
    ).toHaveLength(2);
  });

  test("who needs what, with what was agreed for the very day", () => {
    expect(cardOf().needs).toMatchObject([{ party: { id: "bea" }, agreed: null }]);
    const call = aHouseholdCall("c", {
      partyId: "bea",
      propertyId: "14",
      purpose: "drain-pause",
      forDay: DAY,
      words: "After 10 am",
    });
    expect(cardOf({ householdCalls: [call] }).needs).toMatchObject([{ agreed: "After 10 am" }]);
    expect(cardOf({ householdCalls: [call] }, "2026-12-03").needs).toMatchObject([
      { agreed: null },
    ]);
  });
});

test("the day is the next one that is planned, or today", () => {
  const file = { ...aFile(), ...FACTS };
  expect(nextDigDay(file, TODAY)).toBe(DAY);
  expect(nextDigDay({ ...file, events: [] }, TODAY)).toBe(DAY);
  expect(nextDigDay(file, "2026-12-05")).toBe("2026-12-05");
  const days = anEvent("e", { event: "work-begins", on: "2026-11-30", lastOn: "2026-12-04" });
  expect(nextDigDay({ ...file, events: [days] }, TODAY)).toBe(TODAY);
});

test("marksGoodUntil() gives no day to marks that are not there, and names no rule that is not there", () => {
  const say = (rest: Parameters<typeof aUtilityResponse>[1], isRuled = true) =>
    marksGoodUntil(aUtilityResponse("gas", { goodUntil: null, ...rest }), {
      isRuled,
      today: TODAY,
    });
  expect(say({ answer: "marked" })).toBe("by the rule above");
  expect(say({ answer: "clear" })).toBe("by the rule above");
  expect(say({ answer: "marked" }, false)).toBe("not known");
  expect(say({ answer: "wants-time" })).toBe("no marks yet");
  expect(say({ answer: "awaited" })).toBe("no marks yet");
  expect(say({ answer: "marked", goodUntil: "2026-12-10" })).toContain("December 10");
});
