import type { LineFile, Office } from "../facts/line-file.ts";
import type { Notice } from "../facts/notice.ts";
import type { Report } from "../findings/report.ts";
import { composeLetter } from "./compose.ts";
import { frozenLetter } from "./frozen-letter.ts";
import type { Letter } from "./letter.ts";

interface Facts {
  readonly file: LineFile;
  readonly report: Report;
  readonly office: Office;
}

/**
 * The visit letters that tell another day or hour than the plan does now: who has one has to be told
 * again. Of several letters to one party about one property the last counts. Empty while no test day
 * is to come.
 */
export function outdatedVisits(facts: Facts): Notice[] {
  const { file, report } = facts;
  if (!file.testDays.some(({ on }) => on >= report.today)) return [];
  const last = new Map<string, Notice>();
  for (const notice of file.notices.toSorted((one, other) =>
    one.createdOn.localeCompare(other.createdOn),
  ))
    if (notice.kind === "test-visit" && notice.frozen !== null)
      last.set(`${notice.partyId} ${notice.propertyId}`, notice);
  return [...last.values()].filter((notice) => timesToldBy(notice) !== timesNow(facts, notice));
}

/** What a sent letter told; null where it can't be read, so that nobody counts as told by it. */
function timesToldBy({ frozen }: Notice): string | null {
  const letter = frozenLetter(frozen ?? "");
  return letter === null ? null : timesIn(letter);
}

function timesNow(facts: Facts, notice: Notice): string {
  const draft: Notice = { ...notice, state: "draft", sentAt: null };
  return timesIn(composeLetter({ ...facts, notice: draft }));
}

/** Days, hours and what happens stand in the letter's tables. */
function timesIn({ blocks }: Letter): string {
  return JSON.stringify(blocks.filter(({ kind }) => kind === "table"));
}
