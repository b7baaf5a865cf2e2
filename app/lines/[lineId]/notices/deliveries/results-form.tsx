import Link from "next/link";
import { ActionForm } from "#app/_components/action-form.client.tsx";
import { SubmitButton } from "#app/_components/button.tsx";
import { Choice } from "#app/_components/choice.tsx";
import { Field } from "#app/_components/field.tsx";
import { Upload } from "#app/_components/upload.client.tsx";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import type { Delivery } from "#lib/domain/facts/notice.ts";
import { METHOD_WORDS, OUTCOME_WORDS } from "#lib/domain/facts/notice-words.ts";
import { canBeTaken, wayRuleOf } from "#lib/domain/notices/way-rule.ts";
import { formatDay } from "#lib/domain/time/format-day.ts";
import { LETTER_WORDS, optionsOf } from "../../terms.ts";
import { changeDeliveriesAction } from "../actions.ts";
import { type DeliveriesProps, DeliveryTable } from "./delivery-table.tsx";

/** One result for all selected deliveries; those whose way can show an arrival are selected. */
export function ResultsForm({ lineId, file, attempts, today }: DeliveriesProps) {
  return (
    <ActionForm
      key={attempts.map(({ id }) => id).join(" ")}
      className="stack screen-only"
      action={changeDeliveriesAction.bind(null, lineId)}
      label="Record results"
    >
      <DeliveryTable
        file={file}
        attempts={attempts}
        name="delivery"
        selects={(attempt) => canShow(file, attempt)}
        columns={[
          {
            title: "Letter",
            cell: ({ notice }) => (
              <Link href={`/lines/${lineId}/notices/letter/${notice.id}`}>
                {LETTER_WORDS[notice.kind]}
              </Link>
            ),
          },
          {
            title: "Sent",
            cell: ({ attempt }) => (
              <>
                {formatDay(attempt.sentOn, today)}, {METHOD_WORDS[attempt.method]}
                {canShow(file, attempt) ? null : (
                  <span className="muted small">
                    {" "}
                    cannot be recorded as delivered; only if it came back
                  </span>
                )}
              </>
            ),
          },
          {
            title: "Tracking number",
            cell: ({ attempt, name }) => (
              <input
                className="input"
                name={`tracking:${attempt.id}`}
                defaultValue={attempt.tracking}
                aria-label={`Tracking number of the letter to ${name}`}
                autoComplete="off"
                style={{ maxWidth: "24ch" }}
              />
            ),
          },
        ]}
      />
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

/** Whether the way it went can show that it arrived. */
function canShow(file: LineFile, attempt: Delivery): boolean {
  return canBeTaken(attempt.method, wayRuleOf(file, attempt));
}
