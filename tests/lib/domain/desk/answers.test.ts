import { describe, expect, test } from "vitest";
import { clocksOf } from "#lib/domain/clocks/clocks.ts";
import { QUESTIONS, type Question } from "#lib/domain/desk/answer.ts";
import { answersOn } from "#lib/domain/desk/answers.ts";
import type { LineFile, Office } from "#lib/domain/facts/line-file.ts";
import type { Gap, Run } from "#lib/domain/facts/run.ts";
import type { Report, TieInFinding } from "#lib/domain/findings/report.ts";
import { reportOn } from "#lib/domain/report/report-on.ts";
import {
  aClockRule,
  aConsent,
  aDelivery,
  aFile,
  aGap,
  aHistoryEntry,
  aLocateTicket,
  aNotice,
  anAddress,
  anAnchor,
  anAuthority,
  anEntry,
  anEvent,
  anObservation,
  anOffice,
  aParty,
  aPermit,
  aPermitStep,
  aPoint,
  aProperty,
  aRecord,
  aReply,
  aRequirement,
  aRequirementMark,
  aRole,
  aRun,
  aScopeItem,
  aSplit,
  aTieIn,
} from "#tests/support/file.ts";
import { aLedgerEntry } from "#tests/support/ledger.ts";
import {
  aFinding,
  aHold,
  anEntryFinding,
  anOutcome,
  aReach,
  aReport,
} from "#tests/support/report.ts";

function answer(
  question: Question,
  file: LineFile,
  { report = aReport(), office = null }: { report?: Report; office?: Office | null } = {},
) {
  const found = answersOn(file, report, office).find((each) => each.question === question);
  if (found === undefined) throw new Error(`No answer to ${question}`);
  return found;
}

const names = ["ada", "bo", "cy", "dee", "eli", "fay", "gil", "hal", "ivy"];

/** So many houses on the line, each with an owner. */
function housesOf(count: number) {
  const people = names.slice(0, count);
  return {
    properties: people.map((name) => aProperty(`${name}s`, { address: anAddress(`${name} Row`) })),
    parties: people.map((name) => aParty(name, { name })),
    roles: people.map((name) => aRole(name, `${name}s`)),
  };
}

test("answersOn() answers the ten questions in their order on an empty file, each open but the last", () => {
  const answers = answersOn(aFile(), aReport());
  expect(answers.map(({ question }) => question)).toEqual([...QUESTIONS]);
  for (const { question, sentence, closes, asked, pressing } of answers) {
    expect(sentence).not.toBe("");
    expect(asked).toMatch(/\?$/);
    const isOpen = question !== "history" && question !== "schedule";
    expect([question, closes !== null, pressing > 0]).toEqual([question, isOpen, isOpen]);
  }
});

test("answersOn() presses nothing on a closed line", () => {
  const file = aFile({ line: { closedOn: "2026-11-20" } });
  expect(answersOn(file, aReport()).every(({ pressing }) => pressing === 0)).toBe(true);
});

describe("who is on it", () => {
  const houses = housesOf(6);

  test("answersOn() counts properties and parties, and tie-ins that belong to nobody", () => {
    const more = { ...houses, parties: names.map((name) => aParty(name)) };
    const report = aReport({ tieIns: [aFinding("T1"), aFinding("T3", { propertyId: null })] });
    expect(answer("who", aFile(more), { report })).toMatchObject({
      sentence: "6 properties, 9 parties; 1 tie-in belongs to no one yet",
      closes:
        "Find out who owns T3: ask and test, until it is proven or the owner accepts that it is theirs",
      pressing: 80,
    });
  });

  test("answersOn() leaves out dead tie-ins, and neighbors who are only told", () => {
    const file = aFile({
      ...housesOf(1),
      properties: [aProperty("adas"), aProperty("next", { stake: "neighbour" })],
    });
    const report = aReport({ tieIns: [aFinding("T3", { propertyId: null, live: false })] });
    expect(answer("who", file, { report })).toMatchObject({
      sentence: "1 property, 1 party",
      closes: null,
      pressing: 0,
    });
  });

  test("answersOn() says where no owner is entered", () => {
    const file = aFile({ ...houses, roles: houses.roles.slice(2) });
    expect(answer("who", file)).toMatchObject({
      sentence: "6 properties, 6 parties; 2 properties have no owner entered",
      closes: "Enter who owns ada Row and bo Row",
    });
  });
});

