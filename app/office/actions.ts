"use server";

import { z } from "zod";
import { formAction, officeAction, placeAt } from "#app/action.ts";
import { asTyped, checked, fileOrNull, id, numberOrNull, oneInOr, text } from "#app/fields.ts";
import { OFFICE_FIELDS, officeField, officeOf } from "#app/office-form.ts";
import { USER_ROLES } from "#lib/domain/facts/user.ts";
import { STARTERS } from "#lib/domain/starters/authorities.ts";
import { readEnv } from "#lib/env.ts";
import { addAuthority } from "#lib/operations/add-authority.ts";
import { addUser } from "#lib/operations/add-user.ts";
import { changeUser } from "#lib/operations/change-user.ts";
import { saveDailyMail } from "#lib/operations/daily-mail.ts";
import { importAuthority } from "#lib/operations/import-authority.ts";
import { saveMailRules } from "#lib/operations/save-mail-rules.ts";
import { saveOffice } from "#lib/operations/save-office.ts";
import { saveReminderRule } from "#lib/operations/save-reminder-rule.ts";
import { testMail } from "#lib/operations/test-mail.ts";
import { err } from "#lib/result.ts";

export const saveOfficeAction = officeAction("/", {
  may: null,
  typed: z.object({ ...OFFICE_FIELDS, seen: text }),
  does: (act, { seen, ...office }) => saveOffice(act, officeOf(office), { seen }),
  says: "Saved.",
  theirs: "above the form",
  field: officeField,
});

const role = oneInOr(USER_ROLES, "viewer");

export const addUserAction = officeAction("/office", {
  may: null,
  typed: z.object({ name: text, email: text, role, password: asTyped }),
  does: addUser,
  says: (_value, { name }) => `${name} can now sign in.`,
});

export const changeUserAction = formAction(
  placeAt({ userId: id }, () => "/office"),
  {
    may: null,
    typed: z.object({ name: text, role, access: text, password: asTyped, seen: text }),
    does: (act, { access, ...user }) => changeUser(act, { ...user, disabled: access === "none" }),
    says: "Saved.",
    theirs: "under Office, in the list of people",
  },
);

/** A new authority starts with its name alone, or from an example. */
export const addAuthorityAction = officeAction("/office", {
  may: null,
  typed: z.object({ name: text, starter: oneInOr(STARTERS, null) }),
  does: addAuthority,
  says: "",
  leadsTo: ({ authorityId }) => `/office/authorities/${authorityId}`,
});

/** Sends whoever asks a message by the settings as they are, and opens the mailbox. */
export const testMailAction = officeAction("/office", {
  may: null,
  typed: z.object({}),
  does: (act) => testMail(act, readEnv()),
  says: ({ said }) => said,
});

export const saveReminderRuleAction = officeAction("/office", {
  may: null,
  typed: z.object({
    kind: text,
    daysAfter: numberOrNull,
    every: numberOrNull,
    most: numberOrNull,
    sends: checked,
    seen: text,
  }),
  does: saveReminderRule,
  says: "Saved.",
  theirs: "in the list above the form",
});

/** An authority file as chosen from the disk. */
export const importAuthorityAction = officeAction("/office", {
  may: null,
  typed: z.object({ file: fileOrNull, agreed: checked }),
  does: async (act, { file, agreed }) =>
    file === null
      ? err({ path: "file", message: "Nothing was imported: choose an authority file." })
      : importAuthority(act, { text: await file.text(), agreed }),
  says: "",
  leadsTo: ({ authorityId }) => `/office/authorities/${authorityId}`,
});

export const saveDailyMailAction = officeAction("/office", {
  may: null,
  typed: z.object({ daily: checked, seen: text }),
  does: saveDailyMail,
  says: "Saved.",
  theirs: "above the form",
});

export const saveMailRulesAction = officeAction("/office", {
  may: null,
  typed: z.object({ perHour: numberOrNull, seen: text }),
  does: saveMailRules,
  says: "Saved.",
  theirs: "above the form",
});
