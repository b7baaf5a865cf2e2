import type { CallPurpose } from "#lib/domain/facts/household-call.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import type { RowTable } from "#lib/domain/facts/row-table.ts";
import { drainPlaces } from "#lib/domain/notices/audience.ts";
import { needsUnasked } from "#lib/domain/party/household-needs.ts";
import { streetOf } from "#lib/domain/party/stakeholders.ts";
import { sayList } from "#lib/domain/say/say-list.ts";
import type { Day } from "#lib/domain/time/day.ts";
import { formatDate } from "#lib/domain/time/format-day.ts";

export const PURPOSE_WORDS: Record<CallPurpose, string> = {
  "drain-pause": "a drain shutdown",
  "test-visit": "a test visit",
};

/**
 * Why something can't be planned, recorded or announced for a day yet: households at these places
 * that have a need on file were not called about it, or did not agree. Null where all did. Without a
 * day nobody can have agreed.
 */
export function callFirstWords(
  file: LineFile,
  asked: { readonly purpose: CallPurpose; readonly day: Day | null },
  places: readonly string[],
): string | null {
  const unasked = needsUnasked(file, asked, places);
  if (unasked.length === 0) return null;
  const names = unasked.map(({ party, propertyId }) => {
    const property = file.properties.find(({ id }) => id === propertyId);
    const place = property === undefined ? "" : ` (${streetOf(property.address)})`;
    return `${party.name}${place}${party.phone === "" ? "" : `, ${party.phone}`}`;
  });
  const what = PURPOSE_WORDS[asked.purpose];
  const when = asked.day === null ? "; no day is set for it yet" : ` on ${formatDate(asked.day)}`;
  return `Call ${sayList(names)} first about ${what}${when}, and record under “Who is on it?” what was agreed: a need is on file there`;
}

/** Cells that would record a pause of drains to come that some household with a need did not agree to. */
export function callFirstCells(
  {
    table,
    before,
    after,
  }: { readonly table: RowTable; readonly before: LineFile; readonly after: LineFile },
  today: Day,
): { row: number; column: string; message: string }[] {
  if (table !== "events") return [];
  const old = new Map(before.events.map((event) => [event.id, event]));
  return after.events.flatMap(({ id, event, on }, row) => {
    const was = old.get(id);
    const isNew = was === undefined || was.event !== event || was.on !== on;
    if (event !== "drains-paused" || on < today || !isNew) return [];
    const message = callFirstWords(after, { purpose: "drain-pause", day: on }, drainPlaces(after));
    return message === null ? [] : [{ row, column: "on", message }];
  });
}
