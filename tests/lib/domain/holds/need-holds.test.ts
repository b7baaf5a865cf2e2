import { describe, expect, test } from "vitest";
import { dueThings } from "#lib/domain/desk/due.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import { LETTER_KINDS } from "#lib/domain/facts/notice.ts";
import type { TestDay } from "#lib/domain/facts/test-day.ts";
import { composePacket } from "#lib/domain/packet/compose.ts";
import { composeLetter } from "#lib/domain/paper/compose.ts";
import { recipientsOf } from "#lib/domain/paper/recipients.ts";
import { reportOn } from "#lib/domain/report/report-on.ts";
import {
  aFile,
  aHouseholdCall,
  aNotice,
  anEvent,
  anOffice,
  aParty,
  aProperty,
  aRole,
  aTestDay,
  aTestStop,
  aTieIn,
  aWaiver,
} from "#tests/support/file.ts";

const TODAY = "2026-11-25";
const NEED = "Home dialysis, mornings";

const FACTS = {
  properties: [
    aProperty("12"),
    aProperty("14"),
    aProperty("next", { stake: "neighbour" as const }),
  ],
  parties: [
    aParty("bea", { name: "Beatrix Holloway", needs: NEED }),
    aParty("jo"),
    aParty("ned", { needs: "Oxygen" }),
  ],
  roles: [
    aRole("bea", "12", { role: "occupant" }),
    aRole("jo", "14"),
    aRole("ned", "next", { role: "occupant" }),
  ],
  tieIns: [
    aTieIn("T1", { station: 2_000, propertyId: "12" }),
    aTieIn("T2", { station: 5_000, propertyId: "14" }),
  ],
};

function aDay(on: string, ...places: string[]): TestDay {
  const stops = places.map((propertyId) => aTestStop(propertyId, { tieInIds: ["T1"] }));
  return aTestDay(stops, { id: on, on });
}

function line(facts: Partial<LineFile> = {}): LineFile {
  const { line: _line, ...rest } = aFile({ ...FACTS, ...facts });
  return { ...rest, line: aFile().line };
}

function needHolds(facts: Partial<LineFile> = {}) {
  return reportOn(line(facts), TODAY).holds.filter(({ cause }) => cause === "household-need");
}

const CALL = { partyId: "bea", propertyId: "12", needs: NEED } as const;
const visit = (on: string, rest = {}) =>
  aHouseholdCall(`visit ${on}`, { ...CALL, purpose: "test-visit", forDay: on, ...rest });
const pause = (on: string, rest = {}) =>
  aHouseholdCall(`pause ${on}`, { ...CALL, purpose: "drain-pause", forDay: on, ...rest });

describe("a household that cannot be without drains", () => {
  test("stops a pause and a test visit from the start, if its water comes down this pipe", () => {
    expect(needHolds()).toMatchObject([
      {
        key: "household-need:bea:12",
        subjectLabel: "Beatrix Holloway",
        stops: ["pause", "test-visit"],
        stretch: null,
      },
    ]);
  });

  test("stops until a call about that very thing and day ended in agreement", () => {
    const events = [anEvent("e", { event: "drains-paused", on: "2026-12-03" })];
    const testDays = [aDay("2026-12-02", "12")];
    const stopsWith = (...householdCalls: ReturnType<typeof visit>[]) =>
      needHolds({ events, testDays, householdCalls })[0]?.stops ?? [];
    expect(stopsWith()).toEqual(["pause", "test-visit"]);
    expect(stopsWith(visit("2026-12-02"))).toEqual(["pause"]);
    expect(stopsWith(visit("2026-12-02"), pause("2026-12-03"))).toEqual([]);
    expect(stopsWith(visit("2026-12-01"), pause("2026-12-02"))).toEqual(["pause", "test-visit"]);
    const no = [visit("2026-12-02", { outcome: "not-reached" }), pause("2026-12-03")];
    expect(stopsWith(...no)).toEqual(["test-visit"]);
    const takenBack = pause("2026-12-03", { id: "later", outcome: "not-agreed" });
    expect(stopsWith(visit("2026-12-02"), pause("2026-12-03"), takenBack)).toEqual(["pause"]);
  });

  test("wants another call when the need is another one, and for another day", () => {
    const events = [
      anEvent("e", { event: "drains-paused", on: "2026-12-03" }),
      anEvent("f", { event: "drains-paused", on: "2026-12-10" }),
    ];
    const old = pause("2026-12-03", { needs: "Baby" });
    const stops = (...householdCalls: ReturnType<typeof visit>[]) =>
      needHolds({ events, householdCalls })[0]?.stops;
    expect(stops(old)).toContain("pause");
    expect(stops(pause("2026-12-03"))).toContain("pause");
    expect(stops(pause("2026-12-03"), pause("2026-12-10"))).not.toContain("pause");
  });

  test("is not asked about days that are over, nor where its water does not come down this pipe", () => {
    const past = [anEvent("e", { event: "drains-paused", on: "2026-11-20" })];
    const householdCalls = [pause("2026-11-28"), visit("2026-11-28")];
    expect(needHolds({ events: past, householdCalls })).toEqual([]);
    expect(needHolds().map(({ subjectId }) => subjectId)).not.toContain("ned:next");
  });

  test("is waived by nobody", () => {
    expect(needHolds({ waivers: [aWaiver("household-need:bea:12")] })[0]?.waiver).toBeNull();
  });

  test("is on the desk under who is on the line", () => {
    const file = line();
    const [thing] = dueThings(file, reportOn(file, TODAY)).filter(
      ({ question }) => question === "who",
    );
    expect(thing).toMatchObject({
      kind: "blocked",
      sentence: "Beatrix Holloway (call first) stops a drain shutdown and a test visit",
    });
  });
});

test("a need is in no letter and in no packet, and neither is the hold", () => {
  const file = line({
    events: [anEvent("e", { event: "drains-paused", on: "2026-12-03", note: "8 am to noon" })],
    testDays: [aDay("2026-12-02", "12")],
    householdCalls: [pause("2026-12-03", { words: "SECRET agreement" })],
  });
  const report = reportOn(file, TODAY);
  const office = anOffice();
  const papers = LETTER_KINDS.flatMap((kind) =>
    recipientsOf(file, report, kind).map((recipient) =>
      JSON.stringify(
        composeLetter({ file, report, office, notice: aNotice("n", { kind, ...recipient }) }),
      ),
    ),
  );
  const packet = JSON.stringify(composePacket({ file, report, office }));
  expect(papers.length).toBeGreaterThan(5);
  for (const paper of [...papers, packet]) {
    expect(paper).not.toContain("dialysis");
    expect(paper).not.toContain("SECRET");
    expect(paper).not.toMatch(/call first|Call Beatrix/i);
  }
});
