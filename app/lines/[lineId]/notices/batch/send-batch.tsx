import { ActionForm } from "#app/_components/action-form.client.tsx";
import { SubmitButton } from "#app/_components/button.tsx";
import { Choice, Tick } from "#app/_components/choice.tsx";
import { Field } from "#app/_components/field.tsx";
import { addressStop, LINK_DAYS } from "#lib/domain/consent/private-link.ts";
import { METHOD_WORDS } from "#lib/domain/facts/notice-words.ts";
import type { BatchRow } from "#lib/domain/mailing/batch.ts";
import { ADDRESS_WORDS } from "#lib/operations/send-notices.ts";
import { counted } from "../../names.ts";
import { optionsOf } from "../../terms.ts";
import { TickAll } from "../draft-tools.client.tsx";
import { officeAddress } from "../link-address.ts";
import { sendBatchAction } from "./actions.ts";
import type { BatchPart } from "./part.ts";
import { Recipients } from "./recipients.tsx";

/** Everyone in the batch; the drafts among them are selected, sent and printed in one press. */
export function SendBatch({
  lineId,
  file,
  report,
  rows,
  work,
  mayOverride,
}: BatchPart & { readonly work: boolean; readonly mayOverride: boolean }) {
  if (!work)
    return <Recipients lineId={lineId} file={file} rows={rows} head={null} boxed={() => null} />;
  const lacking = rows.filter(({ gaps }) => gaps.length > 0).length;
  return (
    <ActionForm
      className="stack screen-only"
      action={sendBatchAction.bind(null, lineId)}
      label="Send the batch"
    >
      <Recipients
        lineId={lineId}
        file={file}
        rows={rows}
        head={<TickAll name="notice" />}
        boxed={boxOf}
      />
      <div className="form-grid">
        <Choice
          label="Delivery method"
          name="method"
          required
          options={[{ value: "", label: "choose" }, ...optionsOf(METHOD_WORDS)]}
          hint="Send those without email in a second step: clear them here first."
        />
        <Field label="Date sent" name="sentOn" type="date" required defaultValue={report.today} />
      </div>
      <CodesTick />
      {lacking === 0 ? null : <Incomplete count={lacking} mayOverride={mayOverride} />}
      <div>
        <SubmitButton pendingWord="Recording …">Record as sent and print</SubmitButton>
      </div>
    </ActionForm>
  );
}

/** Drafts can be selected; those that are complete are. */
function boxOf({ standing, gaps }: BatchRow): boolean | null {
  return standing === "draft" ? gaps.length === 0 : null;
}

function Incomplete({
  count,
  mayOverride,
}: {
  readonly count: number;
  readonly mayOverride: boolean;
}) {
  const words = `${counted(count, "draft")} ${count === 1 ? "is" : "are"} incomplete`;
  if (!mayOverride)
    return (
      <p className="muted">
        {words}: enter what is missing, or ask an admin to send {count === 1 ? "it" : "them"}{" "}
        anyway.
      </p>
    );
  return (
    <Field
      label="Send incomplete letters anyway, because"
      name="despite"
      rows={2}
      hint={`${words}. Your name and this reason are recorded in the history.`}
    />
  );
}

/** Private pages, for letters on paper by QR and short code, for email by a link. */
export function CodesTick() {
  const address = officeAddress();
  const stop = addressStop(address);
  if (stop !== null) return <p className="muted">{ADDRESS_WORDS[stop](address)}.</p>;
  return (
    <Tick
      name="codes"
      defaultChecked
      label={`Give each reader a private page for ${LINK_DAYS} days: a QR code and a short code on paper, a link by email. Not on door hangers and postings, which anyone can read.`}
    />
  );
}
