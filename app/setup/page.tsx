import type { Metadata } from "next";
import { redirect } from "next/navigation";
import { ActionForm } from "#app/_components/action-form.client.tsx";
import { SubmitButton } from "#app/_components/button.tsx";
import { Field } from "#app/_components/field.tsx";
import { OfficeFields } from "#app/_components/office-fields.tsx";
import { PageHead } from "#app/_components/page-head.tsx";
import { Section } from "#app/_components/section.tsx";
import { db } from "#app/db.ts";
import { getOffice } from "#db/queries/office.ts";
import { setUpAction } from "./actions.ts";

export const metadata: Metadata = { title: "First set-up" };
export const dynamic = "force-dynamic";

export default function SetUpPage() {
  if (getOffice(db()) !== null) redirect("/");
  return (
    <div className="sheet">
      <PageHead asked="Set up this office">
        <p>
          This installation is new. Say whose it is, and who runs it. All but the name can be added
          and changed later.
        </p>
      </PageHead>
      <ActionForm action={setUpAction} className="stack">
        <Section
          title="The office"
          note="Printed at the head of every letter, and in the packet as the contractor’s standing."
        >
          <OfficeFields office={null} />
        </Section>
        <Section
          title="The first admin"
          note="Signs in with this mail address, and adds the others."
        >
          <div className="form-grid">
            <Field label="Your name" name="userName" autoComplete="name" required />
            <Field
              label="Your mail address"
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
              hint="At least 12 characters; a few words do well"
              minLength={12}
              required
            />
          </div>
          <div>
            <SubmitButton pendingWord="Setting up …">Set up the office</SubmitButton>
          </div>
        </Section>
      </ActionForm>
    </div>
  );
}
