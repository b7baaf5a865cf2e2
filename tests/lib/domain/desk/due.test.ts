import { expect, test } from "vitest";
import { clocksOf } from "#lib/domain/clocks/clocks.ts";
import { dueThings, inOrder } from "#lib/domain/desk/due.ts";
import { replyThings } from "#lib/domain/desk/reply-things.ts";
import { summaryOf } from "#lib/domain/desk/summary.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import { REPLY_KINDS, type Reply, type ReplyKind } from "#lib/domain/facts/notice.ts";
import type { Report } from "#lib/domain/findings/report.ts";
import {
  aClockRule,
  aConsent,
  aDelivery,
  aFile,
  aLocateTicket,
  aNotice,
  anAddress,
  anAuthority,
  anInspection,
  aParty,
  aPermit,
  aPermitStep,
  aProperty,
  aReply,
  aRole,
  aSplit,
} from "#tests/support/file.ts";
import { aHold, anOutcome, aReport } from "#tests/support/report.ts";

const TODAY = "2026-11-25";

function due(file: LineFile, report: Partial<Report> = {}) {
  const full = aReport({ today: TODAY, clocks: clocksOf(file, TODAY), ...report });
  return dueThings(file, full).map(({ kind, on, question, sentence }) => [
    kind,
    on,
    question,
    sentence,
  ]);
}

const HOUSE = {
  properties: [aProperty("p", { address: anAddress("14 Fennel Row") })],
  parties: [aParty("ada", { name: "Ada Winfield" })],
  roles: [aRole("ada", "p")],
};

test("dueThings() is empty on an empty and on a closed line", () => {
  expect(due(aFile())).toEqual([]);
  const permits = [aPermit("p")];
  expect(due(aFile({ permits, line: { closedOn: TODAY } }))).toEqual([]);
});

test("dueThings() tells what is late, what is due within a week, and nothing later", () => {
  const sent = (id: string, replyBy: string) =>
    aNotice(id, { partyId: id, state: "sent", replyBy });
  const file = aFile({
    notices: [sent("a", "2026-11-20"), sent("b", "2026-12-01"), sent("c", "2027-01-11")],
  });
  expect(due(file)).toEqual([
    ["late", "2026-11-20", "notices", "1 reply overdue since Friday, November 20"],
    ["due", "2026-12-01", "notices", "Reply due in 6 days (Tuesday, December 1)"],
  ]);
});

test("dueThings() waits for a locate window, and wants it used before it closes", () => {
  const rule = { event: "locate-called", unit: "business-days", roll: "none" } as const;
  const file = aFile({
    authority: anAuthority({
      clockRules: [
        aClockRule("Opens", { ...rule, count: 2, fullDays: true, meaning: "not-before" }),
        aClockRule("Closes", { ...rule, count: 4, meaning: "not-after" }),
      ],
    }),
    locateTickets: [aLocateTicket("t", { calledOn: "2026-11-24" })],
  });
  expect(due(file)).toEqual([
    ["due", "2026-11-30", "schedule", "Locate window closes Monday"],
    ["waiting", "2026-11-27", "schedule", "Locate window opens Friday"],
  ]);
});

test("dueThings() tells booked inspections, letters that came back, and drafts", () => {
  const file = aFile({
    ...HOUSE,
    permits: [aPermit("p")],
    permitSteps: [aPermitStep("s", "p", { state: "working", on: "2026-11-20" })],
    inspections: [anInspection("i", "p", { bookedFor: "2026-11-26" })],
    notices: [
      aNotice("n", { partyId: "ada", state: "sent" }),
      aNotice("m", { partyId: "ada", kind: "test-visit" }),
    ],
    deliveries: [aDelivery("d", "n", { outcome: "returned", outcomeOn: "2026-11-19" })],
  });
  expect(due(file)).toEqual([
    [
      "due",
      "2026-11-19",
      "notices",
      "The letter to Ada Winfield was returned on Thursday, November 19",
    ],
    ["due", "2026-11-26", "schedule", "Inspection: Open trench tomorrow"],
    ["due", null, "notices", "1 letter drafted, not sent"],
  ]);
});

/** Ada's proposed split, asked back by November 20. */
const ASKED = {
  ...HOUSE,
  notices: [
    aNotice("n", {
      partyId: "ada",
      propertyId: "p",
      kind: "proposed-split",
      state: "sent",
      replyBy: "2026-11-20",
    }),
  ],
  deliveries: [
    aDelivery("d", "n", {
      method: "certified",
      tracking: "9407",
      outcome: "delivered",
      outcomeOn: "2026-11-12",
      sentOn: "2026-11-09",
    }),
  ],
};

