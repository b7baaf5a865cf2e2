import { z } from "zod";
import { AGREEMENT_STEP_KINDS } from "#lib/domain/facts/agreement-step.ts";
import {
  BOUNDARIES,
  REFUSAL_STEP_KINDS,
  REQUIREMENT_DUES,
  RULE_PATTERNS,
  SHARED_RULES,
  SHEET_KINDS,
  WORK_HOLDERS,
  WORK_KINDS,
} from "#lib/domain/facts/authority.ts";
import { LEVEL_METHODS } from "#lib/domain/facts/capacity.ts";
import { CHANGE_ORDER_STATES } from "#lib/domain/facts/change-order.ts";
import { CLOCK_EVENTS, CLOCK_MEANINGS, CLOCK_UNITS, ROLLS } from "#lib/domain/facts/clock-rule.ts";
import { CONSENT_KINDS, CONSENT_STATES } from "#lib/domain/facts/consent.ts";
import { RESTORATIONS } from "#lib/domain/facts/dig-area.ts";
import { CALL_OUTCOMES, CALL_PURPOSES } from "#lib/domain/facts/household-call.ts";
import { LAND_KINDS } from "#lib/domain/facts/land.ts";
import { LEDGER_KINDS, PAYMENT_METHODS } from "#lib/domain/facts/ledger-entry.ts";
import {
  EASEMENT_STATES,
  FITTINGS,
  MATERIALS,
  POINT_KINDS,
  SIDES,
  TIE_IN_KINDS,
} from "#lib/domain/facts/line.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import {
  DEALT_HOWS,
  DELIVERY_METHODS,
  DELIVERY_OUTCOMES,
  LETTER_KINDS,
  NOTICE_STATES,
  REPLY_KINDS,
} from "#lib/domain/facts/notice.ts";
import { PAIRING_STATES } from "#lib/domain/facts/pairing.ts";
import {
  PARTY_KINDS,
  PARTY_LANGUAGES,
  PARTY_ROLES,
  STAKES,
  UNIT_USES,
} from "#lib/domain/facts/party.ts";
import {
  INSPECTION_RESULTS,
  PERMIT_KINDS,
  PERMIT_STATES,
  REQUIREMENT_STATES,
} from "#lib/domain/facts/permit.ts";
import { SHAPE_KINDS, TIE_SIDES, TURNS } from "#lib/domain/facts/plan.ts";
import { MEASURED_FROM, RECORD_KINDS } from "#lib/domain/facts/record.ts";
import type { ListName } from "#lib/domain/facts/references.ts";
import { ROLL_CALL_ANSWERS, ROLL_CALL_MATTERS } from "#lib/domain/facts/roll-call.ts";
import { RULING_KINDS } from "#lib/domain/facts/ruling.ts";
import {
  ANCHOR_KINDS,
  ANSWERS,
  DEGREES,
  DIRECTIONS,
  FAULTS,
  FOOTAGE_FROM,
  OBSCURED_BY,
  OBSERVATION_KINDS,
  READINGS,
  RUN_ENDS,
  SELF_LEVELING,
} from "#lib/domain/facts/run.ts";
import { PLACES, SCOPE_KINDS, SPREADS } from "#lib/domain/facts/scope.ts";
import { SPILL_STEP_KINDS } from "#lib/domain/facts/spill-step.ts";
import { SPLIT_RULES, UNKNOWN_SHARES, USUAL_UNKNOWN_SHARES } from "#lib/domain/facts/split.ts";
import { STORED_TYPES } from "#lib/domain/facts/stored-type.ts";
import { CONTROL_RESULTS, TEST_KINDS, TEST_RESULTS } from "#lib/domain/facts/test.ts";
import { DRAINS, FLOORS } from "#lib/domain/facts/test-day.ts";
import { VIDEO_TYPES } from "#lib/domain/facts/video.ts";
import { OPTION_KINDS } from "#lib/domain/facts/work-option.ts";
import { OUTLINE, OUTLINE_WORDS } from "#lib/domain/plan/outline.ts";
import { isScaleInBounds } from "#lib/domain/reconcile/fit.ts";
import { FIXTURES } from "../domain/facts/fixtures.ts";
import { PLUMBING_CODES, SLOPE_NAMES } from "../domain/facts/plumbing-code.ts";
import { LANGUAGES } from "../domain/say/language.ts";
import { type Fields, fieldsFor, type Use } from "./field.ts";

