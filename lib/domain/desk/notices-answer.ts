import type { LineFile } from "../facts/line-file.ts";
import type { Reply as LetterReply } from "../facts/notice.ts";
import { COPY_ROLES } from "../facts/party.ts";
import type { Report } from "../findings/report.ts";
import { type Chase, chaseList, isReached } from "../notices/told.ts";
import { waitingReplies } from "../party/reply.ts";
import { sayParty } from "../party/say.ts";
import { streetOf } from "../party/stakeholders.ts";
import { forCount, sayAll, sayCount, sayParts } from "../say/count.ts";
import { sayList } from "../say/say-list.ts";
import { repliedTo, sayReplier } from "./replied-to.ts";
import { type Opening, PRESSING, type Reply, replyWith } from "./reply.ts";
import { onTheLine } from "./who-answer.ts";

/** `7 of 9 reached; 2 replies wait; 1 letter came back`. */
export function noticesAnswer(file: LineFile, report: Report): Reply {
  const audience = audienceOf(file);
  const waiting = waitingReplies(file);
  if (audience.all.length === 0 && file.notices.length === 0 && waiting.length === 0)
    return replyWith("No one to notify yet", [
      { closes: "Enter who is on the line", pressing: PRESSING.ordinary },
    ]);
  const chases = chaseList(file, report.today);
  const back = chases.filter(({ reason }) => reason === "came-back");
  const drafts = file.notices.filter(({ state }) => state === "draft").length;
  const sentence = sayParts([
    audience.all.length === 0 ? "" : reachedWords(audience),
    waitingWords(waiting),
    back.length === 0 ? "" : `${sayCount(back.length, "letter")} returned`,
    drafts === 0 ? "" : `${sayCount(drafts, "letter")} drafted, not sent`,
  ]);
  return replyWith(sentence, [
    ...waitingOpening(file, report, waiting),
    ...backOpening(
      file,
      back.map(({ partyId }) => partyId),
    ),
    ...lateOpening(file, chases),
    ...unreachedOpening(file, audience),
  ]);
}

function waitingWords(waiting: readonly LetterReply[]): string {
  const objections = waiting.filter(({ kind }) => kind === "disagrees").length;
  if (waiting.length === 0) return "";
  const words = `${sayCount(waiting.length, "reply", "replies")} to answer`;
  return objections === 0 ? words : `${words}, ${sayCount(objections, "objection")} among them`;
}

/** An objection presses like a silence past its day, or more: whoever speaks comes first. */
function waitingOpening(
  file: LineFile,
  { today }: Report,
  waiting: readonly LetterReply[],
): Opening[] {
  if (waiting.length === 0) return [];
  const presses = waiting.some(({ kind, noticeId }) => {
    const replyBy = file.notices.find(({ id }) => id === noticeId)?.replyBy ?? null;
    return kind === "disagrees" || (replyBy !== null && replyBy < today);
  });
  const repliers = waiting.flatMap((reply) => {
    const to = repliedTo(file, reply);
    return to === null ? [] : [sayReplier(file, to)];
  });
  const names = sayList([...new Set(repliers)], 4);
  const what = waiting.every(({ kind }) => kind === "disagrees")
    ? forCount(waiting.length, "the objection", "the objections")
    : forCount(waiting.length, "the reply", "the replies");
  return [
    {
      closes: `Answer ${what} of ${names}`,
      pressing: presses ? PRESSING.late : PRESSING.soon,
    },
  ];
}

/** Whom the letters are for, and how far they have got with each. */
interface Audience {
  readonly all: readonly string[];
  /** Something shows that a letter is there. */
  readonly reached: readonly string[];
  /** A letter went, and nothing shows yet that it arrived. */
  readonly written: readonly string[];
}

/** Every party with a role on a property that has a stake in the pipe, but who only gets copies. */
function audienceOf(file: LineFile): Audience {
  const lots = new Set(onTheLine(file).map(({ id }) => id));
  const roles = file.roles.filter(
    ({ propertyId, role }) => lots.has(propertyId) && !COPY_ROLES.includes(role),
  );
  const all = [...new Set(roles.map(({ partyId }) => partyId))];
  const reached = all.filter((partyId) => isReached(file, partyId));
  const sent = new Set(
    file.notices.filter(({ state }) => state === "sent").map(({ partyId }) => partyId),
  );
  return { all, reached, written: all.filter((id) => sent.has(id) && !reached.includes(id)) };
}

function reachedWords(audience: Audience): string {
  const { all, reached, written } = audience;
  if (reached.length === all.length)
    return all.length === 1 ? "1 of 1 reached" : `${sayAll(all.length)} reached`;
  if (written.length === 0 && reached.length === 0) return "no letters sent yet";
  if (reached.length === 0)
    return `${written.length} of ${all.length} sent a letter, delivery not confirmed`;
  const more = written.length === 0 ? "" : `, ${written.length} more sent a letter`;
  return `${reached.length} of ${all.length} reached${more}`;
}

function backOpening(file: LineFile, partyIds: readonly string[]): Opening[] {
  if (partyIds.length === 0) return [];
  const names = namesOf(file, partyIds);
  const letter = forCount(partyIds.length, "the letter", "the letters");
  return [{ closes: `Redeliver ${letter} to ${names} another way`, pressing: PRESSING.soon }];
}

function lateOpening(file: LineFile, chases: readonly Chase[]): Opening[] {
  const late = chases.filter(({ reason }) => reason === "reply-late" || reason === "not-settled");
  if (late.length === 0) return [];
  const names = namesOf(
    file,
    late.map(({ partyId }) => partyId),
  );
  return [
    {
      closes: `Follow up on the overdue ${forCount(late.length, "reply", "replies")} from ${names}`,
      pressing: PRESSING.late,
    },
  ];
}

function unreachedOpening(file: LineFile, { all, reached, written }: Audience): Opening[] {
  const open: Opening[] = [];
  const untold = all.filter((id) => !reached.includes(id) && !written.includes(id));
  const begun = reached.length > 0 || written.length > 0;
  if (untold.length > 0)
    open.push({
      closes: `Write to ${namesOf(file, untold)}`,
      pressing: begun ? PRESSING.ordinary : PRESSING.stalls,
    });
  if (written.length > 0)
    open.push({
      closes: `Confirm delivery of ${forCount(written.length, "the letter", "the letters")} to ${namesOf(file, written)}: a reply, a receipt, or hand delivery`,
      pressing: PRESSING.someTime,
    });
  return open;
}

function namesOf(file: LineFile, partyIds: readonly string[]): string {
  const names = [...new Set(partyIds)].map(
    (partyId) => residentOf(file, partyId) ?? sayParty(file, partyId),
  );
  return sayList(names, 4);
}

/** Who is not known by name is spoken of by the address: several of them are not one and the same. */
function residentOf({ parties, roles, properties }: LineFile, partyId: string): string | null {
  if (parties.find(({ id }) => id === partyId)?.kind !== "resident") return null;
  const role = roles.find((each) => each.partyId === partyId);
  const property = properties.find(({ id }) => id === role?.propertyId);
  return property === undefined ? null : `the resident of ${streetOf(property.address)}`;
}
