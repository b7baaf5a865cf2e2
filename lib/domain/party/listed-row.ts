import type { LineFile } from "../facts/line-file.ts";
import type { PartyLanguage, PartyRole, Stake } from "../facts/party.ts";
import type { NameOrder } from "./owner-names.ts";

/** One row of a list of owners, as its columns hold it; what is missing is not in the list. */
export interface ListedFields {
  readonly parcel?: string;
  readonly siteNumber?: string;
  readonly site?: string;
  readonly siteUnit?: string;
  readonly siteCity?: string;
  readonly siteState?: string;
  readonly siteZip?: string;
  /** City, state and ZIP in one. */
  readonly siteLast?: string;
  readonly legal?: string;
  readonly stake?: Stake;
  readonly owner?: string;
  readonly owner2?: string;
  readonly order?: NameOrder;
  readonly role?: PartyRole | undefined;
  readonly unit?: string;
  readonly careOf?: string;
  readonly mail?: string;
  readonly mail2?: string;
  readonly mailUnit?: string;
  readonly mailCity?: string;
  readonly mailState?: string;
  readonly mailZip?: string;
  readonly mailLast?: string;
  readonly phone?: string;
  readonly email?: string;
  readonly language?: PartyLanguage | undefined;
  readonly needs?: string;
  readonly note?: string;
  /** Of the first, second and third owner of the row: the party on file that a person said it is. */
  readonly sameAs0?: string;
  readonly sameAs1?: string;
  readonly sameAs2?: string;
}

/** What is there when a list comes in. */
export type ListPlace = Pick<LineFile, "properties" | "parties" | "roles" | "units">;

export interface ListProblem {
  readonly column: keyof ListedFields;
  readonly message: string;
}

/** Somebody of a row as they would come in. */
export interface ListedPerson {
  readonly name: string;
  readonly role: PartyRole;
  /** Where their mail would go. */
  readonly mail: string;
  /** At this property in this role already. */
  readonly there: boolean;
  /** Parties on file that may be the same, with what speaks for it. */
  readonly likely: readonly { partyId: string; name: string; because: readonly string[] }[];
}

/** What one row comes to; nothing is saved yet. */
export interface ListedRow {
  readonly problems: readonly ListProblem[];
  /** Everything that the row says is on file. */
  readonly there: boolean;
  readonly property: { readonly words: string; readonly isNew: boolean } | null;
  readonly people: readonly ListedPerson[];
  /** How it was read, where that is not plain. */
  readonly said: readonly string[];
}

/** The fields that say who on file an owner is, by their place in the row. */
export const SAME_AS = ["sameAs0", "sameAs1", "sameAs2"] as const;