// The shape of every part of a line's file. Whatever has a usual value may be left out; whatever is
// written out again is complete, its fields in the order given here.

type Shapes = { readonly [L in ListName]: z.ZodType<LineFile[L][number]> };

/** The shape of one row of each list of a line's file. */
export function rowShapes(use: Use) {
  const f = fieldsFor(use);
  return {
    ...peopleShapes(f),
    ...pipeShapes(f),
    ...planShapes(f),
    ...runShapes(f),
    ...evidenceShapes(f),
    ...decisionShapes(f),
    ...agreementShapes(f),
    ...capacityShapes(f),
    ...moneyShapes(f),
    ...letterShapes(f),
    ...callShapes(f),
    ...consentShapes(f),
    ...permitShapes(f),
    uploads: f.row(uploadFields(f)),
    history: f.row({
      id: f.id,
      at: f.instant,
      by: f.words,
      action: f.words,
      sentence: f.words,
      detail: f.words,
    }),
  } satisfies Shapes;
}

function nullable<T extends z.ZodType>(shape: T) {
  return shape.nullable().default(null as never);
}

export function addressShape(f: Fields) {
  return f.row({ street: f.words, unit: f.words, city: f.words, state: f.words, zip: f.words });
}

function peopleShapes(f: Fields) {
  return {
    properties: f.row({
      id: f.id,
      address: f.row({ ...addressShape(f).shape, street: f.name("the street and number") }),
      parcel: f.words,
      legalDescription: f.words,
      stake: f.oneOf(STAKES).default("candidate"),
      weight: nullable(f.parts),
      bothLanguages: f.yesNo,
      note: f.words,
    }),
    units: f.row({
      id: f.id,
      propertyId: f.ref("property"),
      name: f.words,
      use: f.oneOf(UNIT_USES).default("dwelling"),
      note: f.words,
    }),
    parties: f.row({
      id: f.id,
      kind: f.oneOf(PARTY_KINDS).default("person"),
      name: f.name("a name"),
      mailing: nullable(addressShape(f)),
      careOf: f.words,
      email: f.words,
      phone: f.words,
      language: f.oneOf(PARTY_LANGUAGES).default("unknown"),
      needs: f.words,
      note: f.words,
    }),
    roles: f.row({
      id: f.id,
      partyId: f.ref("party"),
      propertyId: f.ref("property"),
      role: f.oneOf(PARTY_ROLES),
      unitId: nullable(f.ref("unit")),
      capacity: f.words,
      heldWith: f.words,
    }),
    sameParties: f.row({
      id: f.id,
      partyId: f.ref("party"),
      intoId: f.ref("party"),
      same: f.yesNo.default(true),
      by: f.name("who says so"),
      on: f.day,
      reason: f.words,
    }),
  };
}

function pipeFields(f: Fields) {
  return {
    diameter: nullable(f.inches),
    material: f.oneOf(MATERIALS).default("unknown"),
    fitting: f.oneOf(FITTINGS).default("unknown"),
  };
}

