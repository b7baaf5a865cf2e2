import { applicationOf } from "../application/application-of.ts";
import { contractorStanding } from "../clocks/contractor-standing.ts";
import { endOfWork } from "../clocks/work-end.ts";
import { unbuiltWork } from "../closing/as-built.ts";
import { type ConsentRow, consentTable } from "../consent/table.ts";
import type { SheetKind } from "../facts/authority.ts";
import type { Property } from "../facts/party.ts";
import { COPY_ROLES } from "../facts/party.ts";
import { landUnsaid } from "../holds/land-holds.ts";
import { sayWhere } from "../length/stretch.ts";
import { EN } from "../paper/words-en.ts";
import { streetOf } from "../party/stakeholders.ts";
import { mustChooseOption, scopeInForce, workInForce } from "../sharing/scope-in-force.ts";
import { latestSplit } from "../split/latest-split.ts";
import { holdsAgainst, isStopped } from "../stops/stopped-by.ts";
import { isOwnerOpen } from "../tiein/open-question.ts";
import { rulingEffects } from "../tiein/ruling-effects.ts";
import { attestationState, pavementState, proposedPipeState } from "./application-states.ts";
import { packetContents } from "./contents.ts";
import { drawingItemsOf, drawingWants } from "./drawing-checklist.ts";
import { noticeState } from "./notice-state.ts";
import type { PacketInput, SheetState } from "./packet-input.ts";

const STATES: Record<SheetKind, (input: PacketInput) => SheetState> = {
  application: applicationState,
  attestation: attestationState,
  "line-drawing": drawingState,
  "schedule-of-connections": scheduleState,
  "observation-log": ({ file }) =>
    given(
      file.observations.length > 0,
      "The camera’s log is in the packet.",
      "No camera observation is on file.",
    ),
  tests: testState,
  capacity: capacityState,
  scope: scopeState,
  "proposed-pipe": proposedPipeState,
  pavement: pavementState,
  "crew-safety": ({ file }) =>
    given(
      scopeInForce(file).length > 0,
      "Worker safety is worked out from the scope of work.",
      "No work is priced yet; worker safety is given as for a dig.",
    ),
  responsibility: responsibilityState,
  split: splitState,
  consents: consentState,
  "proof-of-notice": noticeState,
  "contractor-standing": standingState,
  "holds-and-waivers": holdState,
  "as-built": builtState,
  upload: () => ({ complete: false, sentences: ["No file has been added for it."] }),
};

/** How complete a sheet of this kind is, from the facts alone. */
export function sheetState(kind: SheetKind, input: PacketInput): SheetState {
  return STATES[kind](input);
}

function given(complete: boolean, yes: string, no: string): SheetState {
  return { complete, sentences: [complete ? yes : no] };
}

function wanting(missing: readonly string[], complete: string): SheetState {
  if (missing.length === 0) return { complete: true, sentences: [complete] };
  return { complete: false, sentences: missing };
}

function applicationState({ file, office }: PacketInput): SheetState {
  const streets = (properties: readonly Property[]) =>
    EN.list(properties.map(({ address }) => streetOf(address)));
  const unparcelled = file.properties.filter(
    ({ parcel, stake }) => parcel === "" && stake !== "neighbour",
  );
  const unowned = file.properties.filter(
    ({ id }) =>
      !file.roles.some(
        (role) =>
          role.propertyId === id && role.role !== "occupant" && !COPY_ROLES.includes(role.role),
      ),
  );
  const { applicant = "" } = applicationOf(file, "side-sewer") ?? {};
  const missing = [
    ...(file.properties.length === 0 ? ["No property is on file."] : []),
    ...(unparcelled.length === 0 ? [] : [`No parcel number for ${streets(unparcelled)}.`]),
    ...(unowned.length === 0 ? [] : [`No owner on file for ${streets(unowned)}.`]),
    ...(office.license === "" ? ["The contractor’s license number is missing."] : []),
    ...(applicant.trim() === "" ? ["The applicant is not entered."] : []),
  ];
  return wanting(missing, "All application data is on file.");
}

function drawingState({ file, report }: PacketInput): SheetState {
  const listed = drawingItemsOf(file.authority).length > 0;
  return wanting(
    [
      ...(file.line.upperEnd === null ? ["The upper end of the line is unknown."] : []),
      ...drawingWants({ file, report }),
    ],
    listed ? "The drawing is to scale and shows what is asked." : "The drawing is to scale.",
  );
}

function scopeState({ file }: PacketInput): SheetState {
  if (mustChooseOption(file))
    return wanting([`${file.options.length} repair options are priced and none is selected.`], "");
  const items = scopeInForce(file);
  if (items.length === 0) return wanting(["No work is priced yet."], "");
  return wanting(
    items
      .filter(({ kind }) => kind === "unknown")
      .map(({ title }) => `The work type of “${title}” is not set.`),
    "The scope of work is in the packet.",
  );
}

/** Green only where there are two sides and a person has settled each connection of both. */
function scheduleState({ file, report }: PacketInput): SheetState {
  const none = [
    ...(file.entries.length === 0 ? ["No permit record is entered yet."] : []),
    ...(report.tieIns.length === 0 ? ["No tie-in was seen yet."] : []),
  ];
  const unexplained = report.entries
    .filter(({ decided, tieInId }) => tieInId === null && !decided)
    .map(({ entryId }) => {
      const label = file.entries.find(({ id }) => id === entryId)?.label || "an entry";
      return `Record entry ${label} is not found or explained.`;
    });
  const undecided = [
    ...report.tieIns.filter(({ decided }) => !decided).map(({ tieIn }) => tieIn.label),
  ];
  const ruled = rulingEffects(file, report.tieIns).flatMap(({ asks }) => asks ?? []);
  return wanting(
    [
      ...none,
      ...unexplained,
      ...undecided.map((label) => `Tie-in ${label} has not been compared with the record.`),
      ...ruled.map((asks) => `${asks}.`),
    ],
    "Every tie-in has been compared with the record.",
  );
}

