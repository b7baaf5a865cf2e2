import { describe, expect, test } from "vitest";
import { clocksOf } from "#lib/domain/clocks/clocks.ts";
import { earliestStart } from "#lib/domain/clocks/earliest-start.ts";
import { tellingWords } from "#lib/domain/clocks/telling.ts";
import { dueThings } from "#lib/domain/desk/due.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import type { Delivery, Notice } from "#lib/domain/facts/notice.ts";
import { recipientsOf } from "#lib/domain/paper/recipients.ts";
import { reportOn } from "#lib/domain/report/report-on.ts";
import {
  aClockRule,
  aDelivery,
  aFile,
  aLocateTicket,
  aNotice,
  anAuthority,
  anEvent,
  aParty,
  aProperty,
  aReply,
  aRole,
  aTestDay,
  aTestStop,
  aUnit,
} from "#tests/support/file.ts";

const TODAY = "2026-11-25";
const PAUSE_ON = "2026-12-03";

const PAUSE = aClockRule("Tell occupants", {
  event: "drains-paused",
  count: 2,
  way: "before",
  roll: "none",
});
const NAMES = ["ann", "bo", "cy", "dee", "eli", "fay", "gil"];

/** Seven units on the line, an occupant in each, and a neighbor who is only crossed. */
const SEVEN = {
  properties: [
    ...NAMES.map((name) => aProperty(name)),
    aProperty("crossed", { stake: "crossed" as const }),
  ],
  units: NAMES.map((name) => aUnit(`${name}-u`, name)),
  parties: [...NAMES, "lot"].map((name) => aParty(name)),
  roles: [
    ...NAMES.map((name) => aRole(name, name, { role: "occupant" })),
    aRole("lot", "crossed", { role: "crossed-lot-owner" }),
  ],
  events: [anEvent("e", { event: "drains-paused", on: PAUSE_ON, note: "8 am to noon" })],
};

function line(facts: Partial<LineFile>, rule = PAUSE): LineFile {
  const { line: _line, ...rest } = aFile({ ...SEVEN, ...facts });
  const authority = anAuthority({ clockRules: [rule] });
  return { ...rest, authority, line: { ...aFile().line, authorityId: authority.id } };
}

function letter(name: string, overrides: Partial<Notice> = {}): Notice {
  return aNotice(`to-${name}`, {
    kind: "drain-pause",
    partyId: name,
    propertyId: name,
    state: "sent",
    ...overrides,
  });
}

/** Letters to so many of the seven, handed over on a day. */
function toldOf(names: readonly string[], sentOn: string, rest: Partial<Delivery> = {}) {
  return {
    notices: names.map((name) => letter(name)),
    deliveries: names.map((name) =>
      aDelivery(`d-${name}`, `to-${name}`, { method: "by-hand", sentOn, ...rest }),
    ),
  };
}

function pauseClock(facts: Partial<LineFile>, today = TODAY) {
  const [clock] = clocksOf(line(facts), today);
  if (clock === undefined) throw new Error("no clock");
  return clock;
}

function wordsOf(facts: Partial<LineFile>) {
  const file = line(facts);
  const clock = clocksOf(file, TODAY).at(-1);
  return clock?.telling ? tellingWords(file, clock.telling) : "";
}

