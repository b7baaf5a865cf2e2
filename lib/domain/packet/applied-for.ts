import { APPLICANT_WORDS, applicationOf, WORK_TYPE_WORDS } from "../application/application-of.ts";
import { valuationOf } from "../application/valuation.ts";
import { formatCents } from "../money/format-cents.ts";
import { heading, table } from "../paper/common.ts";
import type { LetterBlock } from "../paper/letter.ts";
import type { PacketInput } from "./packet-input.ts";

/** What the applicant applies for, beside the line: only what somebody entered. */
export function appliedFor({ file }: PacketInput): LetterBlock[] {
  const application = applicationOf(file, "side-sewer");
  if (application === null) return [];
  const value = valuationOf(file, "side-sewer").amount;
  const rows = [
    ["Work type", application.workType === "not-set" ? "" : WORK_TYPE_WORDS[application.workType]],
    ["Valuation", value === null ? "" : formatCents(value)],
    [
      "Applicant",
      application.applicant === "" || application.applicantIs === "not-set"
        ? application.applicant
        : `${application.applicant}, ${APPLICANT_WORDS[application.applicantIs]}`,
    ],
    ["Additional insured", application.insuredAs],
  ].filter(([, words]) => words !== "");
  return rows.length === 0 ? [] : [heading("Application"), ...table(["", ""], rows)];
}
