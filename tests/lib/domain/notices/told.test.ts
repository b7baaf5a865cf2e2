import { expect, test } from "vitest";
import type { Consent } from "#lib/domain/facts/consent.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import type { Delivery, Notice, Reply } from "#lib/domain/facts/notice.ts";
import type { Party } from "#lib/domain/facts/party.ts";
import { chaseList, noChaseWords, toldOn } from "#lib/domain/notices/told.ts";
import { aConsent, aReply } from "../../../support/file.ts";

const TODAY = "2026-11-25";

function party(id: string): Party {
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
  };
}

function notice(id: string, rest: Partial<Notice> = {}): Notice {
  return {
    id,
    kind: "finding",
    partyId: "ann",
    propertyId: null,
    tieInId: null,
    splitId: null,
    language: "en",
    alsoIn: null,
    state: "sent",
    createdOn: "2026-11-02",
    createdBy: "Ruth",
    replyBy: null,
    ownWords: "",
    frozen: null,
    frozenHash: null,
    sentAt: null,
    uploadId: null,
    paperId: "",
    ...rest,
  };
}

function delivery(noticeId: string, rest: Partial<Delivery> = {}): Delivery {
  return {
    id: `${noticeId}-${rest.sentOn ?? "1"}`,
    noticeId,
    method: "certified",
    sentOn: "2026-11-03",
    by: "Ruth",
    tracking: "9407 5550",
    outcome: "on-its-way",
    outcomeOn: null,
    proofUploadId: null,
    at: "",
    place: "",
    handedTo: "",
    declaredUploadId: null,
    note: "",
    ...rest,
  };
}

const REPLY = aReply("r1", "n1", {
  receivedOn: "2026-11-10",
  dealtBy: "Ruth",
  dealtOn: "2026-11-11",
  dealtHow: "answered",
  dealtWords: "Thanked him",
});

interface Told {
  notices?: Notice[];
  deliveries?: Delivery[];
  replies?: Reply[];
  consents?: Consent[];
}

function fileOf({ notices = [], deliveries = [], replies = [], consents = [] }: Told): LineFile {
  return {
    parties: [party("ann"), party("ben")],
    notices,
    deliveries,
    replies,
    consents,
    roles: [],
  } as unknown as LineFile;
}

test("toldOn() lists every party, also one that was never written to", () => {
  const told = toldOn(fileOf({ notices: [notice("n1")] }));
  expect(told.kinds).toEqual(["finding"]);
  expect(told.rows.map((row) => [row.partyId, Object.keys(row.cells)])).toEqual([
    ["ann", ["finding"]],
    ["ben", []],
  ]);
});

test("toldOn() lets a delivered attempt outweigh a later one that came back", () => {
  const told = toldOn(
    fileOf({
      notices: [notice("n1")],
      deliveries: [
        delivery("n1", { outcome: "delivered", outcomeOn: "2026-11-05" }),
        delivery("n1", { sentOn: "2026-11-09", outcome: "returned" }),
      ],
    }),
  );
  expect(told.rows[0]?.cells.finding?.[0]).toMatchObject({
    state: "arrived",
    provenBy: "receipt",
    on: "2026-11-05",
    attempts: 2,
  });
});

test("toldOn() shows the newest of two letters of one kind", () => {
  const told = toldOn(
    fileOf({ notices: [notice("new", { createdOn: "2026-11-20", state: "draft" }), notice("n1")] }),
  );
  expect(told.rows[0]?.cells.finding).toHaveLength(1);
  expect(told.rows[0]?.cells.finding?.[0]).toMatchObject({ noticeId: "new", state: "draft" });
});

test("toldOn() keeps letters about two tie-ins apart", () => {
  const notices = [notice("n1", { tieInId: "t2" }), notice("n2", { tieInId: "t6" })];
  const told = toldOn(fileOf({ notices }));
  expect(told.rows[0]?.cells.finding?.map((cell) => cell.tieInId)).toEqual(["t2", "t6"]);
});

