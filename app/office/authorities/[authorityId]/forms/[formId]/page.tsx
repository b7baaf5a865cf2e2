import type { Metadata } from "next";
import Link from "next/link";
import { notFound } from "next/navigation";
import { ActionForm } from "#app/_components/action-form.client.tsx";
import { SubmitButton } from "#app/_components/button.tsx";
import { Choice, Tick } from "#app/_components/choice.tsx";
import { Field } from "#app/_components/field.tsx";
import { FormPictureView } from "#app/_components/form-picture.client.tsx";
import { Heads } from "#app/_components/heads.tsx";
import { NoticeBox } from "#app/_components/notice-box.tsx";
import { PageHead } from "#app/_components/page-head.tsx";
import { pageFrom } from "#app/_components/pages.tsx";
import { Section } from "#app/_components/section.tsx";
import { db } from "#app/db.ts";
import { counted } from "#app/lines/[lineId]/names.ts";
import { optionsOf } from "#app/lines/[lineId]/terms.ts";
import { requireUser } from "#app/session.ts";
import { today } from "#app/today.ts";
import { getAuthority } from "#db/queries/authority.ts";
import { getForm, listFormVersions } from "#db/queries/form.ts";
import type { Authority } from "#lib/domain/facts/authority.ts";
import { type AuthorityForm, DAY_MANNERS } from "#lib/domain/facts/form.ts";
import { mayDo } from "#lib/domain/facts/user.ts";
import { undecidedFields } from "#lib/domain/form/undecided.ts";
import { PERMIT_KIND_WORDS } from "#lib/domain/permit/state-words.ts";
import { dayAt } from "#lib/domain/time/days.ts";
import { formatDay } from "#lib/domain/time/format-day.ts";
import { officeZone } from "#lib/operations/office-day.ts";
import { FormUpload } from "../form-upload.client.tsx";
import { saveFormFactsAction } from "./actions.ts";
import { Boxes } from "./boxes.tsx";
import { Mappings, MOST_FIELDS_SHOWN } from "./mappings.tsx";

interface Props {
  readonly params: Promise<{ authorityId: string; formId: string }>;
  readonly searchParams: Promise<{ readonly page?: string | string[] }>;
}

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  await requireUser();
  return { title: getForm(db(), (await params).formId)?.title ?? "Form" };
}