function pipeShapes(f: Fields) {
  return {
    points: f.row({
      id: f.id,
      kind: f.oneOf(POINT_KINDS),
      station: f.length,
      depth: nullable(f.length),
      note: f.words,
    }),
    crossings: f.row({
      id: f.id,
      propertyId: f.ref("property"),
      from: f.length,
      to: f.length,
      easement: f.oneOf(EASEMENT_STATES).default("unknown"),
      recordingNumber: f.words,
      note: f.words,
    }),
    land: f.row({
      id: f.id,
      from: f.length,
      to: f.length,
      kind: f.oneOf(LAND_KINDS).default("unknown"),
      propertyId: nullable(f.ref("property")),
      shownBy: f.words,
      note: f.words,
    }),
    tieIns: f.row({
      id: f.id,
      label: f.name("a short name, e.g. T1"),
      parentId: nullable(f.ref("tie-in that it joins")),
      station: nullable(f.length),
      side: f.oneOf(SIDES).default("unknown"),
      ...pipeFields(f),
      kind: f.oneOf(TIE_IN_KINDS).default("unknown"),
      propertyId: nullable(f.ref("property")),
      inactive: f.yesNo,
      settledReason: f.words,
      settledBy: f.words,
      settledOn: nullable(f.day),
      ownerAccepted: f.yesNo,
      note: f.words,
    }),
    records: f.row({
      id: f.id,
      kind: f.oneOf(RECORD_KINDS).default("card"),
      title: f.words,
      number: f.words,
      dated: f.words,
      measuredFrom: f.oneOf(MEASURED_FROM).default("main"),
      length: nullable(f.length),
      obtainedOn: nullable(f.day),
      uploadId: nullable(f.ref("stored file")),
      note: f.words,
    }),
    entries: f.row({
      id: f.id,
      recordId: f.ref("record"),
      label: f.words,
      distance: nullable(f.length),
      side: f.oneOf(SIDES).default("unknown"),
      ...pipeFields(f),
      propertyId: nullable(f.ref("property")),
      explanation: f.words,
      explainedBy: f.words,
      explainedOn: nullable(f.day),
      note: f.words,
    }),
  };
}

function planShapes(f: Fields) {
  return {
    bends: f.row({
      id: f.id,
      station: f.length,
      turn: f.oneOf(TURNS),
      degrees: f.degrees(180),
      note: f.words,
    }),
    fixedPoints: f.row({
      id: f.id,
      name: f.name("what it is, e.g. NE corner of the house at 12"),
      east: nullable(f.counter),
      north: nullable(f.counter),
      note: f.words,
    }),
    ties: f.row({
      id: f.id,
      tieInId: nullable(f.ref("tie-in")),
      pointId: nullable(f.ref("point on the line")),
      station: nullable(f.length),
      fromId: f.ref("fixed point"),
      fromDistance: f.length,
      otherId: f.ref("other fixed point"),
      otherDistance: f.length,
      apart: nullable(f.length),
      side: f.oneOf(TIE_SIDES).default("unknown"),
      tapedBy: f.words,
      tapedOn: nullable(f.day),
      note: f.words,
    }),
    planShapes: f.row({
      id: f.id,
      kind: f.oneOf(SHAPE_KINDS).default("building"),
      name: f.words,
      propertyId: nullable(f.ref("property")),
      outline: z
        .string({ error: OUTLINE_WORDS })
        .max(4_000, OUTLINE_WORDS)
        .regex(OUTLINE, OUTLINE_WORDS),
      note: f.words,
    }),
    planPictures: f.row({
      id: f.id,
      uploadId: f.ref("stored picture"),
      width: f.whole(100_000),
      height: f.whole(100_000),
      oneX: f.whole(100_000),
      oneY: f.whole(100_000),
      otherX: f.whole(100_000),
      otherY: f.whole(100_000),
      apart: f.length,
      mainX: f.whole(100_000),
      mainY: f.whole(100_000),
      up: f.degrees(359.5).default(0),
      note: f.words,
    }),
    reconnections: f.row({
      id: f.id,
      tieInId: f.ref("tie-in"),
      lowerAccess: nullable(f.length),
      fromLower: nullable(f.length),
      upperAccess: nullable(f.length),
      fromUpper: nullable(f.length),
      measuredBy: f.words,
      measuredOn: nullable(f.day),
      openedRunId: nullable(f.ref("run")),
      openedSecond: nullable(f.amount(1_000_000)),
      openedBy: f.words,
      openedOn: nullable(f.day),
      note: f.words,
    }),
  };
}