describe("what is on record", () => {
  const records = [aRecord("card"), aRecord("second", { dated: "1994-05-02" })];
  const entries = ["a", "b", "c", "d"].map((id) => anEntry(id, { distance: 100 }));

  test("answersOn() counts entries and cards and names their years", () => {
    const all = [...entries, anEntry("e", { recordId: "second", distance: 100 })];
    expect(answer("record", aFile({ records, entries: all }))).toMatchObject({
      sentence: "5 entries on 2 cards, 1958 and 1994",
      closes: null,
    });
  });

  test("answersOn() asks where a record with distances measures from, if nobody said", () => {
    const unsaid = [aRecord("card", { measuredFrom: "unknown" })];
    expect(answer("record", aFile({ records: unsaid, entries }))).toMatchObject({
      closes: "Read off Side sewer card where it measures from, the main or the upper end",
    });
    const blank = [anEntry("a")];
    expect(answer("record", aFile({ records: unsaid, entries: blank })).closes).toBeNull();
  });

  test("answersOn() calls different papers records, and counts entries without a distance", () => {
    const drawing = aRecord("second", { kind: "drawing", dated: "", title: "Plat" });
    const file = aFile({ records: [aRecord("card"), drawing], entries: [anEntry("a")] });
    expect(answer("record", file)).toMatchObject({
      sentence: "1 entry on 2 records, 1958; 1 without a distance",
      closes: "Enter the connections on Plat, or note that it shows none",
    });
  });
});

describe("what the camera saw", () => {
  const tied = [anAnchor("Run 1"), anAnchor("Run 2")];
  const two = (first: Partial<Run> = {}, second: Partial<Run> = {}) => [
    aRun("Run 1", { toCounter: 8_800, ...first }),
    aRun("Run 2", { toCounter: 8_800, ...second }),
  ];
  const camera = (facts: Parameters<typeof aFile>[0]) => {
    const file = aFile({ line: { upperEnd: 8_800 }, ...facts });
    return answer("camera", file, { report: reportOn(file, "2026-11-25") });
  };

  test("answersOn() says from where to where, and what was under water", () => {
    const gaps = ["Run 1", "Run 2"].map((run) =>
      aGap(run, { id: run, fromCounter: 4_100, toCounter: 4_700 }),
    );
    expect(camera({ runs: two(), anchors: tied, gaps })).toMatchObject({
      sentence: "2 runs, 0 to 88 ft; 41 to 47 ft under water",
      closes: "Inspect 41 to 47 ft again once the water is out",
    });
  });

  test("answersOn() counts what no run reached, and gaps beyond three", () => {
    const gap = (from: number, to: number, cause: Gap["cause"]) =>
      aGap("Run 1", { id: cause, fromCounter: from, toCounter: to, cause });
    const sentence = camera({
      runs: [aRun("Run 1", { toCounter: 3_000 })],
      anchors: tied.slice(0, 1),
      gaps: [
        gap(1_000, 1_250, "blocked"),
        gap(1_250, 2_000, "not-in-view"),
        gap(2_000, 3_000, "not-recorded"),
      ],
      line: { upperEnd: 4_000 },
    }).sentence;
    expect(sentence).toBe(
      "1 run, 0 to 30 ft; 10 to 12.5 ft blocked; 12.5 to 20 ft not in view; 2 more sections not seen",
    );
  });

  test("answersOn() ties the first run first, and sends nobody to look again before", () => {
    expect(camera({ runs: two() })).toMatchObject({
      sentence: "2 runs; 0 to 88 ft not inspected; Run 1 and Run 2 not tied to the main",
      closes:
        "Tie Run 1 to the main with a reading at a point of known station, then Run 2; until then they have no stations",
      pressing: 50,
    });
    expect(camera({ runs: two({ toCounter: 5_000 }), anchors: tied.slice(0, 1) })).toMatchObject({
      sentence: "2 runs, 0 to 50 ft; 50 to 88 ft not inspected; Run 2 not tied to the main",
      closes:
        "Tie Run 2 to the main with a reading at a point of known station; until then it has no stations",
    });
  });

  test("answersOn() sends nobody to look again at half a foot that the counter may be off by", () => {
    const facts = (toCounter: number) => ({
      line: { upperEnd: 16_500 },
      runs: [aRun("Run 1", { toCounter })],
      anchors: tied.slice(0, 1),
      observations: [anObservation("seen", { runId: "Run 1" })],
    });
    expect(camera(facts(16_450))).toMatchObject({ sentence: "1 run, 0 to 164.5 ft", closes: null });
    expect(camera(facts(16_300)).closes).toBe("Inspect 163 to 165 ft again with another run");
  });

  test("answersOn() wants what the first run saw", () => {
    const runs = [aRun("Run 1", { toCounter: 8_800 })];
    const bare = { line: { upperEnd: 8_800 }, runs, anchors: tied.slice(0, 1) };
    expect(camera(bare)).toMatchObject({
      closes: "Enter what Run 1 saw",
      where: "camera/log",
    });
  });
});

