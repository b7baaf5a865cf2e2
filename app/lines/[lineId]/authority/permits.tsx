import Link from "next/link";
import { ActionForm } from "#app/_components/action-form.client.tsx";
import { SubmitButton } from "#app/_components/button.tsx";
import { Choice } from "#app/_components/choice.tsx";
import { Empty } from "#app/_components/empty.tsx";
import { Field } from "#app/_components/field.tsx";
import { SeenField } from "#app/_components/seen-field.client.tsx";
import type { Permit, PermitState, PermitStep } from "#lib/domain/facts/permit.ts";
import { waitsOn } from "#lib/domain/permit/order.ts";
import { PERMIT_KIND_WORDS, PERMIT_STATE_WORDS } from "#lib/domain/permit/state-words.ts";
import { nextStatesOf, permitStateOf, usualStepsOf } from "#lib/domain/permit/steps.ts";
import { capital } from "#lib/domain/say/capital.ts";
import { formatDay } from "#lib/domain/time/format-day.ts";
import { printedSeen } from "#lib/operations/correct-permit.ts";
import { seenOf } from "#lib/operations/seen.ts";
import { counted } from "../names.ts";
import { optionsOf } from "../terms.ts";
import { addPermitAction, correctPermitAction, stepPermitAction } from "./actions.ts";
import styles from "./authority.module.css";
import { Card, CardFields, type PermitProps } from "./permit-card.tsx";

/** Every permit with the steps that it took and those it can take now. */
export function Permits({ lineId, file, today, work }: Omit<PermitProps, "permit">) {
  return (
    <div className="stack-wide">
      {file.permits.length === 0 ? (
        <Empty title="No permits yet." example="Side sewer permit SS-26-0001, being drafted">
          <p>
            Ask which permits this site needs: often one for the sewer and, if the street is opened,
            one for the street.
          </p>
        </Empty>
      ) : null}
      {file.permits.map((permit) => (
        <PermitArticle
          key={permit.id}
          lineId={lineId}
          file={file}
          permit={permit}
          today={today}
          work={work}
        />
      ))}
      {work ? <AddPermit lineId={lineId} open={file.permits.length === 0} /> : null}
    </div>
  );
}

function PermitArticle({ lineId, file, permit, today, work }: PermitProps) {
  const steps = file.permitSteps.filter((step) => step.permitId === permit.id);
  const state = permitStateOf(file, permit);
  const waits = waitsOn(file, permit);
  return (
    <article className="stack">
      <h3>
        {PERMIT_KIND_WORDS[permit.kind]}
        {permit.number === "" ? ", no number yet" : ` ${permit.number}`}
      </h3>
      {permit.expiresOn === null ? null : (
        <p>Expires {formatDay(permit.expiresOn, today)}, as printed on it.</p>
      )}
      {work ? (
        <PaperForm key={`${permit.number} ${permit.expiresOn}`} lineId={lineId} permit={permit} />
      ) : null}
      <Card lineId={lineId} file={file} permit={permit} today={today} work={work} />
      {permit.note === "" ? null : <p className="muted">{permit.note}</p>}
      {waits === null ? null : <p className="strong">{waits}.</p>}
      {steps.length > SHOWN ? (
        <details>
          <summary>{counted(steps.length - SHOWN, "earlier step")}</summary>
          <Steps lineId={lineId} steps={steps.slice(0, -SHOWN)} today={today} />
        </details>
      ) : null}
      {steps.length === 0 ? (
        <p>No steps recorded: {PERMIT_STATE_WORDS[state]}.</p>
      ) : (
        <Steps lineId={lineId} steps={steps.slice(-SHOWN)} today={today} />
      )}
      {work ? (
        <NextStep
          key={state}
          lineId={lineId}
          permit={permit}
          usual={usualStepsOf(file, permit)}
          next={nextStatesOf(file, permit)}
          today={today}
        />
      ) : null}
    </article>
  );
}

/** So many of a permit’s last steps stand open. */
const SHOWN = 2;

function Steps({
  lineId,
  steps,
  today,
}: {
  readonly lineId: string;
  readonly steps: readonly PermitStep[];
  readonly today: string;
}) {
  return (
    <ol className={styles["steps"]}>
      {steps.map((step) => (
        <li key={step.id}>
          {PERMIT_STATE_WORDS[step.state]}, {formatDay(step.on, today)}
          <span className="muted small">
            {" "}
            {step.by}
            {step.note === "" ? "" : `: ${step.note}`}
          </span>
          {step.uploadId === null ? null : (
            <>
              {" "}
              <Link href={`/lines/${lineId}/notices/paper/${step.uploadId}`}>What was sent</Link>
            </>
          )}
        </li>
      ))}
    </ol>
  );
}

