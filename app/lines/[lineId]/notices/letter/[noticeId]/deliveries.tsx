import { ActionForm } from "#app/_components/action-form.client.tsx";
import { SubmitButton } from "#app/_components/button.tsx";
import { Choice } from "#app/_components/choice.tsx";
import { Field } from "#app/_components/field.tsx";
import { SeenField } from "#app/_components/seen-field.client.tsx";
import { Upload } from "#app/_components/upload.client.tsx";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import type { Delivery, Notice } from "#lib/domain/facts/notice.ts";
import { METHOD_WORDS, OUTCOME_WORDS } from "#lib/domain/facts/notice-words.ts";
import { type NextWay, nextWay } from "#lib/domain/notices/next-way.ts";
import { numberFault } from "#lib/domain/notices/tracking.ts";
import { canBeTaken, wayRuleOf } from "#lib/domain/notices/way-rule.ts";
import { capital } from "#lib/domain/say/capital.ts";
import { formatDay } from "#lib/domain/time/format-day.ts";
import { formatTime } from "#lib/domain/time/time-of-day.ts";
import { seenOf } from "#lib/operations/seen.ts";
import { optionsOf } from "../../../terms.ts";
import { changeDeliveryAction, recordDeliveryAction } from "../../actions.ts";
import { PaperLink } from "../../paper-link.tsx";

interface DeliveriesProps {
  readonly lineId: string;
  readonly file: LineFile;
  readonly notice: Notice;
  readonly today: string;
  /** Whether the user may write. */
  readonly work: boolean;
}

/** Every delivery attempt, its result, and a form for one more. */
export function Deliveries({ lineId, file, notice, today, work }: DeliveriesProps) {
  const attempts = file.deliveries.filter((delivery) => delivery.noticeId === notice.id);
  return (
    <div className="stack">
      {attempts.length === 0 ? <p>No delivery attempts.</p> : null}
      {attempts.map((attempt) => (
        <Attempt
          key={attempt.id}
          lineId={lineId}
          file={file}
          attempt={attempt}
          today={today}
          work={work}
        />
      ))}
      {work ? (
        <AnotherAttempt
          lineId={lineId}
          noticeId={notice.id}
          today={today}
          next={nextWay(file, notice)}
        />
      ) : null}
    </div>
  );
}

function Attempt({
  lineId,
  file,
  attempt,
  today,
  work,
}: {
  readonly lineId: string;
  readonly file: LineFile;
  readonly attempt: Delivery;
  readonly today: string;
  readonly work: boolean;
}) {
  const outcomeOn = attempt.outcomeOn === null ? "" : ` ${formatDay(attempt.outcomeOn, today)}`;
  return (
    <article className="stack-tight">
      <h3>
        {capital(METHOD_WORDS[attempt.method])}, {formatDay(attempt.sentOn, today)}:{" "}
        {OUTCOME_WORDS[attempt.outcome]}
        {outcomeOn}
      </h3>
      <p className="muted">
        {byWords(attempt)}
        {attempt.tracking === "" ? "" : ` Tracking number ${attempt.tracking}.`}
        {attempt.note === "" ? "" : ` ${attempt.note}`}
      </p>
      <NumberDoubt attempt={attempt} />
      <PaperLink lineId={lineId} file={file} uploadId={attempt.proofUploadId} words="Proof" />
      <PaperLink
        lineId={lineId}
        file={file}
        uploadId={attempt.declaredUploadId}
        words="Signed declaration"
      />
      {work ? (
        <details open={attempt.outcome === "on-its-way" && awaitsWord(file, attempt)}>
          <summary>Result</summary>
          <OutcomeForm lineId={lineId} file={file} attempt={attempt} today={today} />
        </details>
      ) : null}
    </article>
  );
}

/** By whom, at what time, where and into whose hands, as far as it is on file. */
function byWords({ by, at, place, handedTo }: Delivery): string {
  const parts = [
    `By ${by}`,
    ...(handedTo === "" ? [] : [`to ${handedTo}`]),
    ...(place === "" ? [] : [place]),
    ...(at === "" ? [] : [`at ${formatTime(at)}`]),
  ];
  return `${parts.join(", ")}.`;
}

