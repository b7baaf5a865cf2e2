import type { Metadata } from "next";
import Link from "next/link";
import { notFound } from "next/navigation";
import { ActionForm } from "#app/_components/action-form.client.tsx";
import { SubmitButton } from "#app/_components/button.tsx";
import { FormPictureView } from "#app/_components/form-picture.client.tsx";
import { Heads } from "#app/_components/heads.tsx";
import { JobButton } from "#app/_components/job-button.client.tsx";
import { NoticeBox } from "#app/_components/notice-box.tsx";
import { Section } from "#app/_components/section.tsx";
import { db } from "#app/db.ts";
import { listJobs } from "#db/queries/job.ts";
import type { AuthorityForm } from "#lib/domain/facts/form.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import type { FormPlan } from "#lib/domain/form/plan-form.ts";
import { planOf } from "#lib/domain/packet/sheets-form.ts";
import { dayAt } from "#lib/domain/time/days.ts";
import { formatDay } from "#lib/domain/time/format-day.ts";
import { formsOf } from "#lib/operations/forms-of.ts";
import { officeZone } from "#lib/operations/office-day.ts";
import { seenOf } from "#lib/operations/seen.ts";
import { typedSeen } from "#lib/operations/type-in-form.ts";
import { lineFileOf } from "../../../file.ts";
import { counted } from "../../../names.ts";
import { QuestionHead } from "../../../question-head.tsx";
import { dropStraysAction, makeFormAction } from "./actions.ts";
import { type Numbered, TypeIn } from "./empties.tsx";
import { Filled, TypeOver } from "./filled.tsx";

export const metadata: Metadata = { title: "Form" };

/** One of the authority's forms on this line: what stands in it, what is missing, and its PDF. */
export default async function FormPage({
  params,
}: {
  readonly params: Promise<{ lineId: string; formId: string }>;
}) {
  const { lineId, formId } = await params;
  const { file, report, office, may } = await lineFileOf(lineId);
  const form = formsOf(db(), file).find(({ id }) => id === formId);
  if (form === undefined || office === null) return notFound();
  const plan = planOf(form, { file, report, office });
  const work = may("work-the-file");
  const seen = seenOf(typedSeen(file, form.id));
  const numbered = plan.answers.map((answer, at) => ({ answer, at }));
  const empty = numbered.filter(isEmpty);
  const toType = work ? numbered.filter((each) => isEmpty(each) || isTyped(each)) : empty;
  const settled = numbered.filter((each) => !isEmpty(each));
  return (
    <>
      <QuestionHead lineId={lineId} question="authority" />
      <Section
        title={form.title}
        note={
          <>
            Filled in from this file; nothing is guessed. What goes where is decided for every line
            under{" "}
            <Link href={`/office/authorities/${form.authorityId}/forms/${form.id}`}>
              {file.authority?.name}
            </Link>
            .
          </>
        }
      >
        <p>{standing(plan)}</p>
        {plan.fill.overflow.map(({ title, rows }) => (
          <p key={title}>
            {title}: {counted(rows.length, "row")} more than the form has room for, on the attached
            sheet.
          </p>
        ))}
        {work ? (
          <JobButton
            start={makeFormAction.bind(null, lineId, [form.id])}
            working="Filling in the form"
            paper={`/lines/${lineId}/notices/paper`}
            main
          >
            Make the PDF
          </JobButton>
        ) : null}
        <Made lineId={lineId} file={file} form={form} today={report.today} />
      </Section>
      <Strays lineId={lineId} form={form} plan={plan} work={work} />
      {toType.length === 0 ? null : (
        <Section
          title={
            empty.length === 0 ? "Typed on this line" : `Empty: ${counted(empty.length, "field")}`
          }
          id="empty"
          note="Type what stands there on this line, or leave it empty on purpose. Clear what was typed, and the file’s own fact stands there again."
        >
          {work ? (
            <TypeIn {...{ lineId, form, seen }} fields={toType} />
          ) : (
            <Filled fields={toType} />
          )}
        </Section>
      )}
      <Section
        title="What stands where"
        id="filled"
        folded={`${counted(settled.length, "field")} with where it is from`}
      >
        <div className="stack">
          <Filled fields={settled} />
          {work && settled.length > 0 ? (
            <TypeOver {...{ lineId, form, seen }} fields={settled.filter(isFillable)} />
          ) : null}
        </div>
      </Section>
      <Section title="The page, with its fields numbered" id="picture" folded="the blank form">
        <FormPictureView
          address={`/office/authorities/${form.authorityId}/forms/${form.id}/print?version=${form.version}`}
          pages={form.pages}
          marks={form.fields.map(({ places }, at) => ({ number: at + 1, places }))}
        />
      </Section>
    </>
  );
}

