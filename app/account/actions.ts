"use server";

import { z } from "zod";
import { formAction, officeAction, placeAt } from "#app/action.ts";
import { callerOf } from "#app/caller.ts";
import { asTyped, oneInOr } from "#app/fields.ts";
import { linkBase } from "#app/lines/[lineId]/notices/link-address.ts";
import { getSessionToken, hashToken, newToken } from "#app/session.ts";
import { changeOwnPassword } from "#lib/operations/change-own-password.ts";
import { makeFeed, revokeFeed } from "#lib/operations/make-feed.ts";
import { ok } from "#lib/result.ts";

/** A private address of the office's calendar: shown here, once. */
export const makeFeedAction = officeAction("/account", {
  may: null,
  typed: z.object({ which: oneInOr(["all", "mine"], "all") }),
  does: (act, { which }) => {
    const secret = newToken();
    const made = makeFeed(act, { secret, onlyMine: which === "mine" });
    return made.ok ? ok({ secret }) : made;
  },
  says: ({ secret }) =>
    `Copy this address into your calendar program now; it is not shown again: ${linkBase()}/calendar/${secret}.ics`,
});

export const revokeFeedAction = formAction(
  placeAt({ feedId: z.string() }, () => "/account"),
  {
    may: null,
    typed: z.object({}),
    does: revokeFeed,
    says: "Revoked. That calendar gets nothing more from here.",
  },
);

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
