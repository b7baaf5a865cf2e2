import { ActionForm } from "#app/_components/action-form.client.tsx";
import { SubmitButton } from "#app/_components/button.tsx";
import { Choice } from "#app/_components/choice.tsx";
import { Field } from "#app/_components/field.tsx";
import { Upload } from "#app/_components/upload.client.tsx";
import { CONSENT_KINDS, RECORDED_STATES } from "#lib/domain/facts/consent.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import { CONSENT_STATE_WORDS, CONSENT_WORDS } from "#lib/domain/facts/notice-words.ts";
import { formatCents } from "#lib/domain/money/format-cents.ts";
import { isOnlyCopied } from "#lib/domain/party/only-copied.ts";
import { latestSplit } from "#lib/domain/split/latest-split.ts";
import { partyName, stakeAt } from "../../names.ts";
import { optionsOf } from "../../terms.ts";
import { recordConsentAction } from "./actions.ts";

/** Which cell of the table was chosen. */
export interface ConsentQuery {
  readonly party?: string | string[];
  readonly property?: string | string[];
  readonly kind?: string | string[];
  readonly page?: string | string[];
  readonly signers?: string | string[];
}

/** Records one consent; for paying, on the amount of the version in force. */
export function ConsentForm({
  lineId,
  file,
  today,
  query,
}: {
  readonly lineId: string;
  readonly file: LineFile;
  readonly today: string;
  readonly query: ConsentQuery;
}) {
  const kind = CONSENT_KINDS.find((each) => each === query.kind) ?? "";
  const signer = `${query.party ?? ""} ${query.property ?? ""}`.trim();
  const version = latestSplit(file);
  const share = version?.shares.find((each) => each.propertyId === query.property) ?? null;
  return (
    <ActionForm
      className="stack screen-only"
      key={`${signer} ${kind}`}
      action={recordConsentAction.bind(null, lineId)}
      label="Record a consent"
    >
      <div className="form-grid">
        <Choice
          label="Signer"
          name="signer"
          required
          defaultValue={signer}
          options={[{ value: "", label: "select" }, ...signerOptions(file)]}
        />
        <Choice
          label="Consent"
          name="kind"
          required
          defaultValue={kind}
          options={[{ value: "", label: "select" }, ...optionsOf(CONSENT_WORDS)]}
        />
        <Choice
          label="Status"
          name="state"
          required
          defaultValue="given"
          options={optionsOf(CONSENT_STATE_WORDS).filter(({ value }) =>
            RECORDED_STATES.some((state) => state === value),
          )}
        />
        <Field label="Date" name="stateOn" type="date" required defaultValue={today} />
        <Field
          label="Amount, for the payment consent"
          name="amount"
          unit="$"
          inputMode="decimal"
          width={12}
          defaultValue={share === null ? "" : formatCents(share.amount).replace("$", "")}
          hint={
            version === null
              ? "No split is chosen yet, so there is no amount to agree to."
              : `As presented: version ${version.number}.`
          }
        />
        <Field
          label="Recording number"
          name="recordingNumber"
          hint="For a county-recorded agreement."
        />
      </div>
      <input type="hidden" name="splitId" value={version?.id ?? ""} />
      <Upload
        lineId={lineId}
        name="uploadId"
        label="Signed document"
        hint="Scan or photo. A checksum is saved so the document can be verified later."
      />
      <Field label="Note" name="note" example="Signed at the meeting, both spouses" />
      <div>
        <SubmitButton pendingWord="Recording …">Record the consent</SubmitButton>
      </div>
    </ActionForm>
  );
}

/** Every party with every property it has a say at, each once. */
function signerOptions(file: LineFile): { readonly value: string; readonly label: string }[] {
  const options = new Map<string, string>();
  for (const { partyId, propertyId } of file.roles) {
    if (isOnlyCopied(file, { partyId, propertyId })) continue;
    const label = `${partyName(file, partyId)}, ${stakeAt(file, partyId, propertyId)}`;
    options.set(`${partyId} ${propertyId}`, label);
  }
  return [...options].map(([value, label]) => ({ value, label }));
}