describe("a rule on telling people before an event", () => {
  test("is not kept by one letter to one of seven", () => {
    expect(pauseClock(toldOf(["ann"], "2026-11-24")).settled).toBe(false);
    expect(wordsOf(toldOf(["ann"], "2026-11-24"))).toBe(
      "1 of 7 notified, 1 confirmed; not notified: bo, cy, dee, eli, fay and gil",
    );
    expect(pauseClock(toldOf(NAMES, "2026-11-24")).settled).toBe(true);
  });

  test("tells apart who was told and who is shown to have it", () => {
    const facts = toldOf(["ann", "bo", "cy"], "2026-11-24", { method: "first-class" });
    const replies = [aReply("r", "to-bo")];
    expect(wordsOf({ ...facts, replies })).toBe(
      "3 of 7 notified, 1 confirmed; not notified: dee, eli, fay and gil",
    );
  });

  test("calls late what went after its day, and settles nothing by it", () => {
    const rest = toldOf(NAMES.slice(0, 6), "2026-12-01");
    const last = toldOf(["gil"], "2026-12-02");
    const facts = {
      notices: [...rest.notices, ...last.notices],
      deliveries: [...rest.deliveries, ...last.deliveries],
    };
    expect(pauseClock(facts, "2026-12-02").settled).toBe(false);
    expect(wordsOf(facts)).toBe("7 of 7 notified, 7 confirmed; notified late: gil");
    const things = dueThings(line(facts), reportOn(line(facts), "2026-12-02"));
    expect(things.find(({ kind }) => kind === "late")?.sentence).toContain("notified late: gil");
    expect(pauseClock(facts, "2026-12-04").settled).toBe(true);
  });

  test("does not count a letter that came back, and counts the next way it went", () => {
    const facts = toldOf(NAMES, "2026-11-24");
    const back = facts.deliveries.map((each) =>
      each.noticeId === "to-fay" ? { ...each, outcome: "failed" as const } : each,
    );
    expect(wordsOf({ ...facts, deliveries: back })).toContain("not notified: fay");
    const again = aDelivery("again", "to-fay", { method: "by-hand", sentOn: "2026-11-30" });
    expect(pauseClock({ ...facts, deliveries: [...back, again] }).settled).toBe(true);
    const late = { ...again, sentOn: "2026-12-02" };
    expect(wordsOf({ ...facts, deliveries: [...back, late] })).toContain("notified late: fay");
  });

  test("counts the rule's days for mail for what went by mail", () => {
    const rule = { ...PAUSE, mailDays: 3 };
    const mailed = toldOf(NAMES, "2026-11-30", { method: "first-class" });
    expect(clocksOf(line(mailed, rule), TODAY)[0]?.settled).toBe(false);
    const handed = toldOf(NAMES, "2026-11-30");
    expect(clocksOf(line(handed, rule), TODAY)[0]?.settled).toBe(true);
  });

  test("does not take a letter that names another day, or one of an earlier pause, for this one", () => {
    const facts = toldOf(NAMES, "2026-11-24");
    const frozen = facts.notices.map((notice) => ({
      ...notice,
      frozen: JSON.stringify({ words: "on Wednesday, December 2, 2026" }),
    }));
    expect(wordsOf({ ...facts, notices: frozen })).toMatch(/^0 of 7 notified/);
    const right = frozen.map((notice) => ({
      ...notice,
      frozen: JSON.stringify({ words: "on Thursday, December 3, 2026" }),
    }));
    expect(pauseClock({ ...facts, notices: right }).settled).toBe(true);
    const earlier = anEvent("first", { event: "drains-paused", on: "2026-11-24" });
    expect(wordsOf({ ...facts, events: [earlier, ...SEVEN.events] })).toMatch(/^0 of 7 notified/);
  });

  test("asks for whoever gets the letter: the clock and the letters have the same people", () => {
    const file = line({});
    const recipients = recipientsOf(file, reportOn(file, TODAY), "drain-pause");
    const [clock] = clocksOf(file, TODAY);
    expect(clock?.telling?.recipients.map(({ partyId }) => partyId)).toEqual(
      recipients.map(({ partyId }) => partyId),
    );
    expect(recipients).toHaveLength(7);
  });

  test("the desk names who is missing", () => {
    const file = line(toldOf(NAMES.slice(0, 5), "2026-11-24"));
    const things = dueThings(file, reportOn(file, "2026-11-30"));
    expect(things.find(({ question }) => question === "notices")).toMatchObject({
      kind: "due",
      sentence:
        "Tell occupants (8 am to noon): due tomorrow: 5 of 7 notified, 5 confirmed; not notified: fay and gil",
    });
  });

  test("is not kept where nobody is on file who could be told", () => {
    const clock = pauseClock({ parties: [], roles: [] });
    expect(clock.settled).toBe(false);
    expect(wordsOf({ parties: [], roles: [] })).toBe("no one to notify is on file");
  });
});