test("dueThings() keeps every reply due until a named person has dealt with it, whatever it says", () => {
  expect(due(aFile(ASKED))).toEqual([
    ["late", "2026-11-20", "notices", "1 reply overdue since Friday, November 20"],
  ]);
  for (const kind of REPLY_KINDS) {
    const reply = aReply("r", "n", { kind, receivedOn: "2026-11-18", words: "Call me" });
    const waiting = due(aFile({ ...ASKED, replies: [reply] })).filter(
      ([, , question]) => question === "notices",
    );
    expect(waiting[0]?.slice(0, 3), kind).toEqual(["late", "2026-11-18", "notices"]);
    expect(waiting[0]?.[3], kind).toMatch(/^Ada Winfield .*14 Fennel Row.*“Call me”$/);
    const dealt = { ...reply, dealtBy: "Dana Okafor", dealtHow: "answered" } as const;
    const done = due(
      aFile({ ...ASKED, replies: [{ ...dealt, dealtOn: TODAY, dealtWords: "Wrote back" }] }),
    );
    expect(
      done.filter(([, , , sentence]) => String(sentence).includes("Call me")),
      kind,
    ).toEqual([]);
    const nameless = due(aFile({ ...ASKED, replies: [{ ...dealt, dealtOn: TODAY, dealtBy: "" }] }));
    expect(nameless[0]?.[3], kind).toContain("Call me");
  }
});

test("dueThings() says what each reply wants of the office", () => {
  const says = (kind: ReplyKind, more: Partial<Reply> = {}) =>
    due(aFile({ ...ASKED, replies: [aReply("r", "n", { kind, ...more })] }))[0]?.[3];
  expect(says("disagrees")).toBe("Ada Winfield objects (proposed split, 14 Fennel Row)");
  expect(says("asks")).toBe("Ada Winfield has a question (proposed split, 14 Fennel Row)");
  expect(says("offers-a-record")).toBe("Ada Winfield has a record (proposed split, 14 Fennel Row)");
  expect(says("books-a-test", { suitsOn: "2026-12-03" })).toBe(
    "Ada Winfield wants to schedule a test: Thursday, December 3 works (proposed split, 14 Fennel Row)",
  );
  expect(says("wants-another-day", { words: "I work nights" })).toBe(
    "Ada Winfield wants another day; set another day and tell them (proposed split, 14 Fennel Row): “I work nights”",
  );
  expect(says("wants-paper")).toBe(
    "Ada Winfield wants it on paper; print the letter and mail it (proposed split, 14 Fennel Row)",
  );
  expect(says("agrees")).toBe("Ada Winfield agrees (proposed split, 14 Fennel Row)");
});

test("dueThings() makes a wish for paper a task of its own, at its letter, until a named person dealt with it", () => {
  const tasks = (more: Partial<Reply>) => {
    const reply = aReply("r", "n", { kind: "wants-paper", ...more });
    return replyThings(aFile({ ...ASKED, replies: [reply] }), TODAY);
  };
  const how = { dealtOn: TODAY, dealtHow: "answered", dealtWords: "Mailed it" } as const;
  expect(tasks({})).toMatchObject([{ question: "notices", where: "notices/letter/n" }]);
  expect(tasks({ ...how, dealtBy: "" })).toHaveLength(1);
  expect(tasks({ ...how, dealtBy: "Dana Okafor" })).toEqual([]);
});

test("dueThings() is never quieter about a reply than about silence, before and after its day", () => {
  const asked = (replyBy: string | null, replies: Reply[]) => {
    const notices = ASKED.notices.map((notice) => ({ ...notice, replyBy }));
    const file = aFile({ ...ASKED, notices, replies });
    const report = aReport({ today: TODAY, clocks: clocksOf(file, TODAY) });
    return summaryOf(file, report).pressing;
  };
  for (const replyBy of [null, "2026-11-20", "2026-11-25", "2026-12-01", "2027-01-11"])
    for (const kind of REPLY_KINDS)
      expect(
        asked(replyBy, [aReply("r", "n", { kind })]),
        `${kind}, by ${replyBy}`,
      ).toBeGreaterThanOrEqual(asked(replyBy, []));
});

test("dueThings() lets an objection stay an open matter after a call, until there is a word on what was asked", () => {
  const dealt = { dealtBy: "Dana Okafor", dealtOn: TODAY, dealtHow: "called-back" } as const;
  const objection = aReply("r", "n", { kind: "disagrees", ...dealt, dealtWords: "Thinks it over" });
  expect(due(aFile({ ...ASKED, replies: [objection] }))).toEqual([
    ["late", "2026-11-20", "notices", "1 reply overdue since Friday, November 20"],
  ]);
  const refusal = aConsent("c", { kind: "pay", partyId: "ada", propertyId: "p", state: "refused" });
  const refused = due(aFile({ ...ASKED, replies: [objection], consents: [refusal] }));
  expect(refused.filter(([kind]) => kind === "late")).toEqual([]);
  expect(refused[0]?.[0]).toBe("blocked");
});

test("dueThings() keeps a reply that came in on a closed line", () => {
  const closed = { ...ASKED, line: { closedOn: "2026-11-21" } };
  const replies = [aReply("r", "n", { kind: "asks", receivedOn: "2026-11-24" })];
  expect(due(aFile(closed))).toEqual([]);
  expect(due(aFile({ ...closed, replies })).map(([, , question]) => question)).toEqual(["notices"]);
});

