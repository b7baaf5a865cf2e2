import { ActionForm } from "#app/_components/action-form.client.tsx";
import { SubmitButton } from "#app/_components/button.tsx";
import { Choice } from "#app/_components/choice.tsx";
import { Field } from "#app/_components/field.tsx";
import { Heads } from "#app/_components/heads.tsx";
import { JobButton } from "#app/_components/job-button.client.tsx";
import { Scroll } from "#app/_components/scroll.tsx";
import { Upload } from "#app/_components/upload.client.tsx";
import {
  type AgreementProgress,
  type AgreementState,
  agreementProgress,
} from "#lib/domain/agreement/agreement-progress.ts";
import type { AgreementStep, AgreementStepKind } from "#lib/domain/facts/agreement-step.ts";
import type { Agreement } from "#lib/domain/facts/authority.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import { formatDay } from "#lib/domain/time/format-day.ts";
import { listed, partyName, propertyName } from "../names.ts";
import { printAgreementAction, stepAgreementAction } from "./agreement-actions.ts";

const STATE_WORDS: Record<AgreementState, string> = {
  "not-begun": "not drafted yet",
  draft: "draft (no effect yet)",
  reviewed: "reviewed by the authority (no effect yet)",
  returned: "returned by the authority (no effect)",
  "being-signed": "being signed (no effect until all have signed)",
  signed: "signed by all, not yet notarized",
  notarised: "signed and notarized by all, not yet recorded",
  recorded: "recorded and in force",
  filed: "recorded and in force, its number filed with the authority",
  "given-up": "abandoned (no effect)",
};

const STEP_WORDS: Record<AgreementStepKind, string> = {
  drafted: "drafted",
  reviewed: "reviewed by the authority",
  returned: "returned by the authority, with changes",
  signed: "signed on paper",
  notarised: "notarized",
  recorded: "recorded by the county",
  "number-filed": "recording number filed with the authority",
  "given-up": "abandoned",
};

interface Part {
  readonly lineId: string;
  readonly file: LineFile;
  readonly today: string;
  readonly work: boolean;
}

/** How far each agreement has come that is drafted, reviewed, signed, notarized and recorded. */
export function AgreementWays(part: Part) {
  const { file } = part;
  if (file.agreements.length === 0) return null;
  return (
    <div className="stack-wide" id="agreement-ways" style={{ marginBlockStart: "var(--gap-5)" }}>
      {file.agreements.map((agreement) => (
        <Way key={agreement.id} {...part} agreement={agreement} />
      ))}
    </div>
  );
}

function Way({ agreement, ...part }: Part & { readonly agreement: Agreement }) {
  const { lineId, file, today, work } = part;
  const progress = agreementProgress(file, agreement);
  const { state, steps, waits } = progress;
  const old = steps.length === 0 && state === "recorded";
  return (
    <article className="stack">
      <h3>
        {agreement.title}: {STATE_WORDS[state]}
      </h3>
      {old ? null : <p>{waits}</p>}
      {old ? null : <Holders file={file} progress={progress} today={today} />}
      {steps.length === 0 ? null : <Steps file={file} steps={steps} today={today} />}
      {work && !old ? (
        <>
          {state === "recorded" || state === "filed" ? null : (
            <div className="screen-only">
              <JobButton
                start={printAgreementAction.bind(null, lineId, [agreement.id])}
                working="Making the draft"
                paper={`/lines/${lineId}/notices/paper`}
              >
                Draft as PDF
              </JobButton>
            </div>
          )}
          <details className="screen-only" open={steps.length > 0 && progress.next.length > 0}>
            <summary>Record a step</summary>
            <StepForm
              key={`${state} ${steps.length}`}
              {...part}
              agreement={agreement}
              progress={progress}
            />
          </details>
        </>
      ) : null}
    </article>
  );
}

/** Every title holder, with what is on file: no one signs this on screen. */
function Holders({
  file,
  progress: { holders },
  today,
}: {
  readonly file: LineFile;
  readonly progress: AgreementProgress;
  readonly today: string;
}) {
  if (holders.length === 0) return null;
  const day = (on: string | null, open: string) => (on === null ? open : formatDay(on, today));
  return (
    <Scroll>
      <table className="plain">
        <Heads of={["Title holder", "Property", "Signed", "Notarized"]} />
        <tbody>
          {holders.map((holder) => (
            <tr key={holder.partyId}>
              <th scope="row">
                {holder.name}
                {holder.capacityMissing ? (
                  <span className="muted small"> (who signs for it is not on file)</span>
                ) : null}
              </th>
              <td>{listed(holder.propertyIds.map((id) => propertyName(file, id)))}</td>
              <td>{day(holder.signedOn, "not yet")}</td>
              <td>{day(holder.notarisedOn, "not yet")}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </Scroll>
  );
}

function Steps({
  file,
  steps,
  today,
}: {
  readonly file: LineFile;
  readonly steps: readonly AgreementStep[];
  readonly today: string;
}) {
  return (
    <ol className="plain-list">
      {steps.map((step) => (
        <li key={step.id}>
          {formatDay(step.on, today)}: {STEP_WORDS[step.kind]}
          {step.partyId === null ? "" : `, ${partyName(file, step.partyId)}`}
          {step.number === "" ? "" : `, No. ${step.number}`}
          <span className="muted small">
            {" "}
            recorded by {step.by}
            {step.note === "" ? "" : `: ${step.note}`}
          </span>
        </li>
      ))}
    </ol>
  );
}

function StepForm({
  lineId,
  file,
  today,
  agreement,
  progress: { next, holders },
}: Part & { readonly agreement: Agreement; readonly progress: AgreementProgress }) {
  if (next.length === 0) return <p className="muted">No further steps.</p>;
  return (
    <ActionForm
      className="stack"
      action={stepAgreementAction.bind(null, { lineId, agreementId: agreement.id })}
      label={`Step of ${agreement.title}`}
    >
      <div className="form-grid">
        <Choice
          label="Step"
          name="kind"
          required
          options={[
            { value: "", label: "select" },
            ...next.map((value) => ({ value, label: STEP_WORDS[value] })),
          ]}
        />
        <Choice
          label="Signed or notarized by"
          name="partyId"
          options={[
            { value: "", label: "none, or select" },
            ...holders.map(({ partyId }) => ({ value: partyId, label: partyName(file, partyId) })),
          ]}
        />
        <Field label="Date" name="on" type="date" required defaultValue={today} />
        <Field
          label="Number"
          name="number"
          hint="The county’s recording number, or the authority’s review number."
        />
      </div>
      <Upload lineId={lineId} name="uploadId" label="Document, if any" />
      <Field label="Note" name="note" example="Signed at the counter, original kept in the safe" />
      <p className="muted">
        An agreement to be recorded is signed on paper before a notary, never on screen. A new or
        returned draft restarts signing.
      </p>
      <div>
        <SubmitButton pendingWord="Saving …" quiet>
          Save step
        </SubmitButton>
      </div>
    </ActionForm>
  );
}