describe("whether they agree", () => {
  const both = { entries: [anEntry("House 14")], observations: [anObservation("o")] };

  test("answersOn() counts what agrees, what was not seen and what is undocumented", () => {
    const report = aReport({
      tieIns: [
        ...["T1", "T2", "T4", "T5"].map((id) => aFinding(id)),
        ...["T3", "T6"].map((id) =>
          aFinding(id, { standing: "undocumented", propertyId: null, level: 1 }),
        ),
      ],
      entries: [
        anEntryFinding("House 12", { tieInId: "T1" }),
        anEntryFinding("House 14", { standing: "on-record-not-seen", decided: false }),
      ],
    });
    expect(answer("reconcile", aFile(both), { report })).toMatchObject({
      sentence: "4 agree, 1 not seen, 2 undocumented",
      closes: "Find out what T3 and T6 serve",
      where: "reconcile/undocumented",
      pressing: 80,
    });
  });

  test("answersOn() counts a proposal that nobody has accepted as waiting, not as agreeing", () => {
    const tieIns = [aFinding("T1"), aFinding("T2", { decided: false })];
    expect(answer("reconcile", aFile(both), { report: aReport({ tieIns }) })).toMatchObject({
      sentence: "1 agrees, 1 to review",
      closes: "Review the proposed match",
      where: "reconcile/match",
    });
    const unknown = aFinding("T3", { standing: "undocumented", propertyId: null, level: 1 });
    const report = aReport({ tieIns: [...tieIns, unknown] });
    expect(answer("reconcile", aFile(both), { report }).closes).toBe("Review the proposed match");
  });

  test("answersOn() lines the record up before its matches; once they are decided, holds come first", () => {
    const alignment = {
      ...{ shift: 230, scale: 0, explained: 2, of: 2, plain: 0, decision: null, own: [] },
      ...{ proposed: { shift: 230, scale: 0, explained: 2 }, sentence: "2.3 ft farther" },
    };
    const unknown = aFinding("T3", { standing: "undocumented", propertyId: null, level: 1 });
    const closing = (first: TieInFinding) =>
      answer("reconcile", aFile(both), { report: aReport({ alignment, tieIns: [first, unknown] }) })
        .closes;
    expect(closing(aFinding("T1", { decided: false }))).toMatch(/^Accept or reject how the record/);
    expect(closing(aFinding("T1"))).toBe("Find out what T3 serves");
  });

  test("answersOn() counts an entry that a person explained as explained, not as not seen", () => {
    const explained = anEntryFinding("House 14", { standing: "on-record-not-seen" });
    const report = aReport({ tieIns: [aFinding("T1")], entries: [explained] });
    expect(answer("reconcile", aFile(both), { report }).sentence).toBe("1 agrees, 1 explained");
  });

  test("answersOn() wants entries explained that nothing answers to", () => {
    const open = anEntryFinding("House 14", {
      standing: "on-record-not-inspected",
      decided: false,
    });
    const report = aReport({ tieIns: [aFinding("T1")], entries: [open] });
    expect(answer("reconcile", aFile(both), { report })).toMatchObject({
      sentence: "1 agrees, 1 not inspected",
      closes: "Find or explain 1 record entry with no matching tie-in: “House 14”",
    });
    const entries = [anEntry("House 14", { explanation: "Demolished 1971" })];
    expect(answer("reconcile", aFile({ ...both, entries }), { report }).closes).toBe(null);
  });

  test("answersOn() is closed once an undocumented tie-in is shown to be somebody's", () => {
    const open = aFinding("T4", { standing: "undocumented", level: 4 });
    const named = aReport({ tieIns: [open] });
    expect(answer("reconcile", aFile(both), { report: named })).toMatchObject({
      sentence: "1 undocumented",
      closes: "Prove which property T4 serves",
    });
    const report = aReport({ tieIns: [aFinding("T3", { standing: "undocumented" })] });
    expect(answer("reconcile", aFile(both), { report })).toMatchObject({
      sentence: "1 not on record but settled",
      pressing: 0,
    });
  });

  test("answersOn() calls nothing settled that only tests have shown, and asks for a person's word", () => {
    const shown = aFinding("T4", { standing: "undocumented", level: 5, propertyId: null });
    const report = aReport({ tieIns: [shown] });
    expect(answer("reconcile", aFile(both), { report })).toMatchObject({
      sentence: "1 shown by tests but not settled",
      closes: "Settle the owner of T4, as tests have shown",
    });
    const file = aFile({ properties: [aProperty("14")] });
    expect(answer("who", file, { report }).sentence).not.toContain("nobody");
  });

  test("answersOn() says which side is wanting", () => {
    expect(answer("reconcile", aFile({ entries: both.entries })).closes).toBe(
      "Enter what the camera saw",
    );
    expect(answer("reconcile", aFile({ tieIns: [aTieIn("T1")] })).closes).toBe(
      "Enter what the record shows",
    );
  });
});

