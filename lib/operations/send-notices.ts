import { createHash } from "node:crypto";
import type { Db } from "#db/open.ts";
import { insertJob } from "#db/queries/job.ts";
import { getOffice } from "#db/queries/office.ts";
import { insertOutgoing } from "#db/queries/outgoing.ts";
import { insertRow, updateRow } from "#db/queries/row.ts";
import { type AddressStop, addressStop } from "#lib/domain/consent/private-link.ts";
import { LINK_WORDS } from "#lib/domain/consent/words.ts";
import type { LineFile, Office } from "#lib/domain/facts/line-file.ts";
import {
  DELIVERY_METHODS,
  type Delivery,
  type DeliveryMethod,
  type Notice,
} from "#lib/domain/facts/notice.ts";
import { METHOD_WORDS } from "#lib/domain/facts/notice-words.ts";
import { nameRow } from "#lib/domain/facts/references.ts";
import { mayDo } from "#lib/domain/facts/user.ts";
import type { Report } from "#lib/domain/findings/report.ts";
import { composeLetter } from "#lib/domain/paper/compose.ts";
import { LETTER_WORDS } from "#lib/domain/paper/facts.ts";
import { letterGaps } from "#lib/domain/paper/gaps.ts";
import { LETTER_PLANS } from "#lib/domain/paper/kinds/index.ts";
import type { Letter } from "#lib/domain/paper/letter.ts";
import { reportOn } from "#lib/domain/report/report-on.ts";
import { heldWords, holdsAgainst } from "#lib/domain/stops/stopped-by.ts";
import type { Day } from "#lib/domain/time/day.ts";
import { ok, type Result } from "#lib/result.ts";
import { keepLinkSecret } from "#lib/storage/link-secret.ts";
import { dayOf } from "../domain/time/moment.ts";
import type { Act, Refusal } from "./act.ts";
import { callFirstWords } from "./call-first.ts";
import { changeLine, refuse } from "./change.ts";
import { findDraft } from "./draft.ts";
import { isDemandable } from "./draft-notices.ts";
import { newLink, putLink, wrongDays } from "./link-rows.ts";
import { outgoingOf, SECRET_GAP, wrongAddress } from "./outgoing.ts";
import { pastDay } from "./past-day.ts";
import { CODED_METHODS, type CodeWish, putCode } from "./printed-codes.ts";
import { wrongNumber } from "./record-delivery.ts";
import { waitingJob } from "./waiting-job.ts";

interface Sending {
  readonly lineId: string;
  readonly noticeIds: readonly string[];
  readonly method: DeliveryMethod;
  readonly sentOn: Day;
  /** Numbers of the post, by notice. */
  readonly tracking?: Readonly<Record<string, string>>;
  /** Why letters that still lack something go all the same; empty: they do not. */
  readonly despite?: string;
  /** By mail message: puts a private link into each message, above the letter. */
  readonly links?: LinkWish;
  /** On paper: prints them all in mailing order, each with the code of its private page where one is wished. */
  readonly print?: { readonly codes?: CodeWish };
}

interface LinkWish {
  /** Days that each is good for. */
  readonly days: number;
  /** How this office is reached from outside: `https://office.example.com`; null: nobody set it. */
  readonly address: string | null;
  /** 32 random bytes as base64url, new each time; kept apart until the message is sent. */
  readonly newSecret: () => string;
}

interface Sent {
  readonly notice: Notice;
  /** What it lacks, in sentences. */
  readonly gaps: readonly string[];
  readonly letter: Letter;
  readonly delivery: Delivery;
}

/**
 * Records drafts as sent: each letter is composed for the last time and frozen, byte for byte, with
 * its hash, and gets its delivery; by mail message it goes into the outbox. Refuses all of them where
 * one is no draft, is held, has no address to go to, or lacks something and no admin gives a reason to
 * send it all the same (name, reason and gaps stand in the history), and private links while the office has no
 * address that opens outside.
 */