describe("an entry into a dwelling", () => {
  const ENTRY = aClockRule("Entry notice", {
    event: "tenant-entry",
    count: 2,
    way: "before",
    roll: "none",
  });
  const ON = "2026-12-03";
  const facts = {
    properties: [aProperty("own"), aProperty("let")],
    parties: ["ida", "jo", "kim"].map((name) => aParty(name)),
    roles: [
      aRole("ida", "own"),
      aRole("ida", "own", { role: "occupant", id: "ida-lives" }),
      aRole("jo", "let"),
      aRole("kim", "let", { role: "occupant" }),
    ],
    events: [anEvent("v", { event: "tenant-entry", on: ON })],
  };
  const dayAt = (...places: string[]) => [
    aTestDay(
      places.map((propertyId) => aTestStop(propertyId)),
      { on: ON },
    ),
  ];

  test("asks for the tenants that are entered, not for owners who live there", () => {
    const clockOf = (more: Partial<LineFile>) =>
      clocksOf(line({ ...facts, ...more }, ENTRY), TODAY)[0];
    const both = clockOf({ testDays: dayAt("own", "let") });
    expect(both?.telling?.recipients.map(({ partyId }) => partyId)).toEqual(["kim"]);
    expect(both?.settled).toBe(false);
    const owners = clockOf({ testDays: dayAt("own") });
    expect(owners?.telling?.recipients).toEqual([]);
    expect(owners?.settled).toBe(true);
    const notices = [
      letter("kim", { kind: "test-visit", propertyId: "let", createdOn: "2026-11-24" }),
    ];
    expect(clockOf({ testDays: dayAt("own", "let"), notices })?.settled).toBe(true);
  });

  test("is not kept while nobody says which dwelling is entered", () => {
    const [clock] = clocksOf(line(facts, ENTRY), TODAY);
    expect(clock).toMatchObject({ settled: false });
    expect(clock?.telling && tellingWords(line(facts, ENTRY), clock.telling)).toBe(
      "no one to notify is on file",
    );
  });
});

describe("the start of the work", () => {
  const RULE = aClockRule("Tell the block", {
    event: "work-begins",
    count: 10,
    way: "before",
    roll: "none",
  });
  const EVERYBODY = [...NAMES, "lot"];
  const start = (facts: Partial<LineFile>) => {
    const bars = earliestStart(line({ events: [], ...facts }, RULE), TODAY).bars;
    return bars.find(({ because }) => because.includes("Tell the block"));
  };
  const sent = (names: readonly string[], on: string) => ({
    notices: names.map((name) =>
      letter(name, {
        kind: "work-start",
        propertyId: name === "lot" ? "crossed" : name,
        createdOn: on,
      }),
    ),
  });

  test("waits for everybody, not for the first who was told", () => {
    expect(start({})?.until).toBe("2026-12-05");
    const one = start(sent(["ann"], "2026-11-20"));
    expect(one?.until).toBe("2026-12-05");
    expect(one?.because).toContain("not notified yet: bo, cy, dee, eli, fay and 2 others");
    expect(start(sent(EVERYBODY, "2026-11-15"))).toBeUndefined();
  });

  test("counts from the letter that went last", () => {
    const early = sent(EVERYBODY.slice(1), "2026-11-10");
    const last = sent(["ann"], "2026-11-22");
    const bar = start({ notices: [...early.notices, ...last.notices] });
    expect(bar?.until).toBe("2026-12-02");
    const ticket = aLocateTicket("t", { workBeginsOn: "2026-11-30" });
    const late = start({
      notices: [...early.notices, ...last.notices],
      locateTickets: [ticket],
    });
    expect(late?.until).toBe("2026-12-02");
  });
});
