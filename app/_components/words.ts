import type { UserRole } from "#lib/domain/facts/user.ts";

/** What the office's roles are called. */
export const USER_ROLE_WORDS: Record<UserRole, string> = {
  admin: "admin",
  office: "office",
  field: "field",
  viewer: "read-only",
};
