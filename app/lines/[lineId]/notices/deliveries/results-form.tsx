import Link from "next/link";
import { ActionForm } from "#app/_components/action-form.client.tsx";
import { SubmitButton } from "#app/_components/button.tsx";
import { Choice } from "#app/_components/choice.tsx";
import { Field } from "#app/_components/field.tsx";
import stacks from "#app/_components/stacks.module.css";
import { Upload } from "#app/_components/upload.client.tsx";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import type { Delivery } from "#lib/domain/facts/notice.ts";
import { METHOD_WORDS, OUTCOME_WORDS } from "#lib/domain/facts/notice-words.ts";
import { canBeTaken, wayRuleOf } from "#lib/domain/notices/way-rule.ts";
import { formatDay } from "#lib/domain/time/format-day.ts";
import { partyName } from "../../names.ts";
import { LETTER_WORDS, optionsOf } from "../../terms.ts";
import { changeDeliveriesAction } from "../actions.ts";
import { TickAll } from "../draft-tools.client.tsx";

/** One result for all selected deliveries; those whose way can show an arrival are selected. */
export function ResultsForm({
  lineId,
  file,
  attempts,
  today,
}: {
  readonly lineId: string;
  readonly file: LineFile;
  readonly attempts: readonly Delivery[];
  readonly today: string;
}) {
  return (
    <ActionForm
      key={attempts.map(({ id }) => id).join(" ")}
      className="stack screen-only"
      action={changeDeliveriesAction.bind(null, lineId)}
      label="Record results"
    >
      <div className="scroll">
        <table className={`plain ${stacks["stacks"]}`}>
          <thead>
            <tr>
              <th scope="col">
                <TickAll name="delivery" />
              </th>
              <th scope="col">To</th>
              <th scope="col">Letter</th>
              <th scope="col">Sent</th>
              <th scope="col">Tracking number</th>
            </tr>
          </thead>
          <tbody>
            {attempts.map((attempt) => (
              <AttemptRow
                key={attempt.id}
                lineId={lineId}
                file={file}
                attempt={attempt}
                today={today}
              />
            ))}
          </tbody>
        </table>
      </div>
      <div className="form-grid">
        <Choice
          label="Result"
          name="outcome"
          required
          defaultValue="delivered"
          options={optionsOf(OUTCOME_WORDS).filter(({ value }) => value !== "on-its-way")}
        />
        <Field
          label="Date"
          name="outcomeOn"
          type="date"
          required
          max={today}
          defaultValue={today}
        />
        <Upload
          lineId={lineId}
          name="proofUploadId"
          label="Proof for all of them"
          hint="The post office’s list or the receipts in one file. Optional."
        />
      </div>
      <div>
        <SubmitButton pendingWord="Recording …">Record for the selected letters</SubmitButton>
      </div>
    </ActionForm>
  );
}

function AttemptRow({
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
  const notice = file.notices.find(({ id }) => id === attempt.noticeId);
  if (notice === undefined) return null;
  const name = partyName(file, notice.partyId);
  const shows = canBeTaken(attempt.method, wayRuleOf(file, attempt));
  return (
    <tr>
      <td>
        <input
          type="checkbox"
          name="delivery"
          value={attempt.id}
          defaultChecked={shows}
          aria-label={`${LETTER_WORDS[notice.kind]} to ${name}`}
        />
      </td>
      <th scope="row">{name}</th>
      <td data-label="Letter">
        <Link href={`/lines/${lineId}/notices/letter/${notice.id}`}>
          {LETTER_WORDS[notice.kind]}
        </Link>
      </td>
      <td data-label="Sent">
        {formatDay(attempt.sentOn, today)}, {METHOD_WORDS[attempt.method]}
        {shows ? null : (
          <span className="muted small">
            {" "}
            cannot be recorded as delivered; only if it came back
          </span>
        )}
      </td>
      <td data-label="Tracking number">
        <input
          className="input"
          name={`tracking:${attempt.id}`}
          defaultValue={attempt.tracking}
          aria-label={`Tracking number of the letter to ${name}`}
          autoComplete="off"
          style={{ maxWidth: "24ch" }}
        />
      </td>
    </tr>
  );
}