test("dueThings() tells the holds of one cause together, with what they stop, until waived", () => {
  const stops = ["capping", "lining"] as const;
  const waiver = { id: "w", holdKey: "", reason: "", by: "Dana", on: TODAY };
  const holds = [
    aHold("tie-in-owner-unknown", "T3", stops),
    aHold("tie-in-owner-unknown", "T6", stops),
    aHold("easement-missing", "9 Ropewalk Lane", ["submission", "digging"]),
    aHold("land-unknown", "land over “Dig” from 4.0 to 8.0 ft", ["digging"]),
    aHold("crossing-seen", "Run 1", ["digging"], { waiver }),
  ];
  expect(due(aFile(), { holds })).toEqual([
    [
      "blocked",
      null,
      "authority",
      "9 Ropewalk Lane (easement not on file) stops submission and digging",
    ],
    [
      "blocked",
      null,
      "who",
      "Land over “Dig” from 4.0 to 8.0 ft (land owner not on file) stops digging",
    ],
    ["blocked", null, "reconcile", "T3 and T6 (owner not proven) stop capping and lining"],
  ]);
});

test("dueThings() names who refused and who withdrew", () => {
  const by = (kind: "dig" | "pay", state: "refused" | "withdrawn") =>
    aConsent(kind, { kind, partyId: "ada", propertyId: "p", state });
  const file = aFile({ ...HOUSE, consents: [by("dig", "refused"), by("pay", "withdrawn")] });
  expect(due(file)).toEqual([
    ["blocked", null, "notices", "Ada Winfield refused consent to dig for 14 Fennel Row"],
    ["blocked", null, "cost", "Ada Winfield withdrew consent to pay for 14 Fennel Row"],
  ]);
});

test("dueThings() tells a split out of date, old signatures, and who has yet to agree", () => {
  const splits = [
    aSplit("s", {
      basis: "b",
      sentAt: "2026-11-16T17:00:00.000Z",
      shares: [{ propertyId: "p", tieInId: null, amount: 50_000, recoverable: 0 }],
    }),
  ];
  const file = aFile({ ...HOUSE, splits });
  expect(due(file, { splits: [anOutcome(file)] })).toEqual([
    ["waiting", null, "cost", "Not yet agreed to pay: 14 Fennel Row"],
  ]);
  const signed = aConsent("c", {
    kind: "pay",
    partyId: "ada",
    propertyId: "p",
    amount: 40_000,
    splitId: "s",
  });
  const old = aFile({ ...HOUSE, splits, consents: [signed] });
  expect(due(old, { splits: [anOutcome(old, { basis: "other" })] })).toEqual([
    ["due", null, "cost", "Signed for an earlier amount: 14 Fennel Row"],
    ["due", null, "cost", "The split is out of date"],
  ]);
});

test("dueThings() tells a permit by whose move it is", () => {
  const at = (state: "corrections" | "in-review" | "working") =>
    due(
      aFile({
        permits: [aPermit("p")],
        permitSteps: [aPermitStep("s", "p", { state, on: "2026-11-24" })],
      }),
    );
  expect(at("corrections")).toEqual([
    ["due", null, "authority", "Side sewer permit needs corrections (since yesterday)"],
  ]);
  expect(at("in-review")).toEqual([
    ["waiting", null, "authority", "Side sewer permit is in review (since yesterday)"],
  ]);
  expect(at("working")).toEqual([]);
});

test("inOrder() puts late before due before blocked before waiting, then by day", () => {
  const thing = (kind: "late" | "due" | "blocked" | "waiting", on: string | null) =>
    ({ lineId: "l", sentence: "", question: "schedule", waitsOn: "office", kind, on }) as const;
  const things = [
    thing("waiting", "2026-11-26"),
    thing("blocked", null),
    thing("due", null),
    thing("due", "2026-12-01"),
    thing("late", "2026-11-20"),
    thing("late", "2026-11-18"),
  ];
  expect(inOrder(things).map(({ kind, on }) => [kind, on])).toEqual([
    ["late", "2026-11-18"],
    ["late", "2026-11-20"],
    ["due", "2026-12-01"],
    ["due", null],
    ["blocked", null],
    ["waiting", "2026-11-26"],
  ]);
});

test("summaryOf() says the two most pressing things of a line, and the page of the first", () => {
  const file = aFile({
    ...HOUSE,
    notices: [aNotice("n", { partyId: "ada", state: "sent", replyBy: "2026-11-20" })],
    permits: [aPermit("p")],
  });
  const report = aReport({ today: TODAY, clocks: clocksOf(file, TODAY) });
  expect(summaryOf(file, report)).toMatchObject({
    lineId: "line-1",
    sentence: "1 reply overdue since Friday, November 20. Side sewer permit is being drafted",
    question: "notices",
    pressing: 100,
  });
});

test("summaryOf() falls back on what would close the most pressing question", () => {
  expect(summaryOf(aFile(), aReport({ today: TODAY }))).toMatchObject({
    sentence: "Enter the properties on the line and who owns them",
    question: "who",
    pressing: 50,
  });
  const closed = aFile({ line: { closedOn: TODAY } });
  expect(summaryOf(closed, aReport())).toMatchObject({
    sentence: "Closed",
    question: null,
    pressing: 0,
  });
});
