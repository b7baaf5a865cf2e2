export const USER_ROLES = ["admin", "office", "field", "viewer"] as const;
export type UserRole = (typeof USER_ROLES)[number];

/**
 * In which part somebody acts: a person of the office in their role, the reader of a letter by their
 * private link, or the worker that makes PDFs and sends mail. The last two have no account.
 */
export type ActorRole = UserRole | "link-reader" | "worker";

/** Kinds of writing that a role may or may not do. */
const DEEDS = ["run-the-office", "work-the-file", "record-the-field", "answer-own-letter"] as const;
export type Deed = (typeof DEEDS)[number];

const MAY: Record<ActorRole, readonly Deed[]> = {
  admin: ["run-the-office", "work-the-file", "record-the-field"],
  office: ["work-the-file", "record-the-field"],
  field: ["record-the-field"],
  viewer: [],
  "link-reader": ["answer-own-letter"],
  worker: [],
};

/**
 * Whether a role may do a deed: admins run the office (users, authorities, fees), the office works
 * the files, the field enters runs, observations and tests, a viewer writes nothing. Answering and
 * signing a letter is its reader's own: nobody of the office does it in their place.
 */
export function mayDo(role: ActorRole, deed: Deed): boolean {
  return MAY[role].includes(deed);
}

/** Whether somebody can look after a line: they work files and can sign in. */
export function isKeeper({ role, disabled }: Pick<User, "role" | "disabled">): boolean {
  return mayDo(role, "work-the-file") && !disabled;
}

/** A person who may sign in. The password's hash stays in the database. */
export interface User {
  readonly id: string;
  readonly name: string;
  readonly email: string;
  readonly role: UserRole;
  readonly disabled: boolean;
}
