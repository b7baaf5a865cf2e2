import type { Db } from "#db/open.ts";
import { getLastOfficeEntry } from "#db/queries/history.ts";
import { removeSessionsOf } from "#db/queries/session.ts";
import { dropKeeper } from "#db/queries/summary.ts";
import { countOtherAdmins, getUser, setPasswordHash, updateUser } from "#db/queries/user.ts";
import { isKeeper, mayDo, type User, type UserRole } from "#lib/domain/facts/user.ts";
import { ok, type Result } from "#lib/result.ts";
import type { Act, Refusal } from "./act.ts";
import { changeOffice, refuse } from "./change.ts";
import { parse } from "./parse.ts";
import { checkPassword, hashPassword } from "./password.ts";
import { changedSince, fieldsSeen } from "./seen.ts";
import { UserShape } from "./user-shape.ts";

interface UserChange {
  readonly userId: string;
  readonly name?: string;
  readonly role?: UserRole;
  readonly disabled?: boolean;
  /** Empty or not given: stays. */
  readonly password?: string;
  /** `seenOf(userSeen(user))` as the form was filled in; not given: whatever stands there now. */
  readonly seen?: string | undefined;
}

/** What the form of a person is filled in from. */
export function userSeen(user: User) {
  return fieldsSeen(user, ["name", "role", "disabled"]);
}

/**
 * Changes a person's name, role or password, or takes their access away. Ends their sessions where
 * role, access or password change, and lines that they looked after are nobody's where they no longer
 * work files. Refuses to leave the office without an admin.
 */
export async function changeUser(act: Act, change: UserChange): Promise<Result<null, Refusal>> {
  if (!mayDo(act.actor.role, "run-the-office")) return refuse("not-allowed");
  const wanted = change.password ?? "";
  const user = getUser(act.db, change.userId);
  const about = [user?.email ?? "", change.name ?? user?.name ?? ""];
  const password = wanted === "" ? null : checkPassword(wanted, about);
  if (password !== null && !password.ok) return password;
  const passwordHash = password === null ? null : await hashPassword(password.value);
  return changeOffice(act, { deed: "run-the-office", action: "change-user" }, (db) => {
    const before = getUser(db, change.userId);
    if (before === null) return refuse("not-found", "userId", "the user");
    const last = getLastOfficeEntry(db, "change-user");
    const overtaken = changedSince(change.seen, { now: userSeen(before), last });
    if (overtaken !== null) return overtaken;
    const after = changed(before, change);
    const parsed = parse(UserShape, after);
    if (!parsed.ok) return parsed;
    if (leavesNoAdmin(db, before, after))
      return refuse("in-use", "role", `${before.name} is the office's last admin`);
    const sentence = sentenceFor(before, after, passwordHash !== null);
    return ok({
      value: null,
      sentence,
      detail: { before, after, password: passwordHash === null ? "stays" : "changed" },
      write: (one) => {
        updateUser(one, after);
        if (!isKeeper(after)) dropKeeper(one, after.id);
        if (passwordHash !== null) setPasswordHash(one, after.id, passwordHash);
        if (endsSessions(before, after, passwordHash)) removeSessionsOf(one, after.id);
      },
    });
  });
}

function changed(before: User, { name, role, disabled }: UserChange): User {
  return {
    ...before,
    name: name ?? before.name,
    role: role ?? before.role,
    disabled: disabled ?? before.disabled,
  };
}

function leavesNoAdmin(db: Db, before: User, after: User): boolean {
  const was = before.role === "admin" && !before.disabled;
  const is = after.role === "admin" && !after.disabled;
  return was && !is && countOtherAdmins(db, before.id) === 0;
}

function endsSessions(before: User, after: User, passwordHash: string | null): boolean {
  return before.role !== after.role || after.disabled || passwordHash !== null;
}

function sentenceFor(before: User, after: User, password: boolean): string | null {
  const parts = [
    before.name === after.name ? "" : `Renamed ${before.name} to ${after.name}.`,
    before.role === after.role ? "" : `Made ${after.name} ${after.role}.`,
    before.disabled === after.disabled
      ? ""
      : `${after.disabled ? "Disabled" : "Restored"} ${after.name}'s access.`,
    password ? `Set a new password for ${after.name}.` : "",
  ].filter((part) => part !== "");
  return parts.length === 0 ? null : parts.join(" ");
}