function runShapes(f: Fields) {
  return {
    runs: f.row({
      id: f.id,
      name: f.words,
      ranOn: f.day,
      operator: f.words,
      accessPoint: f.words,
      looks: f.oneOf(DIRECTIONS),
      measuredFrom: f.oneOf(FOOTAGE_FROM).default("access"),
      selfLeveling: f.oneOf(SELF_LEVELING).default("unknown"),
      zeroAt: f.words,
      fromCounter: f.counter.default(0),
      toCounter: nullable(f.counter),
      ended: f.oneOf(RUN_ENDS).default("unknown"),
      crossingSeen: f.oneOf(ANSWERS).default("cannot-tell"),
      uncertainty: nullable(f.length),
      note: f.words,
    }),
    anchors: f.row({
      id: f.id,
      runId: f.ref("run"),
      kind: f.oneOf(ANCHOR_KINDS),
      counter: f.counter,
      station: f.length,
      note: f.words,
    }),
    gaps: f.row({
      id: f.id,
      runId: f.ref("run"),
      fromCounter: f.counter,
      toCounter: f.counter,
      cause: f.oneOf(OBSCURED_BY),
      note: f.words,
    }),
    observations: f.row({
      id: f.id,
      runId: f.ref("run"),
      kind: f.oneOf(OBSERVATION_KINDS),
      counter: f.counter,
      toCounter: nullable(f.counter),
      clock: nullable(f.clock),
      fault: nullable(f.oneOf(FAULTS)),
      degree: nullable(f.oneOf(DEGREES)),
      reduction: nullable(f.amount(100)),
      material: f.oneOf(MATERIALS).default("unknown"),
      diameter: nullable(f.inches),
      fitting: f.oneOf(FITTINGS).default("unknown"),
      reading: f.oneOf(READINGS).default("read"),
      uncertainty: nullable(f.length),
      videoSecond: nullable(f.amount(1_000_000)),
      pictureId: nullable(f.ref("stored file")),
      waterDepth: nullable(f.inches),
      quote: f.words,
      tieInId: nullable(f.ref("tie-in")),
      code: f.words,
      note: f.words,
    }),
    narrations: f.row({
      id: f.id,
      runId: f.ref("run"),
      text: f.words,
      addedBy: f.words,
      addedAt: f.instant,
      decided: f
        .row({
          key: f.key,
          state: f.oneOf(["accepted", "dropped"]),
          observationId: nullable(f.id),
        })
        .array()
        .default([]),
    }),
    videos: f.row({
      id: f.id,
      runId: f.ref("run"),
      name: f.words,
      type: f.oneOf(VIDEO_TYPES),
      bytes: f.whole(Number.MAX_SAFE_INTEGER),
      sha256: f.sha256,
      addedBy: f.words,
      addedAt: f.instant,
      note: f.words,
    }),
  };
}

function evidenceShapes(f: Fields) {
  return {
    alignments: f.row({
      id: f.id,
      recordId: nullable(f.ref("record")),
      shift: f.counter,
      scale: z.int({ error: "Enter the scale in parts per million" }).refine(isScaleInBounds, {
        error: "A scale is at most 20% off, in feet or meters, from either end",
      }),
      state: f.oneOf(["accepted", "refused"]),
      reason: f.words,
      decidedBy: f.words,
      decidedOn: f.day,
    }),
    pairings: f.row({
      id: f.id,
      entryId: f.ref("record entry"),
      tieInId: f.ref("tie-in"),
      state: f.oneOf(PAIRING_STATES),
      distance: nullable(f.counter),
      reason: f.words,
      decidedBy: f.words,
      decidedOn: f.day,
    }),
    tests: f.row({
      id: f.id,
      tieInId: f.ref("tie-in"),
      propertyId: nullable(f.ref("property")),
      unitId: nullable(f.ref("unit")),
      kind: f.oneOf(TEST_KINDS),
      performedOn: f.day,
      fixture: f.words,
      colour: f.words,
      quantity: f.words,
      startedAt: f.timeOfDay,
      firstSeenAt: f.timeOfDay,
      seenAt: nullable(f.length),
      waitMinutes: nullable(f.amount(100_000)),
      filmed: f.words,
      dosedBy: f.words,
      watchedBy: f.words,
      otherWaterBarred: f.yesNo,
      controlPropertyId: nullable(f.ref("property")),
      controlResult: f.oneOf(CONTROL_RESULTS).default("not-run"),
      result: f.oneOf(TEST_RESULTS),
      note: f.words,
    }),
  };
}

