import { AGREEMENT_STEP } from "./agreement-step.ts";
import { ALIGNMENT_DECISION } from "./alignment-decision.ts";
import {
  APPLICATION,
  DRAWING_MARK,
  OWNER_AUTHORIZATION,
  PROPOSED_PIPE,
  SURFACE_CUT,
} from "./application.ts";
import { AGREEMENT } from "./authority.ts";
import { BUILT_PIECE, BUILT_WORK } from "./built.ts";
import { FIXTURE_COUNT, LEVEL } from "./capacity.ts";
import { CHANGE_ORDER } from "./change-order.ts";
import { CONSENT } from "./consent.ts";
import { CORRECTION } from "./correction.ts";
import { DIG_AREA } from "./dig-area.ts";
import type { Row } from "./field.ts";
import { FORM_ENTRY } from "./form.ts";
import { HISTORY_ENTRY } from "./history-entry.ts";
import { WAIVER } from "./hold.ts";
import { HOUSEHOLD_CALL } from "./household-call.ts";
import { LAND_STRETCH } from "./land.ts";
import { LEDGER_ENTRY } from "./ledger-entry.ts";
import { CROSSING, LINE_POINT, TIE_IN } from "./line.ts";
import type { ListName } from "./list-name.ts";
import { MEETING, MEETING_WORD } from "./meeting.ts";
import { NARRATION } from "./narration.ts";
import { DELIVERY, NOTICE, REPLY } from "./notice.ts";
import { PAIRING } from "./pairing.ts";
import { PARTY, PROPERTY, ROLE, SAME_PARTY, UNIT } from "./party.ts";
import {
  DATED_EVENT,
  INSPECTION,
  LOCATE_TICKET,
  PERMIT,
  PERMIT_STEP,
  REQUIREMENT_MARK,
} from "./permit.ts";
import { PERMIT_FEE_ENTRY } from "./permit-fee.ts";
import { BEND, FIXED_POINT, PLAN_PICTURE, PLAN_SHAPE, TIE } from "./plan.ts";
import { RECONNECTION } from "./reconnection.ts";
import { PERMIT_RECORD, RECORD_ENTRY } from "./record.ts";
import { ROLL_CALL_WORD } from "./roll-call.ts";
import { RULING } from "./ruling.ts";
import { ANCHOR, GAP, OBSERVATION, RUN } from "./run.ts";
import { SCOPE_ITEM } from "./scope.ts";
import { SIGNATURE } from "./signature.ts";
import { SPILL_STEP } from "./spill-step.ts";
import { SPLIT_VERSION } from "./split.ts";
import { CONTRACT, PAPER_WAIVER } from "./statutory-paper.ts";
import { TIE_IN_TEST } from "./test.ts";
import { TEST_DAY } from "./test-day.ts";
import { UPLOAD } from "./upload.ts";
import { UTILITY_RESPONSE } from "./utility-response.ts";
import { VIDEO } from "./video.ts";
import { WORK_OPTION } from "./work-option.ts";

/** Every list of a line's file, with what its rows are made of. */
export const LISTS = {
  properties: PROPERTY,
  units: UNIT,
  parties: PARTY,
  roles: ROLE,
  sameParties: SAME_PARTY,
  points: LINE_POINT,
  crossings: CROSSING,
  land: LAND_STRETCH,
  tieIns: TIE_IN,
  bends: BEND,
  fixedPoints: FIXED_POINT,
  ties: TIE,
  planShapes: PLAN_SHAPE,
  planPictures: PLAN_PICTURE,
  records: PERMIT_RECORD,
  entries: RECORD_ENTRY,
  runs: RUN,
  anchors: ANCHOR,
  gaps: GAP,
  observations: OBSERVATION,
  narrations: NARRATION,
  videos: VIDEO,
  alignments: ALIGNMENT_DECISION,
  pairings: PAIRING,
  tests: TIE_IN_TEST,
  testDays: TEST_DAY,
  rulings: RULING,
  waivers: WAIVER,
  agreements: AGREEMENT,
  agreementSteps: AGREEMENT_STEP,
  fixtures: FIXTURE_COUNT,
  levels: LEVEL,
  options: WORK_OPTION,
  changeOrders: CHANGE_ORDER,
  scope: SCOPE_ITEM,
  splits: SPLIT_VERSION,
  digAreas: DIG_AREA,
  notices: NOTICE,
  deliveries: DELIVERY,
  replies: REPLY,
  householdCalls: HOUSEHOLD_CALL,
  rollCall: ROLL_CALL_WORD,
  meetings: MEETING,
  meetingWords: MEETING_WORD,
  consents: CONSENT,
  contracts: CONTRACT,
  paperWaivers: PAPER_WAIVER,
  signatures: SIGNATURE,
  ledger: LEDGER_ENTRY,
  permits: PERMIT,
  permitSteps: PERMIT_STEP,
  corrections: CORRECTION,
  permitFees: PERMIT_FEE_ENTRY,
  requirementMarks: REQUIREMENT_MARK,
  applications: APPLICATION,
  ownerAuthorizations: OWNER_AUTHORIZATION,
  proposedPipes: PROPOSED_PIPE,
  surfaceCuts: SURFACE_CUT,
  drawingMarks: DRAWING_MARK,
  locateTickets: LOCATE_TICKET,
  formEntries: FORM_ENTRY,
  utilityResponses: UTILITY_RESPONSE,
  inspections: INSPECTION,
  events: DATED_EVENT,
  reconnections: RECONNECTION,
  built: BUILT_WORK,
  builtPieces: BUILT_PIECE,
  spillSteps: SPILL_STEP,
  uploads: UPLOAD,
  history: HISTORY_ENTRY,
} satisfies { readonly [L in ListName]: Row };
