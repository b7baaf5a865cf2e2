"use server";

import { redirect } from "next/navigation";
import { callerOf } from "#app/caller.ts";
import { db } from "#app/db.ts";
import { type FormState, refused, textOf } from "#app/form.ts";
import { sentenceOf } from "#app/messages.ts";
import { ownPath } from "#app/own-path.ts";
import {
  dropSessionToken,
  getSessionToken,
  hashToken,
  keepSessionToken,
  newToken,
} from "#app/session.ts";
import { signIn } from "#lib/operations/sign-in.ts";
import { signOut } from "#lib/operations/sign-out.ts";

export async function signInAction(_state: FormState, form: FormData): Promise<FormState> {
  const password = form.get("password");
  const token = newToken();
  const signedIn = await signIn(
    { db: db(), now: new Date().toISOString() },
    {
      email: textOf(form, "email"),
      password: typeof password === "string" ? password : "",
      ...(await callerOf()),
      tokenHash: hashToken(token),
    },
  );
  if (!signedIn.ok) return refused(sentenceOf(signedIn.error), form, signedIn.error.path);
  await keepSessionToken(token);
  return redirect(ownPath(textOf(form, "for")));
}

export async function signOutAction(): Promise<void> {
  const token = await getSessionToken();
  if (token !== null) {
    const door = { db: db(), now: new Date().toISOString() };
    signOut(door, { tokenHash: hashToken(token), ...(await callerOf()) });
  }
  await dropSessionToken();
  redirect("/sign-in");
}