/** A number of which one digit can't be right proves nothing once somebody looks it up. */
function NumberDoubt({ attempt: { method, tracking } }: { readonly attempt: Delivery }) {
  const fault = method === "certified" ? numberFault(tracking) : null;
  return fault === null ? null : <p className="mend">{fault.words}.</p>;
}

function OutcomeForm({
  lineId,
  file,
  attempt,
  today,
}: {
  readonly lineId: string;
  readonly file: LineFile;
  readonly attempt: Delivery;
  readonly today: string;
}) {
  const proof = file.uploads.find((upload) => upload.id === attempt.proofUploadId);
  return (
    <ActionForm
      key={`${attempt.outcome} ${attempt.outcomeOn}`}
      action={changeDeliveryAction.bind(null, { lineId, deliveryId: attempt.id })}
      label="Result of the delivery"
    >
      <SeenField value={seenOf(attempt)} />
      <div className="form-grid">
        <Choice
          label="Result"
          name="outcome"
          defaultValue={attempt.outcome}
          options={outcomesFor(file, attempt)}
          hint={wayRuleOf(file, attempt).because}
        />
        <Field
          label="Date"
          name="outcomeOn"
          type="date"
          defaultValue={attempt.outcomeOn ?? today}
        />
        <Field label="Tracking number" name="tracking" defaultValue={attempt.tracking} />
        <Field
          label="Note"
          name="note"
          defaultValue={attempt.note}
          example="Returned: PO box closed"
        />
        <Upload
          lineId={lineId}
          name="proofUploadId"
          label="Proof"
          hint="The signed receipt, the record of delivery, or a photo of the posted notice."
          {...(proof === undefined ? {} : { stored: { id: proof.id, name: proof.name } })}
        />
      </div>
      <div>
        <SubmitButton pendingWord="Recording …" quiet>
          Record the result
        </SubmitButton>
      </div>
    </ActionForm>
  );
}

/** Whether anything more is to be heard of an attempt unless it comes back. */
function awaitsWord(file: LineFile, attempt: Delivery): boolean {
  if (attempt.method === "by-hand") return false;
  return canBeTaken(attempt.method, wayRuleOf(file, attempt));
}

/** Without "delivered" where the way can't show it. */
function outcomesFor(file: LineFile, attempt: Delivery) {
  const taken = canBeTaken(attempt.method, wayRuleOf(file, attempt));
  const never = !taken && attempt.outcome !== "delivered";
  return optionsOf(OUTCOME_WORDS).filter(({ value }) => !(never && value === "delivered"));
}

/** One more attempt; after one that failed the next way is said, and selected in the form. */
function AnotherAttempt({
  lineId,
  noticeId,
  today,
  next,
}: {
  readonly lineId: string;
  readonly noticeId: string;
  readonly today: string;
  readonly next: NextWay | null;
}) {
  return (
    <>
      {next === null ? null : (
        <p>
          {next.because}. Next: <strong>{METHOD_WORDS[next.method]}</strong>.
        </p>
      )}
      <details key={next?.method ?? "none"}>
        <summary>Add an attempt</summary>
        <ActionForm
          action={recordDeliveryAction.bind(null, { lineId, noticeId })}
          label="Add an attempt"
          reset
        >
          <div className="form-grid">
            <Choice
              label="Method"
              name="method"
              required
              defaultValue={next?.method ?? ""}
              options={[{ value: "", label: "select" }, ...optionsOf(METHOD_WORDS)]}
            />
            <Field label="Date" name="sentOn" type="date" required defaultValue={today} />
            <Field label="Time" name="at" example="4:05 pm" />
            <Field
              label="Done by"
              name="doneBy"
              hint="Blank if it was you."
              example="Marcus Reyes"
            />
            <Field label="Where" name="place" example="Front door of unit 2" />
            <Field label="Handed to" name="handedTo" hint="Only if hand delivered." />
            <Field label="Tracking number" name="tracking" />
            <Field label="Note" name="note" example="Gate was locked" />
            <Upload
              lineId={lineId}
              name="proofUploadId"
              label="Photo or receipt"
              hint="A photo of the posted notice, the certificate of mailing. Optional."
            />
          </div>
          <div>
            <SubmitButton pendingWord="Recording …" quiet>
              Record the attempt
            </SubmitButton>
          </div>
        </ActionForm>
      </details>
    </>
  );
}
