import type { LetterKind } from "../../facts/letter-kind.ts";
import type { LetterPlan } from "../letter-plan.ts";
import { AUTHORITY_RESPONSE } from "./authority-response.ts";
import { CHANGE_ORDER } from "./change-order.ts";
import { CLOSE_OUT } from "./close-out.ts";
import { DRAIN_PAUSE } from "./drain-pause.ts";
import { DRAINS_BACK } from "./drains-back.ts";
import { ENTRY_CONSENT } from "./entry-consent.ts";
import { FINDING } from "./finding.ts";
import { INVOICE_COVER } from "./invoice-cover.ts";
import { JOINT_AGREEMENT } from "./joint-agreement.ts";
import { LANDLORD_ENTRY } from "./landlord-entry.ts";
import { MEETING } from "./meeting.ts";
import { PROPOSED_SPLIT } from "./proposed-split.ts";
import { SHARE_DEMAND } from "./share-demand.ts";
import { SPILL } from "./spill.ts";
import { STATUTORY_NOTICE } from "./statutory-notice.ts";
import { STREET_PARKING } from "./street-parking.ts";
import { TEST_VISIT } from "./test-visit.ts";
import { TIE_IN_INQUIRY } from "./tie-in-inquiry.ts";
import { WORK_START } from "./work-start.ts";

/**
 * The plan of each kind of letter. The most pressing stands first, and is proposed first: what
 * endangers people or has a day, then the order of the job.
 */
export const LETTER_PLANS: Readonly<Record<LetterKind, LetterPlan>> = {
  spill: SPILL,
  "drain-pause": DRAIN_PAUSE,
  "drains-back": DRAINS_BACK,
  "work-start": WORK_START,
  "statutory-notice": STATUTORY_NOTICE,
  "street-parking": STREET_PARKING,
  meeting: MEETING,
  "authority-response": AUTHORITY_RESPONSE,
  "test-visit": TEST_VISIT,
  finding: FINDING,
  "tie-in-inquiry": TIE_IN_INQUIRY,
  "proposed-split": PROPOSED_SPLIT,
  "entry-consent": ENTRY_CONSENT,
  "joint-agreement": JOINT_AGREEMENT,
  "change-order": CHANGE_ORDER,
  "share-demand": SHARE_DEMAND,
  "close-out": CLOSE_OUT,
  "landlord-entry": LANDLORD_ENTRY,
  "invoice-cover": INVOICE_COVER,
};