describe("who answers for what", () => {
  const authority = anAuthority();
  const line = { authorityId: authority.id, ruleId: "rule" };

  test("answersOn() says owners to the right-of-way line, and what is unclear", () => {
    const file = aFile({
      line,
      authority,
      points: [aPoint("row", { kind: "right-of-way-line", station: 1_200 })],
    });
    const reaches = [
      aReach(0, 1_200, { holder: "unclear" }),
      aReach(1_200, 4_000),
      aReach(4_000, 10_000),
    ];
    expect(answer("responsibility", file, { report: aReport({ reaches }) })).toMatchObject({
      sentence: "Owners to the right-of-way line; unclear from 0 to 12 ft",
      closes: "Ask City of Quillhaven in writing about 0 to 12 ft, or enter a recorded agreement",
    });
  });

  test("answersOn() says whose the whole line is, and who mends it", () => {
    const whole = [aReach(0, 4_000), aReach(4_000, 10_000)];
    expect(
      answer("responsibility", aFile({ line, authority }), { report: aReport({ reaches: whole }) }),
    ).toMatchObject({
      sentence: "Owners for the whole line, 0 to 100 ft",
      closes: null,
    });
    const lower = [aReach(0, 1_200, { mender: "authority" }), aReach(1_200, 10_000)];
    expect(
      answer("responsibility", aFile({ line, authority }), { report: aReport({ reaches: lower }) })
        .sentence,
    ).toBe(
      "Owners from the main connection to 12 ft, repaired by the authority; owners from 12 to 100 ft",
    );
  });

  test("answersOn() says where the authority's part ends", () => {
    const file = aFile({ line, authority, points: [aPoint("co", { station: 1_200 })] });
    const reaches = [aReach(0, 1_200, { holder: "authority" }), aReach(1_200, 10_000)];
    expect(answer("responsibility", file, { report: aReport({ reaches }) }).sentence).toBe(
      "The authority up to the cleanout; owners to the cleanout",
    );
  });

  test("answersOn() asks for the authority, then for its rule", () => {
    const report = aReport({ reaches: [aReach(0, 10_000, { holder: "unclear" })] });
    expect(answer("responsibility", aFile(), { report })).toMatchObject({
      sentence: "Unclear for the whole line",
      closes: "Choose the authority whose rules apply here",
    });
    const unruled = aFile({ authority, line: { authorityId: authority.id } });
    expect(answer("responsibility", unruled, { report }).closes).toBe(
      "Choose which of City of Quillhaven’s rules applies",
    );
  });
});

