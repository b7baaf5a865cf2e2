import type { Day } from "../calendar/day.ts";
import type { Office } from "../file/line-file.ts";
import { letterDay } from "../letter/letter-day.ts";

/** One paper that a contractor must have in force. */
export interface StandingPaper {
  readonly title: string;
  readonly number: string;
  readonly expiresOn: Day | null;
  readonly state: "in-force" | "expired" | "expiry-unknown" | "not-on-file";
  readonly sentence: string;
}

/** Licence, bond and insurance as they stand on a day; the last day itself still counts. */
export function contractorStanding(office: Office, today: Day): StandingPaper[] {
  return [
    paper("Contractor licence", office.licence, office.licenceExpiresOn, today),
    paper("Bond", office.bond, office.bondExpiresOn, today),
    paper("Liability insurance", office.insurance, office.insuranceExpiresOn, today),
  ];
}

function paper(title: string, number: string, expiresOn: Day | null, today: Day): StandingPaper {
  const found = { title, number, expiresOn };
  if (number === "") {
    return { ...found, state: "not-on-file", sentence: `${title}: not on file.` };
  }
  if (expiresOn === null) {
    return { ...found, state: "expiry-unknown", sentence: `${title}: day of expiry unknown.` };
  }
  if (expiresOn < today) {
    const sentence = `${title} ${number} expired on ${letterDay(expiresOn, "en")}.`;
    return { ...found, state: "expired", sentence };
  }
  const sentence = `${title} ${number} is in force to ${letterDay(expiresOn, "en")}.`;
  return { ...found, state: "in-force", sentence };
}