export function sendNotices(
  act: Act,
  sending: Sending,
): Result<{ deliveryIds: string[] }, Refusal> {
  const { lineId, noticeIds, method } = sending;
  const deal = { lineId, deed: "work-the-file", action: "send-notices" } as const;
  return changeLine(act, deal, (file, db) => {
    const office = getOffice(db);
    if (office === null) return refuse("missing-value", "", "Set up the office first");
    const day = checkSending(act, sending);
    if (day !== null) return day;
    const report = reportOn(file, sending.sentOn);
    const sent: Sent[] = [];
    for (const noticeId of noticeIds) {
      const one = prepare(act, { file, report, office, sending, noticeId });
      if (!one.ok) return one;
      sent.push(one.value);
    }
    const lacking = sent.filter(({ gaps }) => gaps.length > 0);
    const despite = sending.despite?.trim() ?? "";
    const stopped = lacksStop(act, file, lacking, despite);
    if (stopped !== null) return stopped;
    return ok({
      value: { deliveryIds: sent.map(({ delivery }) => delivery.id) },
      sentence: `Sent ${namesOf(file, sent)} (${METHOD_WORDS[sending.method]}).${despiteWords(file, lacking, despite)}`,
      detail: sent.map(({ notice, delivery, gaps }) => ({
        noticeId: notice.id,
        kind: notice.kind,
        sha256: notice.frozenHash,
        delivery,
        ...(gaps.length === 0 ? {} : { gaps, despite }),
      })),
      write: (one) => {
        for (const each of sent) write(one, { act, file, office, sent: each, sending });
        if (sending.print !== undefined && method !== "mail-message")
          insertJob(one, waitingJob(act, { lineId, kind: "mailing", subjectIds: noticeIds }));
      },
    });
  });
}

function namesOf(file: LineFile, sent: readonly Sent[]): string {
  return sent.map(({ notice }) => nameRow(file, "notices", notice.id)).join(", ");
}

/** What is lacking stops the letters, unless an admin says why they go all the same. */
function lacksStop(act: Act, file: LineFile, lacking: readonly Sent[], despite: string) {
  if (lacking.length === 0 || (despite !== "" && mayOverride(act))) return null;
  return refuse("missing-value", "despite", lackWords(file, lacking, mayOverride(act)));
}

/** What each letter lacks, for the person who wants to send it. */
function lackWords(file: LineFile, lacking: readonly Sent[], mayOverride: boolean): string {
  const each = lacking.map(
    ({ notice, gaps }) => `${nameRow(file, "notices", notice.id)}: ${gaps.join(" ")}`,
  );
  return mayOverride
    ? `${each.join(" ")} Enter what is missing, or enter here why it is sent anyway`
    : `${each.join(" ")} Enter what is missing; only an admin may send it anyway, with a reason`;
}

/** Sending what is incomplete is an admin's decision, in their name. */
function mayOverride({ actor }: Act): boolean {
  return mayDo(actor.role, "run-the-office");
}

function despiteWords(file: LineFile, lacking: readonly Sent[], despite: string): string {
  if (lacking.length === 0) return "";
  return ` Sent incomplete, because: ${despite} (${namesOf(file, lacking)}).`;
}

function checkSending(act: Act, { noticeIds, method, sentOn, links, print }: Sending) {
  if (noticeIds.length === 0) return refuse("missing-value", "noticeIds", "Choose a letter");
  if (new Set(noticeIds).size !== noticeIds.length)
    return refuse("bad-value", "noticeIds", "A letter was chosen twice");
  if (!DELIVERY_METHODS.includes(method))
    return refuse("bad-value", "method", "Choose a delivery method");
  const wished = links ?? print?.codes;
  const wrong = wished === undefined ? null : (wrongDays(wished.days) ?? deadLinks(wished.address));
  if (wrong !== null) return wrong;
  return pastDay(act, { day: sentOn, path: "sentOn" });
}

/** A link that opens nothing for its reader is worse than none. */
export function deadLinks(address: string | null) {
  const stop = addressStop(address);
  return stop === null ? null : refuse("not-in-this-state", "links", ADDRESS_WORDS[stop](address));
}

/** Why private links can't go out by mail, and what to do. */
export const ADDRESS_WORDS: Record<AddressStop, (address: string | null) => string> = {
  none: () =>
    "Private links need the web address at which neighbors reach this office. Ask your administrator to set it; until then send the letters without links",
  "this-machine": (address) =>
    `Private links would start with ${address}, which opens on this computer only. Ask your administrator to set the web address that neighbors reach; until then send the letters without links`,
  "own-network": (address) =>
    `Private links would start with ${address}, which opens inside your own network only. Ask your administrator to set the web address that neighbors reach; until then send the letters without links`,
};

interface Preparing {
  readonly file: LineFile;
  readonly report: Report;
  readonly office: Office;
  readonly sending: Sending;
  readonly noticeId: string;
}

