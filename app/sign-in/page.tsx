import type { Metadata } from "next";
import { redirect } from "next/navigation";
import { ActionForm } from "#app/_components/action-form.client.tsx";
import { SubmitButton } from "#app/_components/button.tsx";
import { Field } from "#app/_components/field.tsx";
import { PageHead } from "#app/_components/page-head.tsx";
import { db } from "#app/db.ts";
import { ownPath } from "#app/own-path.ts";
import { getUser } from "#app/session.ts";
import { getOffice } from "#db/queries/office.ts";
import { signInAction } from "./actions.ts";

export const metadata: Metadata = { title: "Sign in" };

export default async function SignInPage({
  searchParams,
}: {
  readonly searchParams: Promise<{ for?: string | string[] }>;
}) {
  const asked = ownPath(String((await searchParams).for ?? ""));
  if ((await getUser()) !== null) redirect(asked);
  const office = getOffice(db());
  if (office === null) redirect("/setup");
  return (
    <div className="sheet sheet-narrow">
      <PageHead asked={`Sign in to ${office.name}`} />
      <ActionForm action={signInAction}>
        <input type="hidden" name="for" value={asked} />
        <Field label="Email address" name="email" type="email" autoComplete="username" required />
        <Field
          label="Password"
          name="password"
          type="password"
          autoComplete="current-password"
          required
        />
        <div>
          <SubmitButton pendingWord="Signing in …">Sign in</SubmitButton>
        </div>
      </ActionForm>
      <p className="muted small">
        No account or forgot your password? An office admin can add you or reset it under Office.
        You can change your own password under your name.
      </p>
    </div>
  );
}
