import type { LetterKind } from "../facts/notice.ts";
import { formatCents } from "../money/format-cents.ts";
import { changeBody, changeChoices, coverBody, coverChoices } from "./body-bill.ts";
import { agreementBody, entryBody } from "./body-consent.ts";
import { findingBody, inquiryBody } from "./body-finding.ts";
import { demandBody, demanded, doneBody, splitBody } from "./body-money.ts";
import { backBody, landlordBody, meetingBody, parkingBody } from "./body-notice.ts";
import { isWaterOnly, visitBody } from "./body-visit.ts";
import { isAuthority, pauseBody, responseBody, spillBody, startBody } from "./body-work.ts";
import type { LetterFacts } from "./facts.ts";
import type { LetterBlock } from "./letter.ts";

/** What stands in each kind of letter between its greeting and its cautions. */
export const BODIES: Record<LetterKind, (facts: LetterFacts) => LetterBlock[]> = {
  finding: findingBody,
  "tie-in-inquiry": inquiryBody,
  "test-visit": visitBody,
  "proposed-split": splitBody,
  "entry-consent": entryBody,
  "joint-agreement": agreementBody,
  "work-start": startBody,
  "drain-pause": pauseBody,
  spill: spillBody,
  "share-demand": demandBody,
  "authority-response": responseBody,
  "close-out": doneBody,
  "drains-back": backBody,
  meeting: meetingBody,
  "landlord-entry": landlordBody,
  "street-parking": parkingBody,
  "change-order": changeBody,
  "invoice-cover": coverBody,
};

/** The answers that a reader may tick; none where no answer is asked for. */
export const CHOICES: Record<LetterKind, (facts: LetterFacts) => readonly string[]> = {
  finding: ({ words }) => words.finding.choices,
  "tie-in-inquiry": ({ words }) => words.inquiry.choices,
  "test-visit": (facts) =>
    isWaterOnly(facts) ? facts.words.visit.choicesWater : facts.words.visit.choices,
  "proposed-split": ({ words, share }) => words.split.choices(formatCents(share?.amount ?? 0)),
  "entry-consent": ({ words }) => words.entry.choices,
  "joint-agreement": ({ words }) => words.agreement.choices,
  "work-start": ({ words }) => words.start.choices,
  "drain-pause": ({ words }) => words.pause.choices,
  spill: (facts) => (isAuthority(facts) ? [] : facts.words.spill.choices),
  "share-demand": (facts) => facts.words.demand.choices(formatCents(demanded(facts))),
  "authority-response": () => [],
  "close-out": () => [],
  "drains-back": ({ words }) => words.back.choices,
  meeting: ({ words }) => words.meeting.choices,
  "landlord-entry": () => [],
  "street-parking": ({ words }) => words.parking.choices,
  "change-order": changeChoices,
  "invoice-cover": coverChoices,
};
