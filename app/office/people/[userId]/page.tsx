import type { Metadata } from "next";
import Link from "next/link";
import { notFound } from "next/navigation";
import { ActionForm } from "#app/_components/action-form.client.tsx";
import { SubmitButton } from "#app/_components/button.tsx";
import { CalendarFeeds } from "#app/_components/calendar-feeds.tsx";
import { Choice } from "#app/_components/choice.tsx";
import { Field } from "#app/_components/field.tsx";
import { PageHead } from "#app/_components/page-head.tsx";
import { Section } from "#app/_components/section.tsx";
import { SeenField } from "#app/_components/seen-field.client.tsx";
import { db } from "#app/db.ts";
import { requireAct } from "#app/session.ts";
import { listFeeds } from "#db/queries/calendar-feed.ts";
import { getOffice } from "#db/queries/office.ts";
import { getUser } from "#db/queries/user.ts";
import { userSeen } from "#lib/operations/change-user.ts";
import { seenOf } from "#lib/operations/seen.ts";
import { changeUserAction } from "../../actions.ts";
import { ROLE_OPTIONS } from "../../role-options.ts";

export const metadata: Metadata = { title: "User" };

export default async function PersonPage({
  params,
}: {
  readonly params: Promise<{ userId: string }>;
}) {
  await requireAct("run-the-office");
  const user = getUser(db(), (await params).userId);
  if (user === null) return notFound();
  return (
    <div className="sheet sheet-narrow">
      <PageHead asked={user.name}>
        <p className="muted">Signs in as {user.email}</p>
      </PageHead>
      <ActionForm
        action={changeUserAction.bind(null, { userId: user.id })}
        label={`Change ${user.name}`}
      >
        <SeenField value={seenOf(userSeen(user))} />
        <Field label="Name" name="name" defaultValue={user.name} required />
        <Choice label="Role" name="role" options={ROLE_OPTIONS} defaultValue={user.role} />
        <Choice
          label="Access"
          name="access"
          defaultValue={user.disabled ? "none" : "yes"}
          hint="Removing access signs them out everywhere; their name stays in the history"
          options={[
            { value: "yes", label: "active" },
            { value: "none", label: "disabled" },
          ]}
        />
        <Field
          label="New password"
          name="password"
          type="password"
          autoComplete="new-password"
          hint="Leave blank to keep the current password. At least 12 characters; a short phrase works well."
        />
        <div>
          <SubmitButton pendingWord="Saving …">Save</SubmitButton>
        </div>
      </ActionForm>
      <Section title="Calendar addresses">
        <CalendarFeeds feeds={listFeeds(db(), user.id)} zone={getOffice(db())?.zone ?? "UTC"} />
      </Section>
      <p>
        <Link href="/office">Back to the office</Link>
      </p>
    </div>
  );
}
