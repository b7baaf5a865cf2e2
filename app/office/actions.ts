"use server";

import { revalidatePath } from "next/cache";
import { redirect } from "next/navigation";
import { type FormState, oneOf, refused, textOf } from "#app/form.ts";
import { overtaken, sentenceOf, stateOf } from "#app/messages.ts";
import { officeField, officeFrom } from "#app/office-form.ts";
import { requireAct } from "#app/session.ts";
import { USER_ROLES } from "#lib/domain/facts/user.ts";
import { STARTERS } from "#lib/domain/starters/authorities.ts";
import { addAuthority } from "#lib/operations/add-authority.ts";
import { addUser } from "#lib/operations/add-user.ts";
import { changeUser } from "#lib/operations/change-user.ts";
import { saveOffice } from "#lib/operations/save-office.ts";

export async function saveOfficeAction(_state: FormState, form: FormData): Promise<FormState> {
  const act = await requireAct();
  const office = officeFrom(form);
  if (!office.ok) return refused(office.error.message, form, office.error.path);
  const saved = saveOffice(act, office.value, { seen: textOf(form, "seen") });
  if (!saved.ok && saved.error.reason === "changed-meanwhile") {
    revalidatePath("/", "layout");
    return overtaken(saved.error.detail, { where: "above the form", form });
  }
  if (!saved.ok) return refused(sentenceOf(saved.error), form, officeField(saved.error.path));
  revalidatePath("/", "layout");
  return stateOf(saved, { words: "Saved.", form });
}

export async function addUserAction(_state: FormState, form: FormData): Promise<FormState> {
  const act = await requireAct();
  const name = textOf(form, "name");
  const added = await addUser(act, {
    name,
    email: textOf(form, "email"),
    role: oneOf(USER_ROLES, textOf(form, "role")) ?? "viewer",
    password: passwordFrom(form),
  });
  revalidatePath("/office");
  return stateOf(added, { words: `${name} can now sign in.`, form });
}

export async function changeUserAction(
  userId: string,
  _state: FormState,
  form: FormData,
): Promise<FormState> {
  const act = await requireAct();
  const changed = await changeUser(act, {
    userId,
    name: textOf(form, "name"),
    role: oneOf(USER_ROLES, textOf(form, "role")) ?? "viewer",
    disabled: textOf(form, "access") === "none",
    password: passwordFrom(form),
  });
  revalidatePath("/office");
  return stateOf(changed, { words: "Saved.", form });
}

/** A new authority starts with its name alone, or from an example. */
export async function addAuthorityAction(_state: FormState, form: FormData): Promise<FormState> {
  const act = await requireAct();
  const made = addAuthority(act, {
    name: textOf(form, "name"),
    starter: oneOf(STARTERS, textOf(form, "starter")),
  });
  if (!made.ok) return refused(sentenceOf(made.error), form, made.error.path);
  return redirect(`/office/authorities/${made.value.authorityId}`);
}

function passwordFrom(form: FormData): string {
  const password = form.get("password");
  return typeof password === "string" ? password : "";
}
