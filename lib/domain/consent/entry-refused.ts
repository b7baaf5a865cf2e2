import type { LineFile } from "../facts/line-file.ts";
import { isDealtWith } from "../party/reply.ts";
import type { Day } from "../time/day.ts";
import { consentStanding } from "./standing.ts";

/** Who said no to being entered, and when. */
export interface EntryRefusal {
  readonly partyId: string;
  readonly on: Day;
}

type RefusalFile = Pick<LineFile, "consents" | "splits" | "roles" | "replies" | "notices">;

/**
 * Who keeps the crew out of a place: the last word on entering of somebody who owns, manages or lives
 * in it is a no or taken back, or they answered a letter on a visit with a no that nobody has dealt
 * with yet. A tenant of one unit keeps the crew out of that unit alone. Null where nobody does.
 */
export function entryRefused(
  file: RefusalFile,
  place: { readonly propertyId: string; readonly unitId: string | null },
): EntryRefusal | null {
  const words = [...consentsAgainst(file, place), ...repliesAgainst(file, place)];
  return words.toSorted((one, other) => other.on.localeCompare(one.on))[0] ?? null;
}

type Place = Parameters<typeof entryRefused>[1];

function consentsAgainst(file: RefusalFile, place: Place): EntryRefusal[] {
  return file.consents.flatMap((consent) => {
    if (consent.kind !== "enter" || consent.propertyId !== place.propertyId) return [];
    const standing = consentStanding(file, consent);
    const isNo = standing === "refused" || standing === "withdrawn";
    if (!isNo || !speaksFor(file, consent.partyId, place)) return [];
    return [{ partyId: consent.partyId, on: consent.stateOn }];
  });
}

function repliesAgainst(file: RefusalFile, place: Place): EntryRefusal[] {
  return file.replies.flatMap((reply) => {
    const notice = file.notices.find(({ id }) => id === reply.noticeId);
    const onVisit = notice?.kind === "test-visit" && notice.propertyId === place.propertyId;
    if (!onVisit || reply.kind !== "disagrees" || isDealtWith(reply)) return [];
    return speaksFor(file, notice.partyId, place)
      ? [{ partyId: notice.partyId, on: reply.receivedOn }]
      : [];
  });
}

/** Everybody speaks for the whole place but the tenant of another unit. */
function speaksFor(
  { roles }: Pick<LineFile, "roles">,
  partyId: string,
  { propertyId, unitId }: Place,
): boolean {
  const own = roles.filter((role) => role.partyId === partyId && role.propertyId === propertyId);
  if (own.length === 0) return true;
  return own.some(
    (role) => role.role !== "occupant" || role.unitId === null || role.unitId === unitId,
  );
}
