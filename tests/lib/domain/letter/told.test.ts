import { expect, test } from "vitest";
import type { LineFile } from "#lib/domain/file/line-file.ts";
import type { Delivery, Notice, Reply } from "#lib/domain/letter/notice.ts";
import { chaseList, toldOn } from "#lib/domain/letter/told.ts";
import type { Party } from "#lib/domain/party/party.ts";
import { aReply } from "../../../support/file.ts";

const TODAY = "2026-11-25";

function party(id: string): Party {
  return {
    id,
    kind: "person",
    name: id,
    mailing: null,
    email: "",
    phone: "",
    language: "en",
    needs: "",
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
    state: "sent",
    createdOn: "2026-11-02",
    createdBy: "Ruth",
    replyBy: null,
    ownWords: "",
    frozen: null,
    frozenHash: null,
    sentAt: null,
    uploadId: null,
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
    tracking: "",
    outcome: "on-its-way",
    outcomeOn: null,
    proofUploadId: null,
    note: "",
    ...rest,
  };
}

const REPLY = aReply("r1", "n1", { receivedOn: "2026-11-10" });

interface Told {
  notices?: Notice[];
  deliveries?: Delivery[];
  replies?: Reply[];
}

function fileOf({ notices = [], deliveries = [], replies = [] }: Told): LineFile {
  return {
    parties: [party("ann"), party("ben")],
    notices,
    deliveries,
    replies,
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
    state: "delivered",
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
    notice("awaited", { replyBy: "2026-12-01" }),
    notice("late", { replyBy: "2026-11-24" }),
    notice("back"),
    notice("moving"),
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
