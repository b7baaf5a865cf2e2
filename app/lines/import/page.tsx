import type { Metadata } from "next";
import { ActionForm } from "#app/_components/action-form.client.tsx";
import { SubmitButton } from "#app/_components/button.tsx";
import { Field } from "#app/_components/field.tsx";
import { PageHead } from "#app/_components/page-head.tsx";
import { requireAct } from "#app/session.ts";
import { importLineAction } from "./actions.ts";

export const metadata: Metadata = { title: "Import a line" };

export default async function ImportLinePage() {
  await requireAct("work-the-file");
  return (
    <div className="sheet sheet-narrow">
      <PageHead asked="Import a line">
        <p>
          From a line file exported by Wyebook. It is added as a new line; nothing here is changed.
        </p>
      </PageHead>
      <ActionForm action={importLineAction}>
        <div className="field">
          <label htmlFor="line-file">Line file</label>
          <input id="line-file" className="input" type="file" name="file" accept=".json" />
        </div>
        <Field label="Or paste it here" name="text" rows={10} />
        <div>
          <SubmitButton pendingWord="Importing …">Import</SubmitButton>
        </div>
      </ActionForm>
    </div>
  );
}
