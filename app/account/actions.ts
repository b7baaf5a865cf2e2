"use server";

import { callerOf } from "#app/caller.ts";
import { type FormState, refused } from "#app/form.ts";
import { stateOf } from "#app/messages.ts";
import { getSessionToken, hashToken, requireAct } from "#app/session.ts";
import { changeOwnPassword } from "#lib/operations/change-own-password.ts";

/** A person's own password; every other session of theirs ends. */
export async function changeOwnPasswordAction(
  _state: FormState,
  form: FormData,
): Promise<FormState> {
  const act = await requireAct();
  const [current, password] = [form.get("current"), form.get("password")];
  if (typeof current !== "string" || typeof password !== "string")
    return refused("Enter both passwords.", form);
  const changed = await changeOwnPassword(act, {
    current,
    password,
    tokenHash: hashToken((await getSessionToken()) ?? ""),
    address: (await callerOf()).address,
  });
  return stateOf(changed, { words: "Password changed. You are signed out everywhere else.", form });
}
