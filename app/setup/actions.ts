"use server";

import { randomUUID } from "node:crypto";
import { redirect } from "next/navigation";
import { db } from "#app/db.ts";
import { type FormState, oneOf, refused, textOf } from "#app/form.ts";
import { sentenceOf } from "#app/messages.ts";
import { officeField, officeFrom } from "#app/office-form.ts";
import { hashToken, keepSessionToken, newToken } from "#app/session.ts";
import { STARTERS } from "#lib/domain/starters/authorities.ts";
import { readEnv } from "#lib/env.ts";
import { addAuthority } from "#lib/operations/add-authority.ts";
import { officeDay } from "#lib/operations/office-day.ts";
import { setUpOffice } from "#lib/operations/set-up-office.ts";
import { startSession } from "#lib/operations/sign-in.ts";
import { stampOffice } from "#lib/storage/data-folder.ts";

/** The office and its first admin, who is signed in at once. */
export async function setUpAction(_state: FormState, form: FormData): Promise<FormState> {
  const office = officeFrom(form);
  if (!office.ok) return refused(office.error.message, form, office.error.path);
  const password = form.get("password");
  const now = new Date().toISOString();
  const { dataFolder } = readEnv();
  const made = await setUpOffice(
    {
      db: db(),
      now,
      today: officeDay(db(), now),
      dataFolder,
      newId: randomUUID,
    },
    {
      office: office.value,
      user: {
        name: textOf(form, "userName"),
        email: textOf(form, "userEmail"),
        password: typeof password === "string" ? password : "",
      },
    },
  );
  if (!made.ok) return refused(sentenceOf(made.error), form, fieldOf(made.error));
  stampOffice(dataFolder, now);
  const starter = oneOf(STARTERS, textOf(form, "starter"));
  const authority = textOf(form, "authorityName");
  if (starter !== null || authority !== "")
    addAuthority(
      {
        db: db(),
        now,
        today: officeDay(db(), now),
        dataFolder,
        newId: randomUUID,
        actor: made.value.user,
      },
      { name: authority, starter },
    );
  const token = newToken();
  startSession({ db: db(), now }, { userId: made.value.user.id, tokenHash: hashToken(token) });
  await keepSessionToken(token);
  return redirect("/");
}

/** Both halves of the form have a name and an email address; the office's come first. */
function fieldOf({ path, detail }: { readonly path: string; readonly detail: string }): string {
  if (path === "name" && !/office/.test(detail)) return "userName";
  if (path === "email") return "userEmail";
  return officeField(path);
}