function testState({ report }: PacketInput): SheetState {
  if (report.tieIns.length === 0) return wanting(["No tie-in was seen that could be tested."], "");
  const open = report.tieIns.filter(isOwnerOpen);
  return wanting(
    open.map(({ tieIn }) => `The owner of tie-in ${tieIn.label} has not been shown by tests.`),
    "No tie-in needs a test.",
  );
}

function capacityState({ report }: PacketInput): SheetState {
  return wanting(report.capacity.wanting, "Slope and load are worked out in the packet.");
}

function responsibilityState({ file, report }: PacketInput): SheetState {
  const unclear = report.reaches.some(({ holder }) => holder === "unclear");
  const missing = [
    ...(report.reaches.length === 0 ? ["Nothing is known of the line yet."] : []),
    ...(file.line.ruleId === null ? ["No rule of the authority has been chosen."] : []),
    ...(unclear ? ["It is unclear who is responsible for part of the line."] : []),
  ];
  return wanting(missing, "Responsibility is determined for every section.");
}

function splitState({ file, report }: PacketInput): SheetState {
  const latest = latestSplit(file);
  if (latest === null) return wanting(["No split has been chosen."], "");
  const now = report.splits.find(({ choice }) => choice.rule === latest.rule);
  const number = `Split No. ${latest.number}`;
  const held = isStopped(report.holds, "final-split")
    ? [`${number} is not final: a hold blocks it.`]
    : [];
  if (now === undefined || now.refusal !== null)
    return wanting([`${number} cannot be recalculated from today’s facts.`, ...held], "");
  const stale =
    now.basis === latest.basis
      ? []
      : [`${number} is out of date: facts have changed since it was chosen.`];
  return wanting([...stale, ...held], `${number} is current.`);
}

/** Green only where it is known whose consent the work needs; never because nothing was entered. */
function consentState(input: PacketInput): SheetState {
  const { file, report } = input;
  const rows = consentTable(file, report);
  const missing = rows.flatMap((row) => {
    const property = file.properties.find(({ id }) => id === row.propertyId);
    const open = askedCells(input, row).filter(([, cell]) => cell.needed && !cell.inHand);
    if (!property || open.length === 0) return [];
    const kinds = open.map(([kind]) => CONSENT_WORDS[kind] ?? kind);
    return [`${streetOf(property.address)}: consent not received (${kinds.join(", ")}).`];
  });
  const work = workInForce(file);
  const unpriced =
    work.length === 0 ? ["No work is entered yet, so it is not known whose consent it needs."] : [];
  const unnamed = work.flatMap((item) =>
    landUnsaid(file, report, item).map(
      (stretch) =>
        `The land over the pipe ${sayWhere(stretch)}, where “${item.title}” is done, has no owner entered.`,
    ),
  );
  const needs = rows.some((row) => askedCells(input, row).some(([, { needed }]) => needed));
  return wanting([...unpriced, ...unnamed, ...missing], needs ? ALL_CONSENTS : NO_CONSENTS);
}

/** Whether somebody agreed to pay concerns an authority only where it asks who pays what. */
function askedCells(input: PacketInput, { cells }: ConsentRow) {
  const pays = packetContents(input).kinds.has("split");
  return Object.entries(cells).filter(([kind]) => pays || kind !== "pay");
}

const ALL_CONSENTS = "Every consent the work needs is on file.";
const NO_CONSENTS = "By the land as entered, the work does not enter or dig on anyone’s lot.";

export const CONSENT_WORDS: Readonly<Record<string, string>> = {
  enter: "entry",
  dig: "digging",
  pay: "payment",
  "agreement-signed": "agreement signed",
  "agreement-notarised": "agreement notarized",
  "agreement-recorded": "agreement recorded",
};

function builtState({ file }: PacketInput): SheetState {
  if (file.built.length === 0) return wanting(["What was built is not recorded yet."], "");
  return wanting(
    unbuiltWork(file).map(({ title }) => `“${title}” is not recorded as done yet.`),
    "What was built is recorded.",
  );
}

function standingState({ file, office, report }: PacketInput): SheetState {
  const days = { today: report.today, end: endOfWork(file) };
  const bad = contractorStanding(office, days).filter(({ state }) => state !== "in-force");
  const open = bad.filter(({ state }) => state === "end-of-work-unknown");
  const other = bad.filter((each) => !open.includes(each));
  const until = open.map(
    ({ title, expiresOn }) => `${title} (${expiresOn === null ? "unknown" : EN.day(expiresOn)})`,
  );
  return wanting(
    [
      ...other.map(({ sentence }) => sentence),
      ...(open.length === 0
        ? []
        : [
            `The last day of work is not entered, so whether these last until it is unknown: ${EN.list(until)}.`,
          ]),
    ],
    "License, bond and insurance are current through the end of the work.",
  );
}

function holdState({ file, report }: PacketInput): SheetState {
  const open = holdsAgainst(report.holds, [{ stop: "submission", stretch: null }]);
  const unpriced =
    workInForce(file).length === 0
      ? ["No work is entered yet, so it is not known what may block it."]
      : [];
  return wanting(
    [...unpriced, ...open.map(({ sentence }) => sentence)],
    "No hold blocks submission.",
  );
}
