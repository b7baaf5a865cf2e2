import type { Metadata } from "next";
import { ActionForm } from "#app/_components/action-form.client.tsx";
import { SubmitButton } from "#app/_components/button.tsx";
import { CalendarFeeds } from "#app/_components/calendar-feeds.tsx";
import { Choice } from "#app/_components/choice.tsx";
import { Field } from "#app/_components/field.tsx";
import { PageHead } from "#app/_components/page-head.tsx";
import { Section } from "#app/_components/section.tsx";
import { SignIns } from "#app/_components/sign-ins.tsx";
import { USER_ROLE_WORDS } from "#app/_components/words.ts";
import { db } from "#app/db.ts";
import { requireUser } from "#app/session.ts";
import { signOutAction } from "#app/sign-in/actions.ts";
import { listFeeds } from "#db/queries/calendar-feed.ts";
import { getOffice } from "#db/queries/office.ts";
import { listSignIns } from "#db/queries/session.ts";
import { accountOf } from "#lib/operations/throttle.ts";
import styles from "./account.module.css";
import { changeOwnPasswordAction, makeFeedAction } from "./actions.ts";

export const metadata: Metadata = { title: "Your account" };

const MOST_SIGN_INS = 20;

/** What everyone may do with their own account, whatever their role. */
export default async function AccountPage() {
  const user = await requireUser();
  const zone = getOffice(db())?.zone ?? "UTC";
  const entries = listSignIns(db(), { account: accountOf(user.email), most: MOST_SIGN_INS });
  return (
    <div className="sheet">
      <PageHead asked="Your account">
        <p className="muted">
          {user.name}, {USER_ROLE_WORDS[user.role]}. Signs in as {user.email}.
        </p>
        <form action={signOutAction} className={styles["out"]}>
          <button type="submit" className="button">
            Sign out
          </button>
        </form>
      </PageHead>
      <div className={styles["beside"]}>
        <Section title="Password" note="Changing it signs you out everywhere else.">
          <ActionForm action={changeOwnPasswordAction} label="Change your password" reset>
            <Field
              label="Current password"
              name="current"
              type="password"
              autoComplete="current-password"
              required
            />
            <Field
              label="New password"
              name="password"
              type="password"
              autoComplete="new-password"
              hint="At least 12 characters. A short phrase of unrelated words works well."
              required
            />
            <div>
              <SubmitButton pendingWord="Changing …">Change the password</SubmitButton>
            </div>
          </ActionForm>
        </Section>
        <Section
          title="Calendar"
          id="calendar"
          note="A private address that shows deadlines, inspections, locate tickets and company papers in your own calendar program. No neighbor’s name is in it. Anyone who has the address can read it, so share it with no one."
        >
          <CalendarFeeds feeds={listFeeds(db(), user.id)} zone={zone} />
          <ActionForm action={makeFeedAction} label="Make a calendar address">
            <Choice
              label="Lines"
              name="which"
              options={[
                { value: "all", label: "All lines" },
                { value: "mine", label: "Lines I handle" },
              ]}
            />
            <div>
              <SubmitButton pendingWord="Making …">Make a calendar address</SubmitButton>
            </div>
          </ActionForm>
        </Section>
      </div>
      <Section
        title="Recent sign-ins"
        note="If one of these was not you, change your password and tell an admin."
      >
        <SignIns entries={entries} zone={zone} />
      </Section>
    </div>
  );
}
