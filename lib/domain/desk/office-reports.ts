import type { LineFile } from "../facts/line-file.ts";
import type { Reply } from "../facts/notice.ts";
import { accountEntries, accountsIn } from "../ledger/accounts.ts";
import { AGES, type Age, agingOf } from "../ledger/aging.ts";
import type { Cents } from "../money/cents.ts";
import { type ChaseReason, chaseList } from "../notices/told.ts";
import { waitingReplies } from "../party/reply.ts";
import { sayParty, sayProperty } from "../party/say.ts";
import { moverOf, type PermitMover } from "../permit/mover.ts";
import { permitName } from "../permit/say.ts";
import { PERMIT_STATE_WORDS } from "../permit/state-words.ts";
import { lastStepOf, permitStateOf, stepsOf } from "../permit/steps.ts";
import type { Day } from "../time/day.ts";
import { daysBetween } from "../time/days.ts";
import { beginWithReplier, repliedTo } from "./replied-to.ts";

/** What the office takes out over all its lines. */
export const OFFICE_REPORTS = ["permits", "money", "replies"] as const;
export type OfficeReport = (typeof OFFICE_REPORTS)[number];

/** Numbers stay numbers, so that a spreadsheet adds them up; what is not there is empty. */
export type ReportCell = string | number;

interface ReportKind {
  readonly title: string;
  readonly note: string;
  readonly head: readonly string[];
  /** The rows of one line, as it stands on a day. */
  readonly rows: (file: LineFile, today: Day) => ReportCell[][];
}

const AGE_HEADS: Readonly<Record<Age, string>> = {
  "not-due": "Not yet due",
  "to-30": "1 to 30 days",
  "to-60": "31 to 60 days",
  "to-90": "61 to 90 days",
  "over-90": "Over 90 days",
};

/** Each with its columns; days as `yyyy-mm-dd` and dollars with two decimals, for a spreadsheet. */
export const REPORT_KINDS: Readonly<Record<OfficeReport, ReportKind>> = {
  permits: {
    title: "Permits by status and age",
    note: "Each permit of each line, closed files included: its status, since when, and whose move it is.",
    head: [
      "Line",
      "Town",
      "File",
      "Authority",
      "Permit",
      "Status",
      "Since",
      "Days in status",
      "First step",
      "Days in all",
      "Expires",
      "Whose move",
    ],
    rows: permitRows,
  },
  money: {
    title: "Money outstanding",
    note: "Each account with something open, by party and line, with how old it is.",
    head: [
      "Line",
      "Town",
      "Property",
      "Party",
      "Invoiced",
      "Received",
      "Credited",
      "Refunded",
      "Open",
      ...AGES.map((age) => AGE_HEADS[age]),
      "Overdue",
      "Oldest due",
    ],
    rows: moneyRows,
  },
  replies: {
    title: "Replies due",
    note: "Letters whose reply is awaited or overdue, and replies that came in and wait for us.",
    head: [
      "Line",
      "Town",
      "Party",
      "Property",
      "Letter or invoice",
      "What is due",
      "By",
      "Days late",
      "From",
    ],
    rows: replyRows,
  },
};

const MOVER_WORDS: Readonly<Record<PermitMover, string>> = {
  office: "our office",
  authority: "the authority",
  crew: "the crew",
  nobody: "no one",
};

function permitRows(file: LineFile, today: Day): ReportCell[][] {
  return file.permits.map((permit) => {
    const state = permitStateOf(file, permit);
    const since = lastStepOf(file, permit)?.on ?? "";
    const first = stepsOf(file, permit)[0]?.on ?? "";
    return [
      file.line.name,
      file.line.town,
      file.line.closedOn === null ? "open" : "closed",
      file.authority?.name ?? "",
      permitName(permit),
      PERMIT_STATE_WORDS[state],
      since,
      daysSince(since, today),
      first,
      daysSince(first, today),
      permit.expiresOn ?? "",
      MOVER_WORDS[moverOf(state)],
    ];
  });
}

function daysSince(day: Day, today: Day): ReportCell {
  return day === "" ? "" : daysBetween(day, today);
}

function moneyRows(file: LineFile, today: Day): ReportCell[][] {
  return accountsIn(file)
    .filter(({ open }) => open !== 0)
    .map((account) => {
      const { ages, overdue, oldestDue } = agingOf(accountEntries(file, account), today);
      return [
        file.line.name,
        file.line.town,
        sayProperty(file, account.propertyId),
        sayParty(file, account.partyId),
        ...[account.invoiced, account.received, account.credited, account.refunded].map(dollars),
        dollars(account.open),
        ...AGES.map((age) => dollars(ages[age])),
        dollars(overdue),
        oldestDue ?? "",
      ];
    });
}

/** Whole cents as dollars; a spreadsheet shows what it was given. */
function dollars(cents: Cents): number {
  return cents / 100;
}

const AWAITED: Partial<Record<ChaseReason, string>> = {
  "reply-late": "reply overdue",
  "reply-awaited": "reply awaited",
  "not-settled": "replied, but not to what was asked",
};

function replyRows(file: LineFile, today: Day): ReportCell[][] {
  const awaited = chaseList(file, today).flatMap(({ noticeId, reason, replyBy }) => {
    const due = AWAITED[reason];
    return due === undefined
      ? []
      : [replyRow(file, { noticeId, entryId: null, due, by: replyBy, from: "them" })];
  });
  const ours = waitingReplies(file).map(({ noticeId, entryId, receivedOn }) =>
    replyRow(file, {
      ...{ noticeId, entryId, due: "our answer to their reply", by: receivedOn, from: "us" },
    }),
  );
  return [...awaited, ...ours].map((row) => row(today));
}

interface ReplyDue extends Pick<Reply, "noticeId" | "entryId"> {
  readonly due: string;
  readonly by: Day | null;
  readonly from: "them" | "us";
}

function replyRow(file: LineFile, { due, by, from, ...reply }: ReplyDue) {
  return (today: Day): ReportCell[] => {
    const to = repliedTo(file, reply);
    const late = by === null ? 0 : Math.max(0, daysBetween(by, today));
    return [
      file.line.name,
      file.line.town,
      to === null ? "" : beginWithReplier(file, to),
      to?.propertyId ? sayProperty(file, to.propertyId) : "",
      to?.what ?? "",
      due,
      by ?? "",
      late,
      from === "us" ? "our office" : "the reader",
    ];
  };
}
