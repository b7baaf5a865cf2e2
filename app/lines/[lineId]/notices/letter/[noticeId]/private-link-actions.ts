"use server";

import { revalidatePath } from "next/cache";
import { z } from "zod";
import { formAction, onLineAt } from "#app/action.ts";
import { id } from "#app/fields.ts";
import { textOf } from "#app/form.ts";
import { sentenceOf } from "#app/messages.ts";
import { newToken, requireAct } from "#app/session.ts";
import { makeLink } from "#lib/operations/make-link.ts";
import { revokeLink } from "#lib/operations/revoke-link.ts";
import { linkBase } from "../../link-address.ts";
import type { MadeLink } from "./private-link-form.client.tsx";

interface LetterPlace {
  readonly lineId: string;
  readonly noticeId: string;
}

/** Makes a private link and hands its address back, this once. */
export async function makeLinkAction(
  { lineId, noticeId }: LetterPlace,
  _state: MadeLink,
  form: FormData,
): Promise<MadeLink> {
  const act = await requireAct("work-the-file");
  const secret = newToken();
  const made = makeLink(act, { lineId, noticeId, days: Number(textOf(form, "days")), secret });
  if (!made.ok) return { url: "", message: sentenceOf(made.error) };
  revalidatePath(`/lines/${lineId}`, "layout");
  return { url: `${linkBase()}/n/${secret}`, message: "" };
}

/** Revokes the private link. */
export const revokeLinkAction = formAction(onLineAt({ noticeId: id }), {
  may: "work-the-file",
  typed: z.object({}),
  does: revokeLink,
  says: "Revoked. The link no longer works.",
});
