import { insertJob } from "#db/queries/job.ts";
import { JOB_KINDS, type JobKind } from "#lib/domain/facts/job.ts";
import type { ListName } from "#lib/domain/facts/list-name.ts";
import { LABEL_SHEETS, labelSheet } from "#lib/domain/mailing/label-sheets.ts";
import { ok, type Result } from "#lib/result.ts";
import type { Act, Refusal } from "./act.ts";
import { changeLine, refuse } from "./change.ts";
import { formsOf } from "./forms-of.ts";
import { waitingJob } from "./waiting-job.ts";

interface JobOrder {
  readonly lineId: string;
  readonly kind: JobKind;
  /**
   * For letters: which, in this order; for statements: of which properties; for accounts: of
   * which properties, or which invoices.
   */
  readonly subjectIds: readonly string[];
}

const KIND_WORDS: Record<JobKind, string> = {
  letters: "a PDF of letters",
  mailing: "a print of letters",
  labels: "label sheets",
  "door-hangers": "door hangers",
  packet: "the packet",
  "as-built": "the as-built",
  "close-out": "the closeout file",
  statements: "a PDF of statements",
  accounts: "a PDF of statements of account",
  agreement: "the draft of an agreement",
  form: "the authority’s form",
  corrections: "the answers to corrections",
  fees: "the sheet of permit fees",
  declaration: "a declaration of delivery",
};

/** What a document is about: rows of which lists, and what they are called. */
const SUBJECTS: Record<JobKind, { readonly rows: readonly ListName[]; readonly one: string }> = {
  letters: { rows: ["notices"], one: "letters" },
  mailing: { rows: ["notices"], one: "letters" },
  labels: { rows: ["notices"], one: "letters" },
  "door-hangers": { rows: ["notices"], one: "letters" },
  packet: { rows: [], one: "lines" },
  "as-built": { rows: [], one: "lines" },
  "close-out": { rows: [], one: "lines" },
  statements: { rows: ["properties"], one: "properties" },
  accounts: { rows: ["properties", "ledger"], one: "properties or invoices" },
  agreement: { rows: ["agreements"], one: "agreements" },
  form: { rows: [], one: "forms" },
  corrections: { rows: ["permitSteps"], one: "rounds of corrections" },
  fees: { rows: ["permits"], one: "permits" },
  declaration: { rows: ["deliveries"], one: "deliveries" },
};

/** Has a PDF made outside of the request; the packet is made whatever is missing, and says so first. */
export function startJob(
  act: Act,
  { lineId, kind, subjectIds }: JobOrder,
): Result<{ jobId: string }, Refusal> {
  const deal = { lineId, deed: "work-the-file", action: "start-job", evenClosed: true } as const;
  return changeLine(act, deal, (file, db) => {
    if (!JOB_KINDS.includes(kind)) return refuse("bad-value", "kind", "Select what to create");
    const { rows, one } = SUBJECTS[kind];
    const forms = kind === "form" ? formsOf(db, file) : [];
    const known = new Set([
      ...rows.flatMap((list) => file[list].map(({ id }) => id)),
      ...forms.map(({ id }) => id),
      ...(kind === "labels" ? LABEL_SHEETS.map(({ id }) => id) : []),
    ]);
    if (subjectIds.some((id) => !known.has(id)))
      return refuse("not-found", "subjectIds", `one of the ${one}`);
    if ((rows.length > 0 || kind === "form") && subjectIds.length === 0)
      return refuse("missing-value", "subjectIds", `Select one of the ${one}`);
    if (kind === "labels" && labelSheet(subjectIds[0]) === null)
      return refuse("bad-value", "subjectIds", "Choose a label sheet");
    const job = waitingJob(act, { lineId, kind, subjectIds });
    return ok({
      value: { jobId: job.id },
      sentence: `Requested ${KIND_WORDS[kind]}.`,
      detail: { jobId: job.id, subjectIds },
      write: (db) => insertJob(db, job),
    });
  });
}
