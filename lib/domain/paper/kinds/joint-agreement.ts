import { agreementProgress } from "../../agreement/agreement-progress.ts";
import type { LineFile } from "../../facts/line-file.ts";
import { COPY_ROLES, LOT_ROLES } from "../../facts/party.ts";
import type { Report } from "../../findings/report.ts";
import { ASKS_FOR_MONEY } from "../../stops/stopped-by.ts";
import { type About, atEvery } from "../addressed.ts";
import { heading, lead, list, paragraph, replyBy } from "../common.ts";
import { type LetterFacts, placeOf } from "../facts.ts";
import type { LetterBlock } from "../letter.ts";
import type { LetterPlan } from "../letter-plan.ts";

/** All owners connected or crossed are asked to sign the maintenance agreement, on paper. */
export const JOINT_AGREEMENT: LetterPlan = {
  title: {
    en: "Agreement on the shared sewer",
    es: "Acuerdo sobre el desagüe compartido",
  },
  recipients: (file, report) => atEvery(file, [...connected(report), ...crossed(file)], LOT_ROLES),
  // A lien on the lot may follow from it, or stand before it.
  copiesTo: COPY_ROLES,
  wantsReply: true,
  deeds: () => ASKS_FOR_MONEY,
  body: agreementBody,
  choices: ({ words }) => words.agreement.choices,
  cautions: ["official", "records"],
  gaps: [],
  due: agreementDrafted,
};

function connected(report: Report): About[] {
  return report.tieIns.flatMap(({ propertyId, live }) =>
    propertyId !== null && live ? [{ propertyId, tieInId: null, splitId: null }] : [],
  );
}

function crossed(file: LineFile): About[] {
  return file.crossings.map(({ propertyId }) => ({ propertyId, tieInId: null, splitId: null }));
}

function agreementDrafted(file: LineFile) {
  const ready = file.agreements.some((agreement) =>
    ["reviewed", "being-signed"].includes(agreementProgress(file, agreement).state),
  );
  return ready ? { because: "The maintenance agreement is ready to sign" } : null;
}

/** What the recorded agreement is for and how it comes about; no amounts. */
function agreementBody(facts: LetterFacts): LetterBlock[] {
  const { file, report, words } = facts;
  const ids = new Set([
    ...report.tieIns.map(({ propertyId }) => propertyId),
    ...file.crossings.map(({ propertyId }) => propertyId),
  ]);
  const places = file.properties
    .filter(({ id }) => ids.has(id))
    .map(({ address }) => placeOf(address));
  const existing = file.agreements.map(({ title, recordingNumber }) =>
    words.agreement.existing(title, recordingNumber),
  );
  return [
    ...lead(words.lead.agreement(replyBy(facts))),
    paragraph(words.agreement.opening),
    ...existing.map(paragraph),
    heading(words.agreement.parties),
    paragraph(`${words.list(places)}.`),
    heading(words.agreement.steps),
    ...list(words.agreement.stepLines(file.authority?.name ?? words.agreement.authority)),
  ];
}