function decisionShapes(f: Fields) {
  return {
    testDays: f.row({
      id: f.id,
      on: f.day,
      controlPropertyId: nullable(f.ref("property")),
      stops: f
        .row({
          propertyId: nullable(f.ref("property")),
          unitId: nullable(f.ref("unit")),
          pointId: nullable(f.ref("access of the pipe")),
          tieInIds: f.ref("tie-in").array().default([]),
          drains: f
            .row({ floor: f.oneOf(FLOORS), drain: f.oneOf(DRAINS) })
            .array()
            .default([]),
          fixture: f.words,
          colour: f.words,
          dose: f.words,
          flushGallons: nullable(f.whole(1_000)),
          startsAt: f.timeOfDay,
          waitMinutes: f.whole(1_440).default(0),
          rinseMinutes: f.whole(1_440).default(0),
          passed: nullable(f.oneOf(TEST_RESULTS)),
        })
        .array()
        .default([]),
      plantToldOn: nullable(f.day),
      plantTold: f.words,
      note: f.words,
      plannedBy: f.words,
      plannedOn: f.day,
    }),
    rulings: f.row({
      id: f.id,
      tieInId: f.ref("tie-in"),
      kind: f.oneOf(RULING_KINDS),
      decidedBy: f.words,
      decidedOn: f.day,
      dueOn: nullable(f.day),
      reference: f.words,
      uploadId: nullable(f.ref("stored file")),
      note: f.words,
      enteredBy: f.words,
    }),
    waivers: f.row({
      id: f.id,
      holdKey: f.name("the hold's key"),
      reason: f.words,
      by: f.words,
      on: f.day,
    }),
  };
}

function agreementShapes(f: Fields) {
  return {
    agreements: f.row({
      id: f.id,
      title: f.name("a title"),
      recordingNumber: f.words,
      recordedOn: nullable(f.day),
      fromStation: nullable(f.length),
      toStation: nullable(f.length),
      terms: f.words,
      shares: f
        .row({ propertyId: f.ref("property"), parts: f.parts })
        .array()
        .default([]),
    }),
    agreementSteps: f.row({
      id: f.id,
      agreementId: f.ref("agreement"),
      kind: f.oneOf(AGREEMENT_STEP_KINDS),
      on: f.day,
      by: f.words,
      partyId: nullable(f.ref("party")),
      number: f.words,
      uploadId: nullable(f.ref("stored file")),
      note: f.words,
    }),
  };
}

function capacityShapes(f: Fields) {
  return {
    fixtures: f.row({
      id: f.id,
      propertyId: f.ref("property"),
      unitId: nullable(f.ref("unit")),
      fixture: f.oneOf(FIXTURES),
      count: f.whole(10_000).default(1),
      note: f.words,
    }),
    levels: f.row({
      id: f.id,
      station: f.length,
      ground: nullable(f.counter),
      depth: nullable(f.length),
      invert: nullable(f.counter),
      method: f.oneOf(LEVEL_METHODS).default("locator"),
      uncertainty: nullable(f.length),
      note: f.words,
    }),
  };
}

function moneyShapes(f: Fields) {
  const choice = {
    rule: f.oneOf(SPLIT_RULES),
    faultStation: nullable(f.length),
    payerId: nullable(f.ref("property")),
    unknownShares: f.oneOf(UNKNOWN_SHARES).default(USUAL_UNKNOWN_SHARES),
  };
  return {
    scope: f.row({
      id: f.id,
      title: f.name("what is to be done"),
      kind: f.oneOf(SCOPE_KINDS).default("unknown"),
      work: f.oneOf(WORK_KINDS).default("repair"),
      place: f.oneOf(PLACES),
      from: nullable(f.length),
      to: nullable(f.length),
      tieInId: nullable(f.ref("tie-in")),
      quantity: f.quantity.default(100),
      unit: f.words,
      rate: f.cents,
      markup: f.percent.default(0),
      tax: f.percent.default(0),
      spread: f.oneOf(SPREADS).default("by-placed-cost"),
      rule: nullable(f.oneOf(SPLIT_RULES)),
      payerId: nullable(f.ref("property")),
      allegedCause: f.words,
      optionId: nullable(f.ref("option")),
      addedById: nullable(f.ref("change order")),
      droppedById: nullable(f.ref("change order")),
      note: f.words,
    }),
    options: f.row({
      id: f.id,
      title: f.name("a title"),
      kind: f.oneOf(OPTION_KINDS).default("other"),
      note: f.words,
    }),
    changeOrders: f.row({
      id: f.id,
      number: f.whole(10_000),
      title: f.name("a title"),
      reason: f.words,
      state: f.oneOf(CHANGE_ORDER_STATES).default("proposed"),
      orderedBy: f.words,
      orderedOn: f.day,
      note: f.words,
    }),
    splits: f.row({
      id: f.id,
      number: f.whole(1_000_000),
      ...choice,
      reason: f.words,
      chosenBy: f.words,
      chosenOn: f.day,
      total: f.sum,
      shares: f
        .row({
          propertyId: nullable(f.ref("property")),
          tieInId: nullable(f.ref("tie-in")),
          amount: f.sum,
          recoverable: f.sum.default(0),
        })
        .array()
        .default([]),
      basis: f.words,
      optionId: nullable(f.ref("option")),
      sentAt: nullable(f.instant),
    }),
  };
}