describe("what it costs and who pays", () => {
  const houses = housesOf(6);
  const shares = houses.properties.map(({ id }, at) => ({
    propertyId: id,
    tieInId: null,
    amount: at === 0 ? 314_000 : 310_000,
    recoverable: 0,
  }));
  const version = aSplit("one", { total: 1_864_000, shares, basis: "b" });
  const agreed = ["ada", "bo"].map((name) =>
    aConsent(name, {
      kind: "pay",
      partyId: name,
      propertyId: `${name}s`,
      splitId: "one",
      amount: name === "ada" ? 314_000 : 310_000,
    }),
  );
  const facts = { ...houses, scope: [aScopeItem("dig")], splits: [version] };

  function costOf(consents: LineFile["consents"], outcome = {}) {
    const file = aFile({ ...facts, consents });
    return answer("cost", file, { report: aReport({ splits: [anOutcome(file, outcome)] }) });
  }

  test("answersOn() says the total, the rule and how many have agreed", () => {
    expect(costOf(agreed)).toMatchObject({
      sentence: "$18,640.00 by portion used; 2 of 6 have agreed",
      closes: "Get the owners’ consent to pay for cy Row, dee Row, eli Row and fay Row",
    });
    expect(costOf([]).sentence).toBe("$18,640.00 by portion used; no one has agreed yet");
    expect(costOf(agreed.slice(1)).sentence).toBe("$18,640.00 by portion used; 1 of 6 has agreed");
  });

  test("answersOn() counts a signature on another amount apart", () => {
    const [ada, bo] = agreed;
    const old = { ...ada, amount: 300_000 } as LineFile["consents"][number];
    expect(costOf([old, bo as LineFile["consents"][number]]).sentence).toBe(
      "$18,640.00 by portion used; 1 of 6 has agreed; 1 signed for an earlier amount",
    );
  });

  test("answersOn() says when the amounts are out of date", () => {
    expect(costOf(agreed, { basis: "other" })).toMatchObject({
      sentence: "$18,640.00 by portion used; the amounts are out of date; 2 of 6 have agreed",
      closes: "Update the split to the current facts",
    });
  });

  test("answersOn() is closed once all have agreed", () => {
    const all = names.slice(0, 6).map((name, at) =>
      aConsent(name, {
        kind: "pay",
        partyId: name,
        propertyId: `${name}s`,
        splitId: "one",
        amount: at === 0 ? 314_000 : 310_000,
      }),
    );
    expect(costOf(all)).toMatchObject({
      sentence: "$18,640.00 by portion used; all 6 have agreed",
      closes: null,
      pressing: 0,
    });
  });

  test("answersOn() asks for prices, then for a rule", () => {
    expect(answer("cost", aFile()).sentence).toBe("No work is priced yet");
    const file = aFile(facts);
    const report = aReport({ splits: [anOutcome(file)] });
    expect(answer("cost", { ...file, splits: [] }, { report })).toMatchObject({
      sentence: "$18,640.00; no rule chosen yet",
      closes: "Compare the rules and choose one",
      where: "cost/choose",
    });
    const none = aReport({ splits: [] });
    expect(answer("cost", { ...file, splits: [] }, { report: none })).toMatchObject({
      sentence: "The work is priced; no rule chosen yet",
      closes: "Enter what the rules need to be calculated",
      where: "cost/compare",
    });
  });

  test("answersOn() says what keeps the split from being final", () => {
    const file = aFile(facts);
    const holds = [aHold("tie-in-owner-unknown", "T3", ["final-split"])];
    const report = aReport({ splits: [anOutcome(file)], holds });
    expect(answer("cost", file, { report }).closes).toBe(
      "The split cannot be final while 1 hold is open: T3",
    );
  });
});

