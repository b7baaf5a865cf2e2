import { randomBytes } from "node:crypto";
import type { LetterKind } from "#lib/domain/facts/notice.ts";
import { reportOn } from "#lib/domain/report/report-on.ts";
import type { SmtpSettings } from "#lib/env.ts";
import type { Act } from "#lib/operations/act.ts";
import { chooseSplit } from "#lib/operations/choose-split.ts";
import { draftNotices } from "#lib/operations/draft-notices.ts";
import type { LinkDoor } from "#lib/operations/link-door.ts";
import { makeLink } from "#lib/operations/make-link.ts";
import { openLink, openLinkPaper } from "#lib/operations/open-link.ts";
import { runNextJob } from "#lib/operations/run-job.ts";
import { sendNotices } from "#lib/operations/send-notices.ts";
import { waiveHold } from "#lib/operations/waive-hold.ts";
import type { Workplace } from "#lib/operations/workplace.ts";
import { aScopeItem } from "./file.ts";
import { type aDesk, addRows, fileOf, must } from "./office.ts";

export type LinkDesk = ReturnType<typeof aDesk>;

export function aSecret(): string {
  return randomBytes(32).toString("base64url");
}

/** A neighbor at the door, by default at the desk's own moment. */
export function aDoor({ act }: Pick<LinkDesk, "act">, overrides: Partial<LinkDoor> = {}): LinkDoor {
  const { db, now, today, dataFolder, newId } = act;
  return {
    ...{ db, now, today, dataFolder, newId },
    address: "203.0.113.7",
    agent: "Test browser 1",
    officeUser: "",
    ...overrides,
  };
}

export function aWorker({ act }: LinkDesk, smtp: SmtpSettings | null = null): Workplace {
  return {
    db: act.db,
    dataFolder: act.dataFolder,
    worker: "worker-1",
    now: () => act.now,
    today: () => act.today,
    newId: act.newId,
    smtp,
    mailFrom: "",
    imap: null,
    address: null,
  };
}

/**
 * A version of the split by equal parts, over one more piece of work of so many cents. No rule says
 * here who answers for the line: somebody waived that.
 */
export function aSplit({ act, lineId }: LinkDesk, rate = 30_000): string {
  for (const { key, stops, waiver } of reportOn(fileOf(act, lineId), act.today).holds)
    if (waiver === null && stops.includes("final-split"))
      must(waiveHold(act, { lineId, holdKey: key, reason: "All owners have agreed" }));
  addRows(act, { lineId, table: "scope" }, [
    aScopeItem(`work-${rate}`, { place: "general", from: null, to: null, quantity: 100, rate }),
  ]);
  const choice = {
    rule: "equal",
    faultStation: null,
    payerId: null,
    unknownShares: "carried",
  } as const;
  return must(chooseSplit(act, { lineId, choice, reason: "All share alike" })).splitId;
}

/** A letter that went by first-class mail. */
export function aSentLetter(
  { act, lineId }: LinkDesk,
  kind: LetterKind,
  { partyId = "owner-12", propertyId = "12", splitId = null as string | null } = {},
): string {
  const recipients = [{ partyId, propertyId, tieInId: null, splitId }];
  const drafted = must(draftNotices(act, { lineId, kind, replyBy: null, recipients }));
  const { noticeIds } = drafted;
  const despite = "Read to them on the phone; what is missing follows";
  const admin: Act = { ...act, actor: { ...act.actor, role: "admin" } };
  const sentOn = act.today;
  must(sendNotices(admin, { lineId, noticeIds, method: "first-class", sentOn, despite }));
  return noticeIds[0] ?? "";
}

export function aLinkTo({ act, lineId }: LinkDesk, noticeId: string, days = 30): string {
  const secret = aSecret();
  must(makeLink(act, { lineId, noticeId, days, secret }));
  return secret;
}

/** A link whose letter is made as a PDF, and was opened on the page and as the PDF. */
export async function anOpenedLink(desk: LinkDesk, noticeId: string): Promise<string> {
  const secret = aLinkTo(desk, noticeId);
  await runNextJob(aWorker(desk));
  must(openLink(aDoor(desk), secret));
  must(openLinkPaper(aDoor(desk), secret, null));
  return secret;
}
