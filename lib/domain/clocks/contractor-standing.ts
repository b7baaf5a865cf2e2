import type { ContractorPaper } from "../facts/authority.ts";
import type { Office } from "../facts/line-file.ts";
import type { Day } from "../time/day.ts";
import { letterDay } from "../time/letter-day.ts";

const PAPER_STATES = [
  "in-force",
  /** In force today, but not to the last day of work. */
  "ends-before-work",
  /** In force today; how long the work goes on, nobody said. */
  "end-of-work-unknown",
  "expired",
  "expiry-unknown",
  "not-on-file",
] as const;

/** One paper that a contractor must have in force. */
export interface StandingPaper {
  readonly paper: ContractorPaper;
  readonly title: string;
  readonly number: string;
  readonly expiresOn: Day | null;
  readonly state: (typeof PAPER_STATES)[number];
  readonly sentence: string;
}

/** The days that papers are held against. */
interface WorkDays {
  readonly today: Day;
  /** The last day of work; null: nobody said, and no paper is then known to be in force to its end. */
  readonly end: Day | null;
}

/**
 * License, bond and insurance as they stand today and on the last day of work; a paper’s last day
 * itself still counts. Workers’ compensation and the business license count where they are on file;
 * an authority that wants one asks for it by name (`paperStanding`).
 */
export function contractorStanding(office: Office, days: WorkDays): StandingPaper[] {
  const more = (["workers-compensation", "business-license"] as const)
    .map((kind) => paperStanding(kind, office, days))
    .filter(({ number }) => number !== "");
  return [
    ...(["license", "bond"] as const).map((kind) => paperStanding(kind, office, days)),
    insuranceStanding(office, days),
    ...more,
  ];
}

type OwnPaper = Exclude<ContractorPaper, "additional-insured">;

/** One paper of the office’s own. */
export function paperStanding(kind: OwnPaper, office: Office, days: WorkDays): StandingPaper {
  const [title, number, expiresOn] = PAPERS[kind](office);
  return { paper: kind, ...paper(title, number, expiresOn, days) };
}

const PAPERS: Readonly<
  Record<OwnPaper, (office: Office) => readonly [string, string, Day | null]>
> = {
  license: (office) => ["Contractor’s license", office.license, office.licenseExpiresOn],
  bond: (office) => ["Bond", office.bond, office.bondExpiresOn],
  insurance: (office) => ["Liability insurance", office.insurance, office.insuranceExpiresOn],
  "workers-compensation": (office) => [
    "Workers’ compensation",
    office.compensation,
    office.compensationExpiresOn,
  ],
  "business-license": (office) => [
    "Business license",
    office.businessLicense,
    office.businessLicenseExpiresOn,
  ],
};

/** Liability insurance alone, as a letter that asks to enter a lot speaks of it. */
export function insuranceStanding(office: Office, days: WorkDays): StandingPaper {
  return paperStanding("insurance", office, days);
}

function paper(
  title: string,
  number: string,
  expiresOn: Day | null,
  { today, end }: WorkDays,
): Omit<StandingPaper, "paper"> {
  const found = { title, number, expiresOn };
  if (number === "") return { ...found, state: "not-on-file", sentence: `${title}: not on file.` };
  if (expiresOn === null)
    return { ...found, state: "expiry-unknown", sentence: `${title}: expiration date unknown.` };
  const until = letterDay(expiresOn, "en");
  if (expiresOn < today)
    return { ...found, state: "expired", sentence: `${title} ${number} expired on ${until}.` };
  if (end === null) {
    const sentence = `${title} ${number} is valid through ${until}. Whether the work ends before that is unknown: its last day is not entered.`;
    return { ...found, state: "end-of-work-unknown", sentence };
  }
  if (expiresOn < end) {
    const sentence = `${title} ${number} expires on ${until}, before the work ends on ${letterDay(end, "en")}.`;
    return { ...found, state: "ends-before-work", sentence };
  }
  const sentence = `${title} ${number} is valid through ${until}; the work ends on ${letterDay(end, "en")}.`;
  return { ...found, state: "in-force", sentence };
}