function noticeShape(f: Fields) {
  return f.row({
    id: f.id,
    kind: f.oneOf(LETTER_KINDS),
    partyId: f.ref("party"),
    propertyId: nullable(f.ref("property")),
    tieInId: nullable(f.ref("tie-in")),
    splitId: nullable(f.ref("split")),
    language: f.oneOf(LANGUAGES).default("en"),
    alsoIn: nullable(f.oneOf(LANGUAGES)),
    state: f.oneOf(NOTICE_STATES).default("draft"),
    createdOn: f.day,
    createdBy: f.words,
    replyBy: nullable(f.day),
    ownWords: f.words,
    frozen: nullable(f.words.unwrap()),
    frozenHash: nullable(f.words.unwrap()),
    sentAt: nullable(f.instant),
    uploadId: nullable(f.ref("stored file")),
  });
}

function letterShapes(f: Fields) {
  return {
    digAreas: f.row({
      id: f.id,
      propertyId: f.ref("property"),
      place: f.words,
      length: nullable(f.length),
      width: nullable(f.length),
      firstOn: nullable(f.day),
      lastOn: nullable(f.day),
      restoration: f.oneOf(RESTORATIONS).default("not-set"),
      notRestored: f.words,
      contact: f.words,
      contactPhone: f.words,
      note: f.words,
    }),
    notices: noticeShape(f),
    deliveries: f.row({
      id: f.id,
      noticeId: f.ref("notice"),
      method: f.oneOf(DELIVERY_METHODS),
      sentOn: f.day,
      by: f.words,
      tracking: f.words,
      outcome: f.oneOf(DELIVERY_OUTCOMES).default("on-its-way"),
      outcomeOn: nullable(f.day),
      proofUploadId: nullable(f.ref("stored file")),
      note: f.words,
    }),
    replies: f.row({
      id: f.id,
      noticeId: f.ref("notice"),
      kind: f.oneOf(REPLY_KINDS),
      receivedOn: f.day,
      takenBy: f.words,
      words: f.words,
      suitsOn: nullable(f.day),
      uploadId: nullable(f.ref("stored file")),
      dealtBy: f.words,
      dealtOn: nullable(f.day),
      dealtHow: nullable(f.oneOf(DEALT_HOWS)),
      dealtWords: f.words,
    }),
    consents: f.row({
      id: f.id,
      kind: f.oneOf(CONSENT_KINDS),
      partyId: f.ref("party"),
      propertyId: f.ref("property"),
      state: f.oneOf(CONSENT_STATES).default("asked"),
      stateOn: f.day,
      splitId: nullable(f.ref("split")),
      amount: nullable(f.sum),
      recordingNumber: f.words,
      uploadId: nullable(f.ref("stored file")),
      note: f.words,
      restsOnId: nullable(f.ref("consent")),
      enteredBy: f.words,
    }),
  };
}