function isEmpty({ answer: { state } }: Numbered): boolean {
  return state === "empty" || state === "unmapped";
}

function isTyped({ answer: { from } }: Numbered): boolean {
  return from === "typed";
}

function isFillable({ answer: { state } }: Numbered): boolean {
  return state !== "to-sign";
}

/** `9 fields filled in, 3 empty, 1 left empty on purpose, 1 to sign.` */
function standing({ answers }: FormPlan): string {
  const of = (...states: readonly string[]) =>
    answers.filter(({ state }) => states.includes(state)).length;
  const parts = [
    `${counted(of("filled"), "field")} filled in`,
    `${of("empty", "unmapped")} empty`,
    of("blank") === 0 ? "" : `${of("blank")} left empty on purpose`,
    of("to-sign") === 0 ? "" : `${of("to-sign")} to sign by hand`,
  ];
  return `${parts.filter((part) => part !== "").join(", ")}.`;
}

/** The PDFs made of it, with what went to the attached sheet or is in small type. */
function Made({
  lineId,
  file,
  form,
  today,
}: {
  readonly lineId: string;
  readonly file: LineFile;
  readonly form: AuthorityForm;
  readonly today: string;
}) {
  const zone = officeZone(db());
  const made = listJobs(db(), lineId).filter(
    ({ kind, subjectIds }) => kind === "form" && subjectIds.includes(form.id),
  );
  if (made.length === 0)
    return <p className="muted">No PDF yet. Make one any time to look at it; nothing is sent.</p>;
  return (
    <div className="scroll">
      <table className="plain">
        <caption>PDFs of this form, newest first</caption>
        <Heads of={["Made", "By", "How it came out", "Document"]} />
        <tbody>
          {made.map((job) => (
            <tr key={job.id}>
              <th scope="row">{formatDay(dayAt(job.createdAt, zone), today)}</th>
              <td>{job.by}</td>
              <td>{file.uploads.find(({ id }) => id === job.uploadId)?.note ?? job.problem}</td>
              <td>
                {job.uploadId === null ? (
                  <span className="muted">{job.state}</span>
                ) : (
                  <Link href={`/lines/${lineId}/notices/paper/${job.uploadId}`}>Open it</Link>
                )}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

/** What was typed into fields that a newer print no longer has. */
function Strays({
  lineId,
  form,
  plan,
  work,
}: {
  readonly lineId: string;
  readonly form: AuthorityForm;
  readonly plan: FormPlan;
  readonly work: boolean;
}) {
  if (plan.strays.length === 0) return null;
  const at = { lineId, formId: form.id, version: form.version };
  return (
    <NoticeBox kind="caution" title="Typed into fields that the form no longer has">
      <ul>
        {plan.strays.map(({ id, field, words }) => (
          <li key={id}>
            {field}: {words || "left empty"}
          </li>
        ))}
      </ul>
      {work ? (
        <ActionForm action={dropStraysAction.bind(null, at)} label="Fields that are gone">
          {plan.strays.map(({ id, field }) => (
            <input key={id} type="hidden" name="stray" value={field} />
          ))}
          <div>
            <SubmitButton pendingWord="Saving …" quiet>
              Remove these
            </SubmitButton>
          </div>
        </ActionForm>
      ) : null}
    </NoticeBox>
  );
}