describe("who has been told", () => {
  const houses = housesOf(9);
  const notices = names.slice(0, 8).map((name) => aNotice(name, { partyId: name, state: "sent" }));
  const deliveries = names.slice(0, 8).map((name, at) =>
    aDelivery(name, name, {
      method: "certified",
      tracking: `9407 5550 ${at}`,
      outcome: at === 7 ? "returned" : "delivered",
      outcomeOn: "2026-11-19",
    }),
  );

  test("answersOn() counts whom letters reached, and letters that came back", () => {
    expect(answer("notices", aFile({ ...houses, notices, deliveries }))).toMatchObject({
      sentence: "7 of 9 reached, 1 more sent a letter; 1 letter returned",
      closes: "Redeliver the letter to hal another way",
      pressing: 70,
    });
  });

  test("answersOn() does not take first-class mail for reached, whatever is said to have become of it", () => {
    const mailed = deliveries.map((delivery) => ({ ...delivery, method: "first-class" as const }));
    expect(answer("notices", aFile({ ...houses, notices, deliveries: mailed }))).toMatchObject({
      sentence: "8 of 9 sent a letter, delivery not confirmed; 1 letter returned",
    });
    const rest = {
      notices: notices.slice(0, 7),
      deliveries: mailed.slice(0, 7),
      ...housesOf(7),
    };
    expect(answer("notices", aFile(rest))).toMatchObject({
      closes:
        "Confirm delivery of the letters to ada, bo, cy and 4 others: a reply, a receipt, or hand delivery",
      pressing: 10,
    });
  });

  test("answersOn() takes whoever answered as reached, and tells replies to deal with first", () => {
    const file = aFile({
      ...housesOf(2),
      notices: ["ada", "bo"].map((id) =>
        aNotice(id, { partyId: id, state: "sent", replyBy: "2026-11-20" }),
      ),
      replies: [aReply("r", "ada")],
    });
    expect(answer("notices", file)).toMatchObject({
      sentence: "1 of 2 reached, 1 more sent a letter; 1 reply to answer",
      closes: "Answer the reply of ada",
      pressing: 100,
    });
    const dealt = { dealtBy: "Dana", dealtOn: "2026-11-22", dealtHow: "answered" } as const;
    expect(answer("notices", { ...file, replies: [aReply("r", "ada", dealt)] })).toMatchObject({
      sentence: "1 of 2 reached, 1 more sent a letter",
      closes: "Follow up on the overdue reply from bo",
      pressing: 100,
    });
  });

  test("answersOn() names who answered an invoice only where one person can have", () => {
    const ledger = [aLedgerEntry(1, { partyId: "ada", propertyId: "adas" })];
    const replies = [aReply("r", null, { entryId: "entry-1" })];
    const file = aFile({ ...housesOf(1), ledger, replies });
    expect(answer("notices", file)).toMatchObject({
      sentence: "No letters sent yet; 1 reply to answer",
      closes: "Answer the reply of ada",
    });
    const roles = [...file.roles, aRole("bo", "adas")];
    const jointly = { ...file, parties: housesOf(2).parties, roles };
    expect(answer("notices", jointly).closes).toBe("Answer the reply of someone at ada Row");
  });

  test("answersOn() lets an objection press as much as anything late, before its day too", () => {
    const notices = [aNotice("ada", { partyId: "ada", state: "sent", replyBy: "2026-12-20" })];
    const replies = [aReply("r", "ada", { kind: "disagrees" })];
    expect(answer("notices", aFile({ ...housesOf(1), notices, replies }))).toMatchObject({
      sentence: "1 of 1 reached; 1 reply to answer, 1 objection among them",
      closes: "Answer the objection of ada",
      pressing: 100,
    });
  });

  test("answersOn() counts drafts as not told", () => {
    const file = aFile({ ...housesOf(2), notices: [aNotice("n", { partyId: "ada" })] });
    expect(answer("notices", file)).toMatchObject({
      sentence: "No letters sent yet; 1 letter drafted, not sent",
      closes: "Write to ada and bo",
    });
  });

  test("answersOn() speaks of a resident without a name by the address", () => {
    const houses = housesOf(2);
    const parties = houses.parties.map((each) => ({
      ...each,
      kind: "resident" as const,
      name: "Current Resident",
    }));
    expect(answer("notices", aFile({ ...houses, parties })).closes).toMatch(
      /^Write to the resident of .+ and the resident of /,
    );
  });

  test("answersOn() is closed once all are reached", () => {
    const file = aFile({
      ...housesOf(2),
      notices: notices.slice(0, 2),
      deliveries: deliveries.slice(0, 2),
    });
    expect(answer("notices", file)).toMatchObject({ sentence: "Both reached", closes: null });
  });
});