function callShapes(f: Fields) {
  return {
    householdCalls: f.row({
      id: f.id,
      partyId: f.ref("party"),
      propertyId: f.ref("property"),
      purpose: f.oneOf(CALL_PURPOSES),
      forDay: f.day,
      outcome: f.oneOf(CALL_OUTCOMES),
      words: f.words,
      calledBy: f.words,
      calledOn: f.day,
      needs: f.words,
    }),
    rollCall: f.row({
      id: f.id,
      matter: f.oneOf(ROLL_CALL_MATTERS),
      forDay: f.day,
      from: f.timeOfDay,
      until: f.timeOfDay,
      propertyId: f.ref("property"),
      unitId: nullable(f.ref("unit")),
      answer: f.oneOf(ROLL_CALL_ANSWERS),
      spokeWith: f.words,
      words: f.words,
      by: f.words,
      at: f.instant,
    }),
  };
}

function consentShapes(f: Fields) {
  return {
    signatures: f.row({
      id: f.id,
      consentId: f.ref("consent"),
      linkId: f.words,
      signedName: f.words,
      forName: f.words,
      drawingId: nullable(f.ref("stored file")),
      intent: f.words,
      disclosure: f.words,
      disclosureVersion: f.words,
      documentId: f.ref("stored file"),
      documentHash: f.sha256,
      signedAt: f.instant,
      zone: f.words,
      address: f.words,
      agent: f.words,
      views: f.row({ at: f.instant, what: f.words }).array().default([]),
      copyMessageId: f.words,
      previousHash: f.words,
      hash: f.words,
    }),
    ledger: f.row({
      id: f.id,
      number: f.whole(1_000_000),
      kind: f.oneOf(LEDGER_KINDS),
      partyId: f.ref("party"),
      propertyId: f.ref("property"),
      amount: f.sum,
      on: f.day,
      dueOn: nullable(f.day),
      splitId: nullable(f.ref("split")),
      reversesId: nullable(f.ref("ledger entry")),
      method: nullable(f.oneOf(PAYMENT_METHODS)),
      reference: f.words,
      uploadId: nullable(f.ref("stored file")),
      note: f.words,
      enteredBy: f.words,
      enteredAt: f.instant,
    }),
  };
}

function permitShapes(f: Fields) {
  return {
    permits: f.row({
      id: f.id,
      kind: f.oneOf(PERMIT_KINDS).default("side-sewer"),
      number: f.words,
      expiresOn: nullable(f.day),
      note: f.words,
    }),
    permitSteps: f.row({
      id: f.id,
      permitId: f.ref("permit"),
      state: f.oneOf(PERMIT_STATES),
      on: f.day,
      by: f.words,
      note: f.words,
    }),
    requirementMarks: f.row({
      id: f.id,
      requirementId: f.ref("requirement"),
      state: f.oneOf(REQUIREMENT_STATES),
      uploadId: nullable(f.ref("stored file")),
      note: f.words,
    }),
    locateTickets: f.row({
      id: f.id,
      number: f.words,
      calledOn: f.day,
      calledAt: f.timeOfDay,
      workBeginsOn: nullable(f.day),
      workBeginsAt: f.timeOfDay,
      note: f.words,
    }),
    inspections: f.row({
      id: f.id,
      permitId: f.ref("permit"),
      title: f.words,
      bookedFor: f.day,
      bookedAt: f.timeOfDay,
      inspector: f.words,
      result: f.oneOf(INSPECTION_RESULTS).default("booked"),
      note: f.words,
    }),
    events: f.row({
      id: f.id,
      event: f.oneOf(CLOCK_EVENTS),
      on: f.day,
      at: f.timeOfDay,
      until: f.timeOfDay,
      lastOn: nullable(f.day),
      reference: f.words,
      note: f.words,
    }),
    spillSteps: f.row({
      id: f.id,
      kind: f.oneOf(SPILL_STEP_KINDS),
      on: f.day,
      at: f.timeOfDay,
      place: f.words,
      number: f.words,
      gallons: nullable(f.whole(100_000_000)),
      reached: f.words,
      note: f.words,
    }),
    built: f.row({
      id: f.id,
      itemId: nullable(f.ref("scope item")),
      on: f.day,
      by: f.name("who says so"),
      words: f.words,
      uploadId: nullable(f.ref("stored file")),
    }),
  };
}

export function uploadFields(f: Fields) {
  return {
    id: f.id,
    name: f.words,
    type: f.oneOf(STORED_TYPES),
    bytes: f.whole(Number.MAX_SAFE_INTEGER),
    sha256: f.sha256,
    addedBy: f.words,
    addedAt: f.instant,
    note: f.words,
  };
}

