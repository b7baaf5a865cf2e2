"use server";

import { z } from "zod";
import { officeAction } from "#app/action.ts";
import { callerOf } from "#app/caller.ts";
import { asTyped } from "#app/fields.ts";
import { getSessionToken, hashToken } from "#app/session.ts";
import { changeOwnPassword } from "#lib/operations/change-own-password.ts";

/** A person's own password; every other session of theirs ends. */
export const changeOwnPasswordAction = officeAction("/account", {
  may: null,
  typed: z.object({ current: asTyped, password: asTyped }),
  does: async (act, passwords) =>
    changeOwnPassword(act, {
      ...passwords,
      tokenHash: hashToken((await getSessionToken()) ?? ""),
      address: (await callerOf()).address,
    }),
  says: "Password changed. You are signed out everywhere else.",
});