/** One form of an authority: what is on it, and what goes into each field on every line. */
export default async function FormPage({ params, searchParams }: Props) {
  const user = await requireUser();
  const { authorityId, formId } = await params;
  const authority = getAuthority(db(), authorityId);
  const form = getForm(db(), formId);
  if (authority === null || form?.authorityId !== authorityId) return notFound();
  const may = mayDo(user.role, "run-the-office");
  const undecided = undecidedFields(form).length;
  const placed = form.fields.filter((field) => field.placed).length;
  const address = `/office/authorities/${authorityId}/forms/${formId}/print?version=${form.version}`;
  return (
    <div className="sheet">
      <PageHead
        asked={form.title}
        answer={`${counted(form.pages.length, "page")}, ${counted(form.fields.length, "field")}, ${undecided === 0 ? "all decided" : `${undecided} not decided`}`}
      >
        <p className="cluster small screen-only">
          <Link href={`/office/authorities/${authorityId}#forms`}>{authority.name}</Link>
          <a href={address}>Open the blank form</a>
        </p>
        {form.retired ? <p className="muted">No longer used on any line.</p> : null}
      </PageHead>
      {form.notes.length === 0 ? null : (
        <NoticeBox title="About this PDF">
          <ul>
            {form.notes.map((note) => (
              <li key={note}>{note}</li>
            ))}
          </ul>
        </NoticeBox>
      )}
      <Section
        title="What goes into each field"
        note="A fact of the line’s file, the same words on every line, typed on each line, or left empty. A fact that is unknown on a line leaves its field empty, and the line’s page lists it."
      >
        {form.fields.length === 0 ? (
          <p>No fields: place boxes on its pages below.</p>
        ) : (
          <Mappings
            form={form}
            may={may}
            from={pageFrom((await searchParams).page, MOST_FIELDS_SHOWN)}
          />
        )}
      </Section>
      <Section title="The page, with its fields numbered" id="picture" folded="as it is handed out">
        <FormPictureView
          address={address}
          pages={form.pages}
          marks={form.fields.map(({ places }, at) => ({ number: at + 1, places }))}
          draws={may}
        />
      </Section>
      <Section
        title="Boxes"
        id="boxes"
        folded={placed === 0 ? "none placed" : `${placed} placed`}
        opened={form.fields.length === 0}
        note="For a form without fields, or where one is missing: a box is typed over the page. Draw it on the page above, or enter inches from the upper left corner."
      >
        <Boxes form={form} may={may} />
      </Section>
      <Section
        title="About the form"
        id="about"
        folded={`${PERMIT_KIND_WORDS[form.permitKind]}, dates as ${form.days}`}
      >
        {may ? (
          <FormFacts form={form} authority={authority} />
        ) : (
          <p className="muted">Only an office admin can change this.</p>
        )}
      </Section>
      <Section
        title="Versions"
        id="versions"
        folded={`version ${form.version} by ${form.savedBy}`}
        note="Every save is kept. What was filled in with an earlier version stays as it was."
      >
        <div className="stack">
          <Versions form={form} />
          {may ? (
            <FormUpload
              authorityId={authorityId}
              formId={formId}
              label="A newer print of this form (PDF); fields of the same name keep what goes into them"
            />
          ) : null}
        </div>
      </Section>
    </div>
  );
}

function FormFacts({
  form,
  authority,
}: {
  readonly form: AuthorityForm;
  readonly authority: Authority;
}) {
  const ids = { authorityId: authority.id, formId: form.id, version: form.version };
  return (
    <ActionForm action={saveFormFactsAction.bind(null, ids)} label="About the form">
      <div className="form-grid">
        <Field label="Title" name="title" defaultValue={form.title} />
        <Choice
          label="Permit it applies for"
          name="permitKind"
          defaultValue={form.permitKind}
          options={optionsOf(PERMIT_KIND_WORDS)}
        />
        <Choice
          label="Requirement it meets"
          name="requirementId"
          hint="The packet then holds this form in place of the sheet that Wyebook would make."
          defaultValue={form.requirementId ?? ""}
          options={[
            { value: "", label: "none: it comes besides" },
            ...authority.requirements.map(({ id, title }) => ({ value: id, label: title })),
          ]}
        />
        <Choice
          label="How it writes dates"
          name="days"
          defaultValue={form.days}
          options={DAY_MANNERS.map((manner) => ({ value: manner, label: manner }))}
        />
      </div>
      <Tick
        label="Make what is filled in part of the page, so that it can’t be changed in the PDF"
        name="flatten"
        defaultChecked={form.flatten}
      />
      <Tick label="No longer used" name="retired" defaultChecked={form.retired} />
      <div>
        <SubmitButton pendingWord="Saving …">Save</SubmitButton>
      </div>
    </ActionForm>
  );
}

function Versions({ form }: { readonly form: AuthorityForm }) {
  const zone = officeZone(db());
  const print = `/office/authorities/${form.authorityId}/forms/${form.id}/print`;
  return (
    <div className="scroll">
      <table className="plain">
        <Heads of={["Version", "Saved", "By", "PDF"]} />
        <tbody>
          {listFormVersions(db(), form.id).map(({ version, savedAt, savedBy, fileName }) => (
            <tr key={version}>
              <th scope="row">{version}</th>
              <td>{formatDay(dayAt(savedAt, zone), today())}</td>
              <td>{savedBy}</td>
              <td>
                <a href={`${print}?version=${version}`}>{fileName}</a>
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