/** Pages beside those of the lines, by the last word of their address. */
const TAKEN = ["new", "import"];

/** The facts about the line itself. */
export function lineShape(use: Use) {
  const f = fieldsFor(use);
  return f.row({
    id: f.id
      .refine((id) => !TAKEN.includes(id), "This word names another page; give the line another ID")
      .default("line"),
    name: f.name("a name for the line"),
    town: f.words,
    openedOn: f.day,
    closedOn: nullable(f.day),
    upperEnd: nullable(f.length),
    material: f.oneOf(MATERIALS).default("unknown"),
    diameter: nullable(f.inches),
    mainStation: nullable(f.length),
    mainNote: f.words,
    bearing: nullable(f.degrees(359.5)),
    bearingFrom: f.words,
    authorityId: nullable(f.ref("authority")),
    ruleId: nullable(f.ref("rule")),
    plumbingCode: nullable(f.oneOf(PLUMBING_CODES)),
    leastSlope: nullable(f.oneOf(SLOPE_NAMES)),
    optionId: nullable(f.ref("option")),
    statementOthers: f.yesNo,
    statementRules: f.yesNo,
    warrantyMonths: nullable(f.whole(1_200)),
    warrantyCovers: f.words,
    note: f.words,
  });
}

/** An authority with everything that it asks for; its parts may leave out whose they are. */
export function authorityShape(use: Use) {
  const f = fieldsFor(use);
  const part = { id: f.id, authorityId: f.words };
  return f.row({
    id: f.id,
    name: f.name("the authority's name"),
    office: f.words,
    address: addressShape(f).prefault({}),
    phone: f.words,
    email: f.words,
    note: f.words,
    rules: f
      .row({
        ...part,
        title: f.name("a title"),
        pattern: f.oneOf(RULE_PATTERNS),
        boundary: f.oneOf(BOUNDARIES),
        sharedRule: f.oneOf(SHARED_RULES),
        clearingBy: f.oneOf(WORK_HOLDERS).default("owners"),
        repairBy: f.oneOf(WORK_HOLDERS).default("authority"),
        replacementBy: f.oneOf(WORK_HOLDERS).default("authority"),
        citation: f.words,
        url: f.words,
        asOf: f.day,
        note: f.words,
      })
      .array()
      .default([]),
    requirements: f
      .row({
        ...part,
        sheet: f.oneOf(SHEET_KINDS),
        title: f.name("a title"),
        detail: f.words,
        citation: f.words,
        asOf: f.day,
        mandatory: f.yesNo,
        due: f.oneOf(REQUIREMENT_DUES).default("submission"),
        permitKind: nullable(f.oneOf(PERMIT_KINDS)),
      })
      .array()
      .default([]),
    fees: f
      .row({
        ...part,
        title: f.name("a title"),
        amount: f.cents,
        per: f.oneOf(["permit", "connection", "inspection"]),
        citation: f.words,
        asOf: f.day,
      })
      .array()
      .default([]),
    clockRules: f.row(clockRuleFields(f)).array().default([]),
    holidays: f
      .row({ ...part, day: f.day, name: f.words, source: f.words })
      .array()
      .default([]),
    refusalSteps: f
      .row({
        ...part,
        kind: f.oneOf(REFUSAL_STEP_KINDS).default("other"),
        title: f.name("a title"),
        detail: f.words,
        days: nullable(f.whole(3_650)),
        citation: f.words,
        asOf: f.day,
      })
      .array()
      .default([]),
  });
}

function clockRuleFields(f: Fields) {
  return {
    id: f.id,
    authorityId: f.words,
    title: f.name("a title"),
    event: f.oneOf(CLOCK_EVENTS),
    count: f.whole(10_000),
    unit: f.oneOf(CLOCK_UNITS),
    way: f.oneOf(["after", "before"]).default("after"),
    countsEventDay: f.yesNo,
    fullDays: f.yesNo,
    roll: f.oneOf(ROLLS).default("none"),
    mailDays: f.whole(365).default(0),
    meaning: f.oneOf(CLOCK_MEANINGS),
    citation: f.words,
    asOf: f.day,
  };
}
