import Link from "next/link";
import { Empty } from "#app/_components/empty.tsx";
import { Heads } from "#app/_components/heads.tsx";
import { Scroll } from "#app/_components/scroll.tsx";
import { counted } from "#app/lines/[lineId]/names.ts";
import type { AuthorityForm } from "#lib/domain/facts/form.ts";
import { undecidedFields } from "#lib/domain/form/undecided.ts";
import { PERMIT_KIND_WORDS } from "#lib/domain/permit/state-words.ts";
import { FormUpload } from "./form-upload.client.tsx";

/** The authority's own forms, each in its newest version, and the way to add one. */
export function FormList({
  authorityId,
  forms,
  may,
}: {
  readonly authorityId: string;
  readonly forms: readonly AuthorityForm[];
  readonly may: boolean;
}) {
  return (
    <div className="stack">
      {forms.length === 0 ? (
        <Empty title="No forms yet." example="Side sewer application, 2 pages, 38 fields">
          <p>Add the PDF that the authority hands out. It can have fields to fill in or none.</p>
        </Empty>
      ) : (
        <Scroll>
          <table className="plain">
            <Heads of={["Form", "Permit", { num: "Version" }, "Fields"]} />
            <tbody>
              {forms.map((form) => (
                <tr key={form.id}>
                  <th scope="row">
                    <Link href={`/office/authorities/${authorityId}/forms/${form.id}`}>
                      {form.title}
                    </Link>
                    {form.retired ? <span className="muted"> no longer used</span> : null}
                  </th>
                  <td>{PERMIT_KIND_WORDS[form.permitKind]}</td>
                  <td className="num">{form.version}</td>
                  <td>{fieldsOf(form)}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </Scroll>
      )}
      {may ? <FormUpload authorityId={authorityId} label="Add a form (PDF)" /> : null}
    </div>
  );
}

function fieldsOf(form: AuthorityForm): string {
  const undecided = undecidedFields(form).length;
  if (form.fields.length === 0) return "none: place boxes on its pages";
  return `${counted(form.fields.length, "field")}, ${undecided === 0 ? "all decided" : `${undecided} not decided`}`;
}
