import type { Day, Instant } from "../time/day.ts";
import type { AgreementStep } from "./agreement-step.ts";
import type { AlignmentDecision } from "./alignment-decision.ts";
import type { Agreement, Authority } from "./authority.ts";
import type { BuiltWork } from "./built.ts";
import type { FixtureCount, Level } from "./capacity.ts";
import type { ChangeOrder } from "./change-order.ts";
import type { Consent } from "./consent.ts";
import type { DigArea } from "./dig-area.ts";
import type { Waiver } from "./hold.ts";
import type { HouseholdCall } from "./household-call.ts";
import type { LandStretch } from "./land.ts";
import type { LedgerEntry, PaymentMethod } from "./ledger-entry.ts";
import type { Crossing, LineFacts, LinePoint, TieIn } from "./line.ts";
import type { Narration } from "./narration.ts";
import type { Delivery, Notice, Reply } from "./notice.ts";
import type { OpenHours } from "./open-hours.ts";
import type { Pairing } from "./pairing.ts";
import type { Address, Party, Property, Role, SameParty, Unit } from "./party.ts";
import type {
  DatedEvent,
  Inspection,
  LocateTicket,
  Permit,
  PermitStep,
  RequirementMark,
} from "./permit.ts";
import type { Bend, FixedPoint, PlanPicture, PlanShape, Tie } from "./plan.ts";
import type { Reconnection } from "./reconnection.ts";
import type { PermitRecord, RecordEntry } from "./record.ts";
import type { RollCallWord } from "./roll-call.ts";
import type { Ruling } from "./ruling.ts";
import type { Anchor, Gap, Observation, Run } from "./run.ts";
import type { ScopeItem } from "./scope.ts";
import type { Signature } from "./signature.ts";
import type { SpillStep } from "./spill-step.ts";
import type { SplitVersion } from "./split.ts";
import type { TieInTest } from "./test.ts";
import type { TestDay } from "./test-day.ts";
import type { Video } from "./video.ts";
import type { WorkOption } from "./work-option.ts";

/** Everything that is known of one line. Every computed answer is a function of this and a day. */
export interface LineFile {
  readonly line: LineFacts;
  readonly authority: Authority | null;
  readonly properties: readonly Property[];
  readonly units: readonly Unit[];
  readonly parties: readonly Party[];
  readonly roles: readonly Role[];
  readonly sameParties: readonly SameParty[];
  readonly points: readonly LinePoint[];
  readonly crossings: readonly Crossing[];
  readonly land: readonly LandStretch[];
  readonly tieIns: readonly TieIn[];
  readonly bends: readonly Bend[];
  readonly fixedPoints: readonly FixedPoint[];
  readonly ties: readonly Tie[];
  readonly planShapes: readonly PlanShape[];
  readonly planPictures: readonly PlanPicture[];
  readonly records: readonly PermitRecord[];
  readonly entries: readonly RecordEntry[];
  readonly runs: readonly Run[];
  readonly anchors: readonly Anchor[];
  readonly gaps: readonly Gap[];
  readonly observations: readonly Observation[];
  readonly narrations: readonly Narration[];
  readonly videos: readonly Video[];
  readonly alignments: readonly AlignmentDecision[];
  readonly pairings: readonly Pairing[];
  readonly tests: readonly TieInTest[];
  readonly testDays: readonly TestDay[];
  readonly rulings: readonly Ruling[];
  readonly waivers: readonly Waiver[];
  readonly agreements: readonly Agreement[];
  readonly agreementSteps: readonly AgreementStep[];
  readonly fixtures: readonly FixtureCount[];
  readonly levels: readonly Level[];
  readonly options: readonly WorkOption[];
  readonly changeOrders: readonly ChangeOrder[];
  readonly scope: readonly ScopeItem[];
  readonly splits: readonly SplitVersion[];
  readonly digAreas: readonly DigArea[];
  readonly notices: readonly Notice[];
  readonly deliveries: readonly Delivery[];
  readonly replies: readonly Reply[];
  readonly householdCalls: readonly HouseholdCall[];
  readonly rollCall: readonly RollCallWord[];
  readonly consents: readonly Consent[];
  readonly signatures: readonly Signature[];
  readonly ledger: readonly LedgerEntry[];
  readonly permits: readonly Permit[];
  readonly permitSteps: readonly PermitStep[];
  readonly requirementMarks: readonly RequirementMark[];
  readonly locateTickets: readonly LocateTicket[];
  readonly inspections: readonly Inspection[];
  readonly events: readonly DatedEvent[];
  readonly reconnections: readonly Reconnection[];
  readonly built: readonly BuiltWork[];
  readonly spillSteps: readonly SpillStep[];
  readonly uploads: readonly Upload[];
  readonly history: readonly HistoryEntry[];
}

/** A stored file; its bytes are kept by hash. */
export interface Upload {
  readonly id: string;
  readonly name: string;
  readonly type: string;
  readonly bytes: number;
  readonly sha256: string;
  readonly addedBy: string;
  readonly addedAt: Instant;
  readonly note: string;
}

/** One line of the append-only history. */
export interface HistoryEntry {
  readonly id: string;
  readonly at: Instant;
  readonly by: string;
  /** The operation, say `save-entries`. */
  readonly action: string;
  /** One sentence for people. */
  readonly sentence: string;
  /** What changed, as JSON. */
  readonly detail: string;
}

/** The contractor's office that this installation serves. */
export interface Office {
  readonly name: string;
  readonly license: string;
  readonly licenseExpiresOn: Day | null;
  readonly bond: string;
  readonly bondExpiresOn: Day | null;
  readonly insurance: string;
  readonly insuranceExpiresOn: Day | null;
  readonly address: Address;
  readonly phone: string;
  /** When the office answers its phone; null: not said, and nothing is printed. */
  readonly hours: OpenHours | null;
  /** A number for emergencies, with when it is answered; empty: there is none. */
  readonly onCallPhone: string;
  readonly onCallHours: OpenHours | null;
  readonly email: string;
  /** To whom checks are made out; empty: not said. */
  readonly payee: string;
  /** How the office takes payment. */
  readonly payMethods: readonly PaymentMethod[];
  /** Days from an invoice until it is due; null: not said. */
  readonly payDays: number | null;
  /** Deposit before the work begins, in whole percent of a share; 0: none; null: not said. */
  readonly depositPercent: number | null;
  /** Who was never asked for a language gets letters in English and Spanish, in one envelope. */
  readonly bothLanguages: boolean;
  /** IANA name; decides which day is today. */
  readonly zone: string;
}
