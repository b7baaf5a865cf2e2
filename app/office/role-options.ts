import { USER_ROLE_WORDS } from "#app/_components/words.ts";
import { USER_ROLES, type UserRole } from "#lib/domain/facts/user.ts";

const ROLE_MEANING: Record<UserRole, string> = {
  admin: "full access, including users and authorities",
  office: "edits files",
  field: "enters runs, observations and tests",
  viewer: "view only",
};

/** The roles with what each may do. */
export const ROLE_OPTIONS = USER_ROLES.map((value) => ({
  value,
  label: `${USER_ROLE_WORDS[value]}: ${ROLE_MEANING[value]}`,
}));
