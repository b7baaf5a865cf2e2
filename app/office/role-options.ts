import { USER_ROLE_WORDS } from "#app/_components/words.ts";
import { USER_ROLES, type UserRole } from "#lib/domain/facts/user.ts";

const ROLE_MEANING: Record<UserRole, string> = {
  admin: "runs the office: people, authorities, fees; and does all that the office does",
  office: "works the files",
  field: "enters runs, observations and tests",
  viewer: "reads everything, writes nothing",
};

/** The roles with what each may do. */
export const ROLE_OPTIONS = USER_ROLES.map((value) => ({
  value,
  label: `${USER_ROLE_WORDS[value]}: ${ROLE_MEANING[value]}`,
}));
