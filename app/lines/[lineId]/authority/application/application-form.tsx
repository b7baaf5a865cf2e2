import { ActionForm } from "#app/_components/action-form.client.tsx";
import { SubmitButton } from "#app/_components/button.tsx";
import { Choice } from "#app/_components/choice.tsx";
import { Field } from "#app/_components/field.tsx";
import { formatShortDay } from "#app/_components/grid/day-text.ts";
import { SeenField } from "#app/_components/seen-field.client.tsx";
import { Upload } from "#app/_components/upload.client.tsx";
import {
  APPLICANT_WORDS,
  applicationOf,
  WORK_TYPE_WORDS,
} from "#lib/domain/application/application-of.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import type { PermitKind } from "#lib/domain/facts/permit.ts";
import { formatCents } from "#lib/domain/money/format-cents.ts";
import { PERMIT_KIND_WORDS } from "#lib/domain/permit/state-words.ts";
import { scopeTotal } from "#lib/domain/sharing/scope-in-force.ts";
import { seenOf } from "#lib/operations/seen.ts";
import { optionsOf } from "../../terms.ts";
import { saveApplicationAction } from "./actions.ts";

/** What the application for one kind of permit says beside the facts of the line. */
export function ApplicationForm({
  lineId,
  file,
  kind,
}: {
  readonly lineId: string;
  readonly file: LineFile;
  readonly kind: PermitKind;
}) {
  const application = applicationOf(file, kind);
  const signed = application?.attestedOn ?? null;
  return (
    <ActionForm
      action={saveApplicationAction.bind(null, { lineId, permitKind: kind })}
      label={`Application: ${PERMIT_KIND_WORDS[kind]}`}
      className="stack"
    >
      <SeenField value={seenOf(application ?? null)} />
      <div className="form-grid">
        <Field
          label="Applicant"
          name="applicant"
          defaultValue={application?.applicant}
          example="Dana Okafor, Harrow & Teal"
        />
        <Choice
          label="Signs as"
          name="applicantIs"
          defaultValue={application?.applicantIs ?? "not-set"}
          options={optionsOf(APPLICANT_WORDS)}
        />
        <Field
          label="Signed on"
          name="attestedOn"
          defaultValue={signed === null ? undefined : formatShortDay(signed)}
          hint="When the applicant signed that it is true"
          example="11/20/2026"
          width={14}
        />
        <Choice
          label="Work type"
          name="workType"
          defaultValue={application?.workType ?? "not-set"}
          options={optionsOf(WORK_TYPE_WORDS)}
        />
        <Field
          label="Valuation"
          name="valuation"
          defaultValue={amountWords(application?.valuation ?? null)}
          hint={`Blank: ${formatCents(scopeTotal(file))}, the scope of work`}
          inputMode="decimal"
          width={14}
        />
        <Field
          label="Additional insured"
          name="insuredAs"
          defaultValue={application?.insuredAs}
          hint="As the certificate names it"
          example="Quillhaven Sewer District"
        />
        <Field
          label="Traffic"
          name="traffic"
          defaultValue={application?.traffic}
          example="One lane stays open; flaggers 7 AM to 4 PM"
        />
        <Field
          label="People on foot"
          name="pedestrians"
          defaultValue={application?.pedestrians}
          example="Plated walkway along the fence"
        />
        <Field
          label="Note"
          name="note"
          defaultValue={application?.note}
          hint="Stays in the office"
        />
      </div>
      <div className="form-grid">
        <Upload
          lineId={lineId}
          name="attestationId"
          label="Signed application"
          {...storedOf(file, application?.attestationId ?? null)}
        />
        <Upload
          lineId={lineId}
          name="certificateId"
          label="Certificate of insurance"
          {...storedOf(file, application?.certificateId ?? null)}
        />
      </div>
      <div>
        <SubmitButton pendingWord="Saving …">Save</SubmitButton>
      </div>
    </ActionForm>
  );
}

function amountWords(amount: number | null): string | undefined {
  return amount === null ? undefined : formatCents(amount);
}

function storedOf(file: LineFile, id: string | null) {
  const upload = file.uploads.find((each) => each.id === id);
  return upload === undefined ? {} : { stored: { id: upload.id, name: upload.name } };
}