describe("what the authority needs", () => {
  const requirements = Array.from({ length: 12 }, (_, at) => aRequirement(`Paper ${at + 1}`));
  const marks = requirements.slice(0, 9).map(({ id }) => aRequirementMark(id));
  const facts = { authority: anAuthority({ requirements }), requirementMarks: marks };

  test("answersOn() counts what is on file and says what holds the submission", () => {
    const report = aReport({
      holds: [aHold("easement-missing", "9 Ropewalk Lane", ["submission", "digging"])],
    });
    expect(answer("authority", aFile(facts), { report })).toMatchObject({
      sentence: "9 of 12 items on file; easement not recorded",
      closes: "Lift 1 hold: nothing can be submitted until then",
      where: "reconcile#holds",
    });
  });

  test("answersOn() leaves out what does not apply", () => {
    const off = aRequirementMark("Paper 12", { state: "does-not-apply" });
    const file = aFile({ ...facts, requirementMarks: [...marks, off] });
    expect(answer("authority", file)).toMatchObject({
      sentence: "9 of 11 items on file",
      closes: "Still needed: paper 10 and paper 11",
    });
  });

  test("answersOn() says where the permit is and what the office must do", () => {
    const file = aFile({
      ...facts,
      permits: [aPermit("p", { number: "SS-1" })],
      permitSteps: [aPermitStep("s", "p", { state: "approved-fees-due", on: "2026-11-20" })],
    });
    expect(answer("authority", file)).toMatchObject({
      sentence:
        "9 of 12 items on file; side sewer permit SS-1 is approved, fees due (since Friday, November 20)",
      closes: "Pay the fees so the permit can be issued",
    });
  });

  test("answersOn() judges the contractor's papers only of a known office", () => {
    const standing = aRequirement("License, bond and insurance", { sheet: "contractor-standing" });
    const events = [anEvent("end", { event: "work-ends", on: "2026-12-11" })];
    const file = aFile({ authority: anAuthority({ requirements: [standing] }), events });
    expect(answer("authority", file).sentence).toBe("No requirements entered");
    expect(answer("authority", file, { office: anOffice() }).sentence).toBe("1 of 1 on file");
    const lapsed = anOffice({ bondExpiresOn: "2026-10-01" });
    expect(answer("authority", file, { office: lapsed })).toMatchObject({
      sentence: "0 of 1 item on file",
      closes: "Still needed: license, bond and insurance",
    });
  });
});

