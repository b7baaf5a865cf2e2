export const USER_ROLES = ["admin", "office", "field", "viewer"] as const;
export type UserRole = (typeof USER_ROLES)[number];

/** Kinds of writing that a role may or may not do. */
const DEEDS = ["run-the-office", "work-the-file", "record-the-field"] as const;
export type Deed = (typeof DEEDS)[number];

const MAY: Record<UserRole, readonly Deed[]> = {
  admin: ["run-the-office", "work-the-file", "record-the-field"],
  office: ["work-the-file", "record-the-field"],
  field: ["record-the-field"],
  viewer: [],
};

/**
 * Whether a role may do a deed: admins run the office (users, authorities, fees), the office works
 * the files, the field enters runs, observations and tests, a viewer writes nothing.
 */
export function mayDo(role: UserRole, deed: Deed): boolean {
  return MAY[role].includes(deed);
}

/** A person who may sign in. The password's hash stays in the database. */
export interface User {
  readonly id: string;
  readonly name: string;
  readonly email: string;
  readonly role: UserRole;
  readonly disabled: boolean;
}
