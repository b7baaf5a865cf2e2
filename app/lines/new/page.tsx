import type { Metadata } from "next";
import Link from "next/link";
import { ActionForm } from "#app/_components/action-form.client.tsx";
import { SubmitButton } from "#app/_components/button.tsx";
import { Choice } from "#app/_components/choice.tsx";
import { Field } from "#app/_components/field.tsx";
import { PageHead } from "#app/_components/page-head.tsx";
import { db } from "#app/db.ts";
import { requireAct } from "#app/session.ts";
import { listAuthorities } from "#db/queries/authority.ts";
import { openLineAction } from "../actions.ts";

export const metadata: Metadata = { title: "Open a line" };

export default async function NewLinePage() {
  await requireAct("work-the-file");
  const authorities = listAuthorities(db());
  return (
    <div className="sheet sheet-narrow">
      <PageHead asked="Open a line">
        <p>
          One file for one shared pipe, from the public main up. The next page asks who is on it.
        </p>
      </PageHead>
      <ActionForm action={openLineAction}>
        <Field
          label="What the office calls it"
          name="name"
          hint="A street, an alley, a block: whatever people will ask for"
          example="Cinder Alley behind Fennel Row"
          required
        />
        <Field label="Town" name="town" example="Quillhaven, WA" />
        <Choice
          label="Authority"
          name="authorityId"
          hint="The city, utility or district whose rules apply. It can be named later."
          options={[
            { value: "", label: "not known yet" },
            ...authorities.map(({ id, name }) => ({ value: id, label: name })),
          ]}
        />
        <div>
          <SubmitButton pendingWord="Opening …">Open the file</SubmitButton>
        </div>
      </ActionForm>
      <p className="small">
        Have a line file from another office? <Link href="/lines/import">Bring it in</Link>.
      </p>
    </div>
  );
}