/** What is printed on the permit; open while the authority’s number is not in. */
function PaperForm({ lineId, permit }: { readonly lineId: string; readonly permit: Permit }) {
  return (
    <details className="screen-only" open={permit.number === ""}>
      <summary>
        {permit.number === "" ? "Enter its number" : "Correct number or expiration"}
      </summary>
      <ActionForm
        className="stack"
        action={correctPermitAction.bind(null, { lineId, permitId: permit.id })}
        label={`What is printed on the permit ${permit.number}`.trim()}
      >
        <SeenField value={seenOf(printedSeen(permit))} />
        <div className="form-grid">
          <Field
            label="Number"
            name="number"
            defaultValue={permit.number}
            example="SS-26-0412"
            hint="As issued by the authority; the closeout letter prints it."
          />
          <Field
            label="Printed expiration date, if any"
            name="expiresOn"
            type="date"
            defaultValue={permit.expiresOn ?? ""}
          />
          <Field label="Note" name="note" defaultValue={permit.note} />
        </div>
        <div>
          <SubmitButton pendingWord="Saving…" quiet>
            Save number and dates
          </SubmitButton>
        </div>
      </ActionForm>
    </details>
  );
}

interface NextProps {
  readonly lineId: string;
  readonly permit: Permit;
  readonly next: readonly PermitState[];
  readonly today: string;
}

/** The usual next step as of today in one press; any other, with a day and a note, beneath it. */
function NextStep({ usual, ...step }: NextProps & { readonly usual: readonly PermitState[] }) {
  const { lineId, permit, next, today } = step;
  if (next.length === 0) return <p className="muted">No further steps.</p>;
  return (
    <div className="stack-tight screen-only">
      {usual.length === 0 ? null : (
        <ActionForm
          className="stack-tight"
          action={stepPermitAction.bind(null, { lineId, permitId: permit.id })}
          label={`Record today for the permit ${permit.number}`.trim()}
        >
          <input type="hidden" name="on" value={today} />
          {usual.includes("working") && permit.postedOn === null ? (
            <details>
              <summary>Card posted for it: date, by whom, where</summary>
              <CardFields />
            </details>
          ) : null}
          <div className="cluster">
            <span className="muted">Record today:</span>
            {usual.map((state, at) => (
              <SubmitButton
                key={state}
                name="state"
                value={state}
                pendingWord="Saving…"
                quiet={at > 0}
              >
                {capital(PERMIT_STATE_WORDS[state])}
              </SubmitButton>
            ))}
          </div>
        </ActionForm>
      )}
      <details open={usual.length === 0}>
        <summary>Another step, date or note</summary>
        <StepForm {...step} />
      </details>
    </div>
  );
}

function StepForm({ lineId, permit, next, today }: NextProps) {
  return (
    <ActionForm
      className="stack screen-only"
      action={stepPermitAction.bind(null, { lineId, permitId: permit.id })}
      label={`Next step of the permit ${permit.number}`.trim()}
    >
      <div className="form-grid">
        <Choice
          label="Next step"
          name="state"
          required
          options={[
            { value: "", label: "select" },
            ...next.map((value) => ({ value, label: PERMIT_STATE_WORDS[value] })),
          ]}
        />
        <Field label="Date" name="on" type="date" required defaultValue={today} />
        <Field label="Note" name="note" example="Reviewer asks for the depth at the main" />
      </div>
      <div>
        <SubmitButton pendingWord="Saving…" quiet>
          Save step
        </SubmitButton>
      </div>
    </ActionForm>
  );
}

function AddPermit({ lineId, open }: { readonly lineId: string; readonly open: boolean }) {
  return (
    <details open={open}>
      <summary>Add a permit</summary>
      <ActionForm
        className="stack screen-only"
        action={addPermitAction.bind(null, lineId)}
        label="Add a permit"
        reset
      >
        <div className="form-grid">
          <Choice
            label="Kind"
            name="kind"
            required
            options={[{ value: "", label: "select" }, ...optionsOf(PERMIT_KIND_WORDS)]}
          />
          <Field label="Number" name="number" hint="Leave blank until the authority issues one." />
          <Field label="Printed expiration date, if any" name="expiresOn" type="date" />
          <Field label="Note" name="note" />
        </div>
        <div>
          <SubmitButton pendingWord="Saving…" quiet>
            Add permit
          </SubmitButton>
        </div>
      </ActionForm>
    </details>
  );
}
