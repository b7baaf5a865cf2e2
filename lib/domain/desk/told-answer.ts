import type { LineFile } from "../file/line-file.ts";
import type { Report } from "../file/report.ts";
import { cellOf, chaseList } from "../letter/told.ts";
import { sayList } from "../split/say-list.ts";
import { type Opening, PRESSING, type Reply, replyWith } from "./reply.ts";
import { forCount, sayAll, sayCount, sayParts, sayParty } from "./say.ts";
import { onTheLine } from "./who-answer.ts";

/** `7 of 9 reached; 1 letter came back`. */
export function toldAnswer(file: LineFile, report: Report): Reply {
  const audience = audienceOf(file);
  if (audience.length === 0)
    return replyWith("There is nobody to tell yet", [
      { closes: "Enter who is on the line", pressing: PRESSING.ordinary },
    ]);
  const reached = audience.filter((partyId) => isReached(file, partyId));
  const back = chaseList(file, report.today).filter(({ reason }) => reason === "came-back");
  const drafts = file.notices.filter(({ state }) => state === "draft").length;
  const sentence = sayParts([
    reachedWords(reached.length, audience.length),
    back.length === 0 ? "" : `${sayCount(back.length, "letter")} came back`,
    drafts === 0 ? "" : `${sayCount(drafts, "letter")} drafted, not sent`,
  ]);
  return replyWith(sentence, [
    ...backOpening(
      file,
      back.map(({ partyId }) => partyId),
    ),
    ...lateOpening(file, report),
    ...unreachedOpening(
      file,
      audience.filter((partyId) => !reached.includes(partyId)),
    ),
  ]);
}

/** Every party with a role on a property that has a stake in the pipe. */
function audienceOf(file: LineFile): string[] {
  const lots = new Set(onTheLine(file).map(({ id }) => id));
  const roles = file.roles.filter(({ propertyId }) => lots.has(propertyId));
  return [...new Set(roles.map(({ partyId }) => partyId))];
}

function isReached(file: LineFile, partyId: string): boolean {
  return file.notices.some((notice) => {
    if (notice.partyId !== partyId || notice.state !== "sent") return false;
    const cell = cellOf(file, notice);
    return cell.state === "delivered" || cell.reply !== null;
  });
}

function reachedWords(reached: number, of: number): string {
  if (reached === of) return of === 1 ? "the one party is reached" : `${sayAll(of)} reached`;
  if (reached === 0) return `none of ${of} reached yet`;
  return `${reached} of ${of} reached`;
}

function backOpening(file: LineFile, partyIds: readonly string[]): Opening[] {
  if (partyIds.length === 0) return [];
  const names = namesOf(file, partyIds);
  const letter = forCount(partyIds.length, "the letter", "the letters");
  return [{ closes: `Deliver ${letter} to ${names} in another way`, pressing: PRESSING.soon }];
}

function lateOpening(file: LineFile, { today }: Report): Opening[] {
  const late = chaseList(file, today).filter(({ reason }) => reason === "reply-late");
  if (late.length === 0) return [];
  const names = namesOf(
    file,
    late.map(({ partyId }) => partyId),
  );
  return [
    {
      closes: `Go after the overdue ${forCount(late.length, "reply", "replies")} of ${names}`,
      pressing: PRESSING.late,
    },
  ];
}

function unreachedOpening(file: LineFile, partyIds: readonly string[]): Opening[] {
  if (partyIds.length === 0) return [];
  const sent = partyIds.some((id) =>
    file.notices.some(({ partyId, state }) => partyId === id && state === "sent"),
  );
  const pressing = sent ? PRESSING.ordinary : PRESSING.stalls;
  return [{ closes: `Reach ${namesOf(file, partyIds)}`, pressing }];
}

function namesOf(file: LineFile, partyIds: readonly string[]): string {
  const names = [...new Set(partyIds)].map((partyId) => sayParty(file, partyId));
  return sayList(names, 4);
}
