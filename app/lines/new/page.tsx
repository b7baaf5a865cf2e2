import type { Metadata } from "next";
import Link from "next/link";
import { ActionForm } from "#app/_components/action-form.client.tsx";
import { SubmitButton } from "#app/_components/button.tsx";
import { Choice } from "#app/_components/choice.tsx";
import { Field } from "#app/_components/field.tsx";
import { PageHead } from "#app/_components/page-head.tsx";
import { db } from "#app/db.ts";
import { requireAct } from "#app/session.ts";
import { listAuthorityNames } from "#db/queries/authority.ts";
import { openLineAction } from "../actions.ts";

export const metadata: Metadata = { title: "Open a line" };

const NONE_YET =
  "None is entered yet. An admin adds it under Office, from an example if you like; it can be chosen later.";

export default async function NewLinePage() {
  await requireAct("work-the-file");
  const authorities = listAuthorityNames(db());
  // An office that works for one authority alone need not choose it.
  const [only] = authorities.length === 1 ? authorities : [];
  return (
    <div className="sheet sheet-narrow">
      <PageHead asked="Open a line">
        <p>One file per shared pipe, from the public main up. Next you will enter who is on it.</p>
      </PageHead>
      <ActionForm action={openLineAction}>
        <Field
          label="Name of the line"
          name="name"
          hint="A street, alley or block: whatever people will search for"
          example="Cinder Alley behind Fennel Row"
          required
        />
        <Field label="Town" name="town" example="Quillhaven, WA" />
        <Choice
          label="Authority"
          name="authorityId"
          hint={
            authorities.length === 0
              ? NONE_YET
              : "The city, utility or district whose rules apply. It can be chosen later."
          }
          defaultValue={only?.id}
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
        Have a line file from another office? <Link href="/lines/import">Import it</Link>.
      </p>
    </div>
  );
}