describe("what happens next", () => {
  const authority = anAuthority({
    clockRules: [
      aClockRule("Locate marks", {
        event: "locate-called",
        count: 2,
        unit: "business-days",
        fullDays: true,
        roll: "none",
        meaning: "not-before",
      }),
      aClockRule("Answer the order", { event: "authority-order", count: 30 }),
    ],
  });

  function nextOf(facts: Parameters<typeof aFile>[0], today = "2026-11-23") {
    const file = aFile({ authority, ...facts });
    return answer("schedule", file, { report: aReport({ today, clocks: clocksOf(file, today) }) });
  }

  test("answersOn() counts days to a reply and names the near day of a window", () => {
    const next = nextOf({
      notices: [aNotice("n", { state: "sent", replyBy: "2026-11-26" })],
      locateTickets: [aLocateTicket("t", { calledOn: "2026-11-24" })],
    });
    expect(next.sentence).toBe("Reply due in 3 days; locate window opens Friday");
  });

  test("answersOn() tells replies of one day together, and counts the clocks beyond two", () => {
    const next = nextOf({
      notices: ["a", "b"].map((id) =>
        aNotice(id, { partyId: id, state: "sent", replyBy: "2026-11-24" }),
      ),
      locateTickets: [aLocateTicket("t", { calledOn: "2026-11-24" })],
      events: [anEvent("e", { event: "authority-order", on: "2026-11-20" })],
    });
    expect(next.sentence).toBe(
      "Replies due on 2 letters tomorrow; locate window opens Friday; 1 more deadline",
    );
  });

  test("answersOn() says what is overdue", () => {
    const notices = [aNotice("n", { state: "sent", replyBy: "2026-11-20" })];
    expect(nextOf({ notices })).toMatchObject({
      sentence: "1 reply overdue since Friday, November 20",
      pressing: 100,
    });
  });

  test("answersOn() says when the work could start once it is priced", () => {
    expect(nextOf({ scope: [aScopeItem("dig")] })).toMatchObject({
      closes: "2 things must come before the work can start",
      where: "schedule#start",
    });
  });

  test("answersOn() leads to the close-out once the permit is final", () => {
    const next = nextOf({
      scope: [aScopeItem("dig")],
      permits: [aPermit("p")],
      permitSteps: [aPermitStep("s", "p", { state: "final", on: "2026-11-20" })],
    });
    expect(next).toMatchObject({
      sentence: "No deadlines running",
      closes: "Write the closeout letters and close the file",
      where: "schedule#close",
    });
  });
});

describe("what happened", () => {
  const history = Array.from({ length: 64 }, (_, at) =>
    aHistoryEntry(`${at}`, { at: `2026-11-${at === 10 ? "26" : "20"}T02:00:00.000Z` }),
  );

  test("answersOn() counts the entries and names who made the last, on the office's day", () => {
    const file = aFile({ history });
    const office = anOffice({ zone: "America/Los_Angeles" });
    expect(answer("history", file, { office }).sentence).toBe(
      "64 entries, last by D. Okafor today",
    );
    const report = aReport({ today: "2026-11-26" });
    expect(answer("history", file, { office, report }).sentence).toBe(
      "64 entries, last by D. Okafor yesterday",
    );
  });

  test("answersOn() never says that something happened tomorrow", () => {
    expect(answer("history", aFile({ history })).sentence).toBe(
      "64 entries, last by D. Okafor today",
    );
  });
});
