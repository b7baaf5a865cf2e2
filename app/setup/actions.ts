"use server";

import { randomUUID } from "node:crypto";
import { redirect } from "next/navigation";
import { z } from "zod";
import { db } from "#app/db.ts";
import { asTyped, oneInOr, text, typedIn } from "#app/fields.ts";
import { type FormState, refused } from "#app/form.ts";
import { refusedBy, sentenceOf } from "#app/messages.ts";
import { OFFICE_FIELDS, officeField, officeOf } from "#app/office-form.ts";
import { hashToken, keepSessionToken, newToken } from "#app/session.ts";
import { STARTERS } from "#lib/domain/starters/authorities.ts";
import { readEnv } from "#lib/env.ts";
import { addAuthority } from "#lib/operations/add-authority.ts";
import { officeDay } from "#lib/operations/office-day.ts";
import { setUpOffice } from "#lib/operations/set-up-office.ts";
import { startSession } from "#lib/operations/sign-in.ts";
import { stampOffice } from "#lib/storage/data-folder.ts";

const typed = z.object({
  ...OFFICE_FIELDS,
  userName: text,
  userEmail: text,
  password: asTyped,
  starter: oneInOr(STARTERS, null),
  authorityName: text,
});

/** The office and its first admin, who is signed in at once. Nobody can be asked who they are yet. */
export async function setUpAction(_state: FormState, form: FormData): Promise<FormState> {
  const read = typed.safeParse(typedIn(form));
  if (!read.success) return refusedBy(read.error, form);
  const { userName, userEmail, password, starter, authorityName, ...office } = read.data;
  const now = new Date().toISOString();
  const { dataFolder } = readEnv();
  const door = { db: db(), now, today: officeDay(db(), now), dataFolder, newId: randomUUID };
  const made = await setUpOffice(door, {
    office: officeOf(office),
    user: { name: userName, email: userEmail, password },
  });
  if (!made.ok) return refused(sentenceOf(made.error), form, fieldOf(made.error));
  stampOffice(dataFolder, now);
  const actor = made.value.user;
  if (starter !== null || authorityName !== "")
    addAuthority({ ...door, today: officeDay(db(), now), actor }, { name: authorityName, starter });
  const token = newToken();
  startSession({ db: db(), now }, { userId: actor.id, tokenHash: hashToken(token) });
  await keepSessionToken(token);
  return redirect("/");
}

/** Both halves of the form have a name and an email address; the office's come first. */
function fieldOf({ path, detail }: { readonly path: string; readonly detail: string }): string {
  if (path === "name" && !/office/.test(detail)) return "userName";
  if (path === "email") return "userEmail";
  return officeField(path);
}
