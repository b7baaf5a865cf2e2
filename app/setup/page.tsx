import type { Metadata } from "next";
import { redirect } from "next/navigation";
import { ActionForm } from "#app/_components/action-form.client.tsx";
import { SubmitButton } from "#app/_components/button.tsx";
import { Field } from "#app/_components/field.tsx";
import { OfficeFields } from "#app/_components/office-fields.tsx";
import { PageHead } from "#app/_components/page-head.tsx";
import { Section } from "#app/_components/section.tsx";
import { StarterFields } from "#app/_components/starter-fields.tsx";
import { db } from "#app/db.ts";
import { getOffice } from "#db/queries/office.ts";
import { setUpAction } from "./actions.ts";

export const metadata: Metadata = { title: "Setup" };
export const dynamic = "force-dynamic";

export default function SetUpPage() {
  if (getOffice(db()) !== null) redirect("/");
  return (
    <div className="sheet">
      <PageHead asked="Set up your office">
        <p>
          Welcome. Enter your company name and the first administrator. Everything except the name
          can be added or changed later.
        </p>
      </PageHead>
      <ActionForm action={setUpAction} className="stack">
        <Section
          title="Your company"
          note="Printed on every letter and used in the permit packet as contractor information."
        >
          <OfficeFields office={null} />
        </Section>
        <Section
          title="First administrator"
          note="Signs in with this email address and adds the other users."
        >
          <div className="form-grid">
            <Field label="Your name" name="userName" autoComplete="name" required />
            <Field
              label="Your email address"
              name="userEmail"
              type="email"
              autoComplete="username"
              required
            />
            <Field
              label="Password"
              name="password"
              type="password"
              autoComplete="new-password"
              hint="At least 12 characters. A short phrase works well."
              minLength={12}
              required
            />
          </div>
        </Section>
        <Section
          title="Your authority"
          note="The city, utility or district that issues your sewer permits. You can add others under Office."
        >
          <StarterFields name="authorityName" none="No example; I will add it later" />
          <div>
            <SubmitButton pendingWord="Setting up …">Set up the office</SubmitButton>
          </div>
        </Section>
      </ActionForm>
    </div>
  );
}
