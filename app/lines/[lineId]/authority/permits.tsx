import { ActionForm } from "#app/_components/action-form.client.tsx";
import { SubmitButton } from "#app/_components/button.tsx";
import { Choice } from "#app/_components/choice.tsx";
import { Empty } from "#app/_components/empty.tsx";
import { Field } from "#app/_components/field.tsx";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import type { Permit } from "#lib/domain/facts/permit.ts";
import { type nextPermitStates, nextStatesOf, permitStateOf } from "#lib/domain/permit/steps.ts";
import { formatDay } from "#lib/domain/time/format-day.ts";
import { optionsOf, PERMIT_KIND_WORDS, PERMIT_STATE_WORDS } from "../terms.ts";
import { addPermitAction, correctPermitAction, stepPermitAction } from "./actions.ts";
import styles from "./authority.module.css";

/** Every permit with the steps that it took and those it can take now. */
export function Permits({
  lineId,
  file,
  today,
  work,
}: {
  readonly lineId: string;
  readonly file: LineFile;
  readonly today: string;
  readonly work: boolean;
}) {
  return (
    <div className="stack-wide">
      {file.permits.length === 0 ? (
        <Empty
          title="No permit is in the file yet."
          example="Side sewer permit SS-26-0001, being drafted"
        >
          <p>
            Ask the authority which permits this place needs: often one for the sewer and, where the
            street is opened, another for the street.
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

function PermitArticle({
  lineId,
  file,
  permit,
  today,
  work,
}: {
  readonly lineId: string;
  readonly file: LineFile;
  readonly permit: Permit;
  readonly today: string;
  readonly work: boolean;
}) {
  const steps = file.permitSteps.filter((step) => step.permitId === permit.id);
  const state = permitStateOf(file, permit);
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
      {permit.note === "" ? null : <p className="muted">{permit.note}</p>}
      {steps.length === 0 ? (
        <p>No step recorded: {PERMIT_STATE_WORDS[state]}.</p>
      ) : (
        <ol className={styles["steps"]}>
          {steps.map((step) => (
            <li key={step.id}>
              {PERMIT_STATE_WORDS[step.state]}, {formatDay(step.on, today)}
              <span className="muted small">
                {" "}
                {step.by}
                {step.note === "" ? "" : `: ${step.note}`}
              </span>
            </li>
          ))}
        </ol>
      )}
      {work ? (
        <StepForm
          key={state}
          lineId={lineId}
          permit={permit}
          next={nextStatesOf(file, permit)}
          today={today}
        />
      ) : null}
    </article>
  );
}

/** What is printed on the permit; open while the authority’s number is not in. */
function PaperForm({ lineId, permit }: { readonly lineId: string; readonly permit: Permit }) {
  return (
    <details className="screen-only" open={permit.number === ""}>
      <summary>{permit.number === "" ? "Enter its number" : "Correct number or expiry"}</summary>
      <ActionForm
        className="stack"
        action={correctPermitAction.bind(null, { lineId, permitId: permit.id })}
        label={`What is printed on the permit ${permit.number}`.trim()}
      >
        <div className="form-grid">
          <Field
            label="Number"
            name="number"
            defaultValue={permit.number}
            example="SS-26-0412"
            hint="As the authority gives it; the close-out letter prints it."
          />
          <Field
            label="Printed expiry, if any"
            name="expiresOn"
            type="date"
            defaultValue={permit.expiresOn ?? ""}
          />
          <Field label="Note" name="note" defaultValue={permit.note} />
        </div>
        <div>
          <SubmitButton pendingWord="Saving …" quiet>
            Save what is printed
          </SubmitButton>
        </div>
      </ActionForm>
    </details>
  );
}

function StepForm({
  lineId,
  permit,
  next,
  today,
}: {
  readonly lineId: string;
  readonly permit: Permit;
  readonly next: ReturnType<typeof nextPermitStates>;
  readonly today: string;
}) {
  if (next.length === 0) return <p className="muted">Nothing follows from here.</p>;
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
            { value: "", label: "choose" },
            ...next.map((value) => ({ value, label: PERMIT_STATE_WORDS[value] })),
          ]}
        />
        <Field label="On which day" name="on" type="date" required defaultValue={today} />
        <Field label="Note" name="note" example="Reviewer asks for the depth at the main" />
      </div>
      <div>
        <SubmitButton pendingWord="Recording …" quiet>
          Record the step
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
            options={[{ value: "", label: "choose" }, ...optionsOf(PERMIT_KIND_WORDS)]}
          />
          <Field label="Number" name="number" hint="Empty until the authority gives one." />
          <Field label="Printed expiry, if any" name="expiresOn" type="date" />
          <Field label="Note" name="note" />
        </div>
        <div>
          <SubmitButton pendingWord="Adding …" quiet>
            Add the permit
          </SubmitButton>
        </div>
      </ActionForm>
    </details>
  );
}