test("chaseList() puts what came back before what is late, and what is late before what is awaited", () => {
  const notices = [
    notice("awaited", { replyBy: "2026-12-01", kind: "test-visit" }),
    notice("late", { replyBy: "2026-11-24", kind: "entry-consent" }),
    notice("back", { kind: "spill" }),
    notice("moving", { partyId: "ben" }),
  ];
  const deliveries = [
    delivery("awaited", { outcome: "delivered" }),
    delivery("late", { outcome: "delivered" }),
    delivery("back", { outcome: "unclaimed" }),
    delivery("moving"),
  ];
  expect(
    chaseList(fileOf({ notices, deliveries }), TODAY).map((chase) => [
      chase.noticeId,
      chase.reason,
    ]),
  ).toEqual([
    ["back", "came-back"],
    ["late", "reply-late"],
    ["moving", "delivery-unknown"],
    ["awaited", "reply-awaited"],
  ]);
});

test("chaseList() does not call a reply late on its last day", () => {
  const late = chaseList(
    fileOf({
      notices: [notice("n1", { replyBy: TODAY })],
      deliveries: [delivery("n1", { outcome: "delivered" })],
    }),
    TODAY,
  );
  expect(late.map((chase) => chase.reason)).toEqual(["reply-awaited"]);
});

test("chaseList() leaves a letter alone once it was answered, and drafts altogether", () => {
  const answered = fileOf({
    notices: [notice("n1", { replyBy: "2026-11-01" }), notice("n2", { state: "draft" })],
    deliveries: [delivery("n1", { outcome: "returned" })],
    replies: [REPLY],
  });
  expect(chaseList(answered, TODAY)).toEqual([]);
});

test("chaseList() lets a letter be for which a newer one went, unless it is about another tie-in", () => {
  const old = notice("old", { replyBy: "2026-11-10", tieInId: "t2" });
  const newer = notice("newer", { createdOn: "2026-11-20", tieInId: "t2" });
  const other = notice("other", { createdOn: "2026-11-20", tieInId: "t6" });
  const chased = (notices: Notice[]) =>
    chaseList(fileOf({ notices }), TODAY).map(({ noticeId }) => noticeId);
  expect(chased([old, newer])).toEqual(["newer"]);
  expect(chased([old, other])).toContain("old");
});

test("chaseList() asks no more whether a letter arrived once a later one reached its party", () => {
  const notices = [notice("n1"), notice("n2", { kind: "close-out", createdOn: "2026-11-12" })];
  const mailed = delivery("n1", { method: "first-class" });
  const later = delivery("n2", { sentOn: "2026-11-12", outcome: "delivered" });
  const unknown = chaseList(fileOf({ notices, deliveries: [mailed] }), TODAY);
  expect(unknown.map(({ reason }) => reason)).toEqual(["delivery-unknown", "delivery-unknown"]);
  expect(chaseList(fileOf({ notices, deliveries: [mailed, later] }), TODAY)).toEqual([]);
});

test("chaseList() leaves what waits on the office to the office, and takes a signature for the answer", () => {
  const asked = notice("n1", { kind: "proposed-split", splitId: "s", replyBy: "2026-11-10" });
  const deliveries = [delivery("n1", { method: "first-class" })];
  const reply = { ...REPLY, kind: "asks", dealtBy: "", dealtOn: null, dealtHow: null } as const;
  const chased = (more: Told) =>
    chaseList(fileOf({ notices: [asked], deliveries, ...more }), TODAY).map(({ reason }) => reason);
  expect(chased({})).toEqual(["reply-late"]);
  expect(chased({ replies: [reply] })).toEqual([]);
  expect(chased({ replies: [{ ...REPLY, kind: "asks" }] })).toEqual(["not-settled"]);
  const signed = aConsent("c", { kind: "pay", partyId: "ann", propertyId: "p", splitId: "s" });
  expect(chased({ consents: [{ ...signed, propertyId: "other" }] })).toEqual(["reply-late"]);
  const own = { ...asked, propertyId: "p" };
  expect(chased({ notices: [own], consents: [signed] })).toEqual([]);
});

test("noChaseWords() says nothing of letters that never went", () => {
  expect(noChaseWords(fileOf({}))).toBe("Nothing to follow up: no letters sent yet.");
  expect(noChaseWords(fileOf({ notices: [notice("n1", { state: "draft" })] }))).toBe(
    "Nothing to follow up: no letters sent yet.",
  );
  const proven = { deliveries: [delivery("n1", { outcome: "delivered" })] };
  expect(noChaseWords(fileOf({ notices: [notice("n1")], ...proven }))).toBe(
    "Nothing to follow up: all letters were delivered.",
  );
});
