import type { Day } from "../time/day.ts";
import type { Authority } from "./authority.ts";
import type { RowOf } from "./field.ts";
import type { PaymentMethod } from "./ledger-entry.ts";
import type { LineFacts } from "./line.ts";
import type { ListName } from "./list-name.ts";
import type { LISTS } from "./lists.ts";
import type { OpenHours } from "./open-hours.ts";
import type { Address } from "./party.ts";
import type { Wording } from "./wording.ts";

/** The rows of every list, as `observations: readonly Observation[]`. */
type Lists = { readonly [L in ListName]: readonly RowOf<(typeof LISTS)[L]>[] };

/** Everything that is known of one line. Every computed answer is a function of this and a day. */
export interface LineFile extends Lists {
  readonly line: LineFacts;
  readonly authority: Authority | null;
}

/** The contractor's office that this installation serves. */
export interface Office {
  readonly name: string;
  readonly license: string;
  readonly licenseExpiresOn: Day | null;
  readonly bond: string;
  readonly bondExpiresOn: Day | null;
  readonly insurance: string;
  readonly insuranceExpiresOn: Day | null;
  /** Workers’ compensation, and the license to do business in town; empty: not on file. */
  readonly compensation: string;
  readonly compensationExpiresOn: Day | null;
  readonly businessLicense: string;
  readonly businessLicenseExpiresOn: Day | null;
  readonly address: Address;
  readonly phone: string;
  /** When the office answers its phone; null: not said, and nothing is printed. */
  readonly hours: OpenHours | null;
  /** A number for emergencies, with when it is answered; empty: there is none. */
  readonly onCallPhone: string;
  readonly onCallHours: OpenHours | null;
  readonly email: string;
  /** To whom checks are made out; empty: not said. */
  readonly payee: string;
  /** How the office takes payment. */
  readonly payMethods: readonly PaymentMethod[];
  /** Days from an invoice until it is due; null: not said. */
  readonly payDays: number | null;
  /** Deposit before the work begins, in whole percent of a share; 0: none; null: not said. */
  readonly depositPercent: number | null;
  /** Who was never asked for a language gets letters in English and Spanish, in one envelope. */
  readonly bothLanguages: boolean;
  /** IANA name; decides which day is today. */
  readonly zone: string;
  /** The office’s own wordings of letters that are in use; kept apart from what is typed of the company. */
  readonly wordings?: readonly Wording[];
}
