import type { Office } from "../facts/line-file.ts";
import type { Clock } from "../findings/clock.ts";
import type { Day } from "../time/day.ts";
import { addDays } from "../time/days.ts";
import { formatFullDay } from "../time/format-day.ts";
import { contractorStanding } from "./contractor-standing.ts";

/** Renewing takes an insurer or a state some weeks: so many days ahead it stands on the desk. */
const AHEAD = 45;

/**
 * The days on which the office’s own license, bond, insurance and other papers run out, the earliest
 * first. They belong to no line; a paper that is not on file, or has no expiration date, has no clock.
 */
export function paperClocks(office: Office, today: Day): Clock[] {
  return contractorStanding(office, { today, end: null })
    .flatMap(({ paper, title, number, expiresOn }): Clock[] => {
      if (number === "" || expiresOn === null) return [];
      const ran = expiresOn < today;
      return [
        {
          key: `paper:${paper}`,
          title,
          meaning: "expires",
          startedOn: expiresOn,
          on: expiresOn,
          at: "",
          sentence: `${title} ${ran ? "expired" : "expires"} on ${formatFullDay(expiresOn)}. Enter the new date once it is renewed.`,
          citation: "",
          asOf: null,
          subjectId: paper,
          settled: false,
          telling: null,
        },
      ];
    })
    .toSorted((one, other) => one.on.localeCompare(other.on) || one.key.localeCompare(other.key));
}

/** Those that ran out, or do within some weeks: what stands on the desk. */
export function pressingPapers(office: Office, today: Day): Clock[] {
  return paperClocks(office, today).filter(({ on }) => on <= addDays(today, AHEAD));
}

/** A paper that ran out is late; one that does within this many days is due, as everything on the desk. */
const DUE_WITHIN = 7;

/** The papers that count among what is late or due over all of the office; the rest are only ahead. */
export function papersBy(
  papers: readonly Clock[],
  today: Day,
): { readonly late: readonly Clock[]; readonly due: readonly Clock[] } {
  return {
    late: papers.filter(({ on }) => on < today),
    due: papers.filter(({ on }) => on >= today && on <= addDays(today, DUE_WITHIN)),
  };
}