function prepare(act: Act, preparing: Preparing): Result<Sent, Refusal> {
  const { file, report, office, sending, noticeId } = preparing;
  const draft = findDraft(file, noticeId);
  if (!draft.ok) return draft;
  const held = heldBack(file, report, draft.value);
  if (held !== null) return refuse("held", noticeId, held);
  const party = file.parties.find(({ id }) => id === draft.value.partyId);
  const wrong = sending.method === "mail-message" ? wrongAddress(party) : null;
  if (wrong !== null) return refuse("missing-value", noticeId, wrong);
  const facts = { file, report, office, notice: draft.value };
  const letter = composeLetter(facts);
  const frozen = JSON.stringify(letter);
  const notice: Notice = {
    ...draft.value,
    state: "sent",
    frozen,
    frozenHash: createHash("sha256").update(frozen).digest("hex"),
    sentAt: act.now,
  };
  const delivery: Delivery = {
    id: act.newId(),
    noticeId,
    method: sending.method,
    sentOn: sending.sentOn,
    by: act.actor.name,
    tracking: sending.tracking?.[noticeId] ?? "",
    outcome: "on-its-way",
    outcomeOn: null,
    proofUploadId: null,
    note: "",
    at: "",
    place: "",
    handedTo: "",
    declaredUploadId: null,
  };
  const number = wrongNumber(delivery.method, delivery.tracking);
  if (number !== null)
    return refuse("bad-value", noticeId, `${nameRow(file, "notices", noticeId)}: ${number}`);
  const gaps = letterGaps(facts, { method: sending.method });
  return ok({ notice, letter, delivery, gaps });
}

/** Why a letter may not go: what it rests on is not settled and nobody waived that. */
function heldBack(file: LineFile, report: Report, notice: Notice): string | null {
  if (LETTER_PLANS[notice.kind].named === "always" && !isDemandable(file, report, notice))
    return `Nothing proves yet that ${nameRow(file, "parties", notice.partyId)} owes a share`;
  const plan = LETTER_PLANS[notice.kind];
  const uncalled = plan
    .callsFirst?.(file, report, notice.propertyId)
    .flatMap((asked) => callFirstWords(file, asked, asked.places) ?? [])[0];
  if (uncalled !== undefined) return uncalled;
  const deeds = plan.deeds?.(file, report) ?? [];
  const held = holdsAgainst(report.holds, deeds);
  return held.length === 0 ? null : heldWords(held, deeds);
}

interface Writing {
  readonly act: Act;
  readonly file: LineFile;
  readonly office: Office;
  readonly sent: Sent;
  readonly sending: Sending;
}

function write(db: Db, { act, file, office, sent, sending }: Writing): void {
  const lineId = file.line.id;
  const { notice, letter, delivery } = sent;
  updateRow(db, "notices", { lineId, row: notice });
  insertRow(db, "deliveries", { lineId, row: delivery });
  const split = file.splits.find(({ id }) => id === notice.splitId);
  if (split && split.sentAt === null)
    updateRow(db, "splits", { lineId, row: { ...split, sentAt: act.now } });
  const codes = sending.print?.codes;
  if (codes !== undefined && CODED_METHODS.includes(delivery.method))
    putCode(db, act, { lineId, notice, wish: codes });
  if (delivery.method !== "mail-message") return;
  const party = file.parties.find(({ id }) => id === notice.partyId);
  if (!party) return;
  const { above, secret } = linkWords(db, act, {
    ...{ lineId, notice, links: sending.links, zone: office.zone },
  });
  const outgoing = outgoingOf(act, { lineId, letter, delivery, party, office, above });
  // Before the message is: what waits without its secret could never be sent.
  if (secret !== null) keepLinkSecret(act.dataFolder, outgoing.id, secret);
  insertOutgoing(db, outgoing);
}

/** Makes the private link of one letter and says it in words, with a gap for the secret. */
function linkWords(
  db: Db,
  act: Act,
  asked: { lineId: string; notice: Notice; links: LinkWish | undefined; zone: string },
): { readonly above: string; readonly secret: string | null } {
  const { lineId, notice, links, zone } = asked;
  if (links === undefined) return { above: "", secret: null };
  const secret = links.newSecret();
  const link = newLink(act, { lineId, notice, days: links.days, secret });
  putLink(db, act, link);
  const { language, alsoIn } = notice;
  const url = `${links.address}/n/${SECRET_GAP}`;
  const said = (alsoIn === null ? [language] : [language, alsoIn]).map((each) =>
    LINK_WORDS[each].linkInMail(url, LETTER_WORDS[each].day(dayOf(link.expiresAt, zone))),
  );
  return { above: said.join("\n\n"), secret };
}
