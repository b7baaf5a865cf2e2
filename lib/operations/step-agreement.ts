import { countSave } from "#db/queries/revision.ts";
import { insertRow, updateRow } from "#db/queries/row.ts";
import { agreementProgress, stepProblem } from "#lib/domain/agreement/agreement-progress.ts";
import {
  AGREEMENT_STEP_KINDS,
  type AgreementStep,
  type AgreementStepKind,
} from "#lib/domain/facts/agreement-step.ts";
import type { Agreement } from "#lib/domain/facts/authority.ts";
import type { Consent, ConsentKind } from "#lib/domain/facts/consent.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import { nameRow } from "#lib/domain/facts/references.ts";
import type { Day } from "#lib/domain/time/day.ts";
import { formatDate } from "#lib/domain/time/format-day.ts";
import { ok, type Result } from "#lib/result.ts";
import type { Act, Refusal } from "./act.ts";
import { changeLine, find, refuse } from "./change.ts";
import { pastDay } from "./past-day.ts";

interface StepWord {
  readonly lineId: string;
  readonly agreementId: string;
  readonly kind: AgreementStepKind;
  readonly on: Day;
  /** Who signed or acknowledged. */
  readonly partyId: string | null;
  /** The recording number, or the number of the authority’s review. */
  readonly number: string;
  readonly uploadId: string | null;
  readonly note: string;
}

/**
 * Takes down a step of an agreement that is to be recorded. A signature on paper, an acknowledgment
 * and the recording stand among the consents of the signer’s properties too; the recording number
 * goes into the agreement. Refuses a step out of turn, a signature of somebody who holds no title in
 * it, and a recording without its number.
 */
export function stepAgreement(
  act: Act,
  { lineId, ...word }: StepWord,
): Result<{ stepId: string }, Refusal> {
  const deal = { lineId, deed: "work-the-file", action: "step-agreement" } as const;
  return changeLine(act, deal, (file) => {
    const what = { path: "agreementId", what: "the agreement" };
    const agreement = find(file.agreements, word.agreementId, what);
    if (!agreement.ok) return agreement;
    const wrong = wrongStep(act, file, { agreement: agreement.value, word });
    if (wrong !== null) return wrong;
    const signs = word.kind === "signed" || word.kind === "notarised";
    const step: AgreementStep = {
      ...word,
      id: act.newId(),
      by: act.actor.name,
      partyId: signs ? word.partyId : null,
      number: word.number.trim(),
      note: word.note.trim(),
    };
    const consents = consentsBy(act, file, { agreement: agreement.value, step });
    return ok({
      value: { stepId: step.id },
      sentence: sentenceOf(file, agreement.value, step),
      detail: { agreement: agreement.value.id, step, consents },
      write: (db) => {
        insertRow(db, "agreementSteps", { lineId, row: step });
        for (const row of consents) insertRow(db, "consents", { lineId, row });
        if (step.kind !== "recorded") return;
        const row = { ...agreement.value, recordingNumber: step.number, recordedOn: step.on };
        updateRow(db, "agreements", { lineId, row });
        countSave(db, { lineId, table: "agreements", by: act.actor.name, at: act.now });
      },
    });
  });
}

type Word = Omit<StepWord, "lineId">;

function wrongStep(
  act: Act,
  file: LineFile,
  { agreement, word }: { readonly agreement: Agreement; readonly word: Word },
) {
  const { kind, uploadId, on } = word;
  if (!AGREEMENT_STEP_KINDS.includes(kind)) return refuse("bad-value", "kind", "Select the step");
  if (uploadId !== null && !file.uploads.some(({ id }) => id === uploadId))
    return refuse("not-found", "uploadId", "the paper");
  const problem = stepProblem(file, agreement, word);
  if (problem?.path === "number") return refuse("missing-value", problem.path, problem.words);
  if (problem?.path === "kind") return refuse("not-in-this-state", problem.path, problem.words);
  if (problem !== null) return refuse("bad-value", problem.path, problem.words);
  return pastDay(act, { day: on, path: "on" });
}

const CONSENT_OF: Partial<Record<AgreementStepKind, ConsentKind>> = {
  signed: "agreement-signed",
  notarised: "agreement-notarised",
  recorded: "agreement-recorded",
};

/** The consents that a step comes to, one for each property of each signer; a new text asks again. */
function consentsBy(
  act: Act,
  file: LineFile,
  { agreement, step }: { readonly agreement: Agreement; readonly step: AgreementStep },
): Consent[] {
  const { holders } = agreementProgress(file, agreement);
  const again = step.kind === "drafted" || step.kind === "returned";
  const kind = again ? "agreement-signed" : CONSENT_OF[step.kind];
  if (kind === undefined) return [];
  const signers = holders.filter(({ partyId, signedOn }) =>
    again ? signedOn !== null : step.partyId === null || step.partyId === partyId,
  );
  return signers.flatMap(({ partyId, propertyIds }) =>
    propertyIds.map(
      (propertyId): Consent => ({
        id: act.newId(),
        kind,
        partyId,
        propertyId,
        state: again ? "asked" : "given",
        stateOn: step.on,
        splitId: null,
        amount: null,
        recordingNumber: step.kind === "recorded" ? step.number : "",
        uploadId: step.uploadId,
        note: again ? `“${agreement.title}” has a new text` : `“${agreement.title}”, on paper`,
        restsOnId: null,
        enteredBy: act.actor.name,
      }),
    ),
  );
}

function sentenceOf(file: LineFile, { title }: Agreement, step: AgreementStep): string {
  const who = step.partyId === null ? "" : ` by ${nameRow(file, "parties", step.partyId)}`;
  const number = step.number === "" ? "" : `, No. ${step.number}`;
  return `“${title}”: ${step.kind.replaceAll("-", " ")}${who} on ${formatDate(step.on)}${number}.`;
}
