import type { Metadata } from "next";
import { ActionForm } from "#app/_components/action-form.client.tsx";
import { SubmitButton } from "#app/_components/button.tsx";
import { Field } from "#app/_components/field.tsx";
import { PageHead } from "#app/_components/page-head.tsx";
import { requireAct } from "#app/session.ts";
import { importLineAction } from "./actions.ts";

export const metadata: Metadata = { title: "Bring in a line" };

export default async function ImportLinePage() {
  await requireAct("work-the-file");
  return (
    <div className="sheet sheet-narrow">
      <PageHead asked="Bring in a line">
        <p>
          From a line file: the whole file on one line as text, as “Export this line” writes it. It
          becomes a new line; nothing that is here is changed.
        </p>
      </PageHead>
      <ActionForm action={importLineAction}>
        <div className="field">
          <label htmlFor="line-file">The line file</label>
          <input id="line-file" className="input" type="file" name="file" accept=".json" />
        </div>
        <Field label="Or paste it here" name="text" rows={10} />
        <div>
          <SubmitButton pendingWord="Reading …">Bring it in</SubmitButton>
        </div>
      </ActionForm>
    </div>
  );
}
