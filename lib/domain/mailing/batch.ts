import type { LineFile, Office } from "../facts/line-file.ts";
import type { Delivery, LetterKind, Notice } from "../facts/notice.ts";
import type { Report } from "../findings/report.ts";
import { arrivalOf, cameBack, type LetterStanding } from "../notices/arrival.ts";
import type { Recipient } from "../paper/addressed.ts";
import { copiesOf, isCopy } from "../paper/copy.ts";
import { letterGaps } from "../paper/gaps.ts";
import { recipientsOf } from "../paper/recipients.ts";
import { addressProblems } from "../party/address-check.ts";
import { mailTo } from "../party/mail-to.ts";
import { inMailingOrder } from "./mailing-order.ts";

/** One letter of a batch: who gets it, how far it is, and how its reader can be reached. */
export interface BatchRow {
  readonly recipient: Recipient;
  /** The newest letter of this kind to them about the same; null while none is written. */
  readonly notice: Notice | null;
  /** Proposed by the file; false: a person added them. */
  readonly isProposed: boolean;
  /** A copy of the letter to the owner, for a lender's file. */
  readonly isCopy: boolean;
  readonly standing: "none" | "draft" | LetterStanding;
  readonly answered: boolean;
  readonly attempt: Delivery | null;
  /** What a draft still lacks, in sentences. */
  readonly gaps: readonly string[];
  /** Why no mail gets there; null: it does. */
  readonly noMail: string | null;
  /** Why no email gets there; null: it does. */
  readonly noEmail: string | null;
}

interface Facts {
  readonly file: LineFile;
  readonly report: Report;
  readonly office: Office;
}

/** Everybody who gets a kind of letter, or has it already, in mailing order. */
export function batchOf({ file, report, office }: Facts, kind: LetterKind): BatchRow[] {
  const proposed = [...recipientsOf(file, report, kind), ...copiesOf(file, report, kind)];
  const written = file.notices.filter((notice) => notice.kind === kind);
  const added = written.filter((notice) => !proposed.some((one) => isTo(notice, one)));
  const recipients = [
    ...proposed.map((recipient) => ({ recipient, isProposed: true })),
    ...newestOf(added).map((recipient) => ({ recipient, isProposed: false })),
  ];
  const rows = recipients.map(({ recipient, isProposed }) => {
    const notice = written.findLast((each) => isAbout(each, recipient)) ?? null;
    const arrival = notice === null || notice.state === "draft" ? null : arrivalOf(file, notice);
    return {
      recipient,
      isProposed,
      isCopy: isCopy(file, recipient),
      notice,
      standing: arrival?.state ?? (notice === null ? ("none" as const) : ("draft" as const)),
      answered: notice !== null && file.replies.some(({ noticeId }) => noticeId === notice.id),
      attempt: arrival?.attempt ?? null,
      gaps: notice?.state === "draft" ? letterGaps({ file, report, office, notice }) : [],
      noMail: noMailTo(file, recipient),
      noEmail: noEmailTo(file, recipient.partyId),
    };
  });
  return inMailingOrder(rows, ({ recipient }) => mailTo(file, recipient));
}

/** A letter on an older version of the split is not the one that is due now. */
function isAbout(notice: Notice, one: Recipient): boolean {
  return isTo(notice, one) && notice.splitId === one.splitId;
}

function isTo(notice: Notice, { partyId, propertyId, tieInId, paperId = "" }: Recipient): boolean {
  return (
    notice.partyId === partyId &&
    notice.propertyId === propertyId &&
    notice.tieInId === tieInId &&
    notice.paperId === paperId
  );
}

function newestOf(notices: readonly Notice[]): Recipient[] {
  return notices
    .filter((notice, at) => !notices.slice(at + 1).some((later) => isAbout(later, notice)))
    .map(({ partyId, propertyId, tieInId, splitId, paperId }) => ({
      ...{ partyId, propertyId, tieInId, splitId, paperId },
    }));
}

/** Why a carrier could not bring it: what the address lacks. */
export function noMailTo(
  file: LineFile,
  about: Pick<Recipient, "partyId" | "propertyId">,
): string | null {
  const address = mailTo(file, about);
  if (address.street.trim() === "") return "no mailing address on file";
  if (address.city.trim() === "") return "the mailing address has no city";
  // An address abroad has its state and code in the city line.
  const abroad = address.state.trim() === "" && address.zip.trim() === "";
  if (!abroad && address.zip.trim() === "") return "the mailing address has no ZIP code";
  const [wrong] = addressProblems(address);
  if (wrong === undefined) return null;
  return wrong.field === "zip" ? "the ZIP code is not valid" : "the state is not valid";
}

function noEmailTo({ parties }: LineFile, partyId: string): string | null {
  const email = parties.find(({ id }) => id === partyId)?.email.trim() ?? "";
  if (email === "") return "no email address on file";
  return /^[^\s@]+@[^\s@]+\.[^\s@]+$/.test(email) ? null : "the email address is not valid";
}

/** How far a batch is, counted by letter. */
export interface BatchCount {
  readonly all: number;
  readonly toWrite: number;
  readonly drafts: number;
  readonly incomplete: number;
  readonly sent: number;
  readonly arrived: number;
  readonly cameBack: number;
  readonly answered: number;
  /** Neither by mail nor by email. */
  readonly unreached: number;
}

export function countBatch(rows: readonly BatchRow[]): BatchCount {
  const many = (is: (row: BatchRow) => boolean) => rows.filter(is).length;
  return {
    all: rows.length,
    toWrite: many(({ standing }) => standing === "none"),
    drafts: many(({ standing }) => standing === "draft"),
    incomplete: many(({ gaps }) => gaps.length > 0),
    sent: many(isOut),
    arrived: many(({ standing }) => standing === "arrived"),
    cameBack: many(({ standing }) => standing !== "none" && cameBack(standing)),
    answered: many(({ answered }) => answered),
    unreached: many(({ noMail, noEmail }) => noMail !== null && noEmail !== null),
  };
}

/** Whether a letter of the batch has gone out. */
export function isOut({ standing }: BatchRow): boolean {
  return standing !== "none" && standing !== "draft";
}
