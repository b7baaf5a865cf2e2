import { EN } from "../paper/words-en.ts";
import { formatAddress } from "../party/address.ts";
import { formatPhone } from "../party/phone.ts";
import { holdsAgainst } from "../stops/stopped-by.ts";
import { packetChecks } from "./checks.ts";
import { heldKinds, leftOutNames, packetContents } from "./contents.ts";
import type { Packet, PacketCheck, Sheet } from "./packet.ts";
import type { PacketInput } from "./packet-input.ts";
import { capacitySheet } from "./sheet-capacity.ts";
import { noticeSheet } from "./sheet-notice.ts";
import { safetySheet } from "./sheet-safety.ts";
import { sheetState } from "./sheet-states.ts";
import { attestationSheet, pavementSheet, proposedPipeSheet } from "./sheets-application.ts";
import { formIsApplication, formSheets, formsMissing } from "./sheets-form.ts";
import { applicationSheet, contractorSheet, scopeSheet } from "./sheets-job.ts";
import { drawingSheet, observationSheet, scheduleSheet, testSheet } from "./sheets-line.ts";
import { consentSheet, holdSheet, responsibilitySheet, splitSheet } from "./sheets-people.ts";
import { uploadSheets } from "./sheets-upload.ts";

/**
 * The permit packet as data: the sheets that this authority asks for and no others, since it becomes a
 * public record; before them what was asked for and what is still missing. In English.
 */
export function composePacket(input: PacketInput): Packet {
  const { file, report, office } = input;
  const checks = packetChecks(input);
  return {
    purpose: "application",
    title: "Permit application for a shared private sewer",
    lineName: file.line.name,
    authorityName: file.authority?.name ?? "authority unknown",
    day: report.today,
    preparedOn: EN.day(report.today),
    preparedBy: officeLines(office),
    checks,
    missing: missingFrom(input, checks),
    contents: contentsOf(input),
    sheets: sheetsOf(input),
    footer: [office.name, file.line.name, EN.day(report.today)].join(" · "),
  };
}

/** Who prepared a document, with how to reach them. */
export function officeLines(office: PacketInput["office"]): string[] {
  const contact = [formatPhone(office.phone), office.email]
    .filter((part) => part !== "")
    .join(" · ");
  const license = office.license === "" ? "" : EN.frame.license(office.license);
  return [office.name, formatAddress(office.address), contact, license].filter(
    (line) => line !== "",
  );
}

/** The sheets that this authority asks for, in the order in which a clerk reads. */
function sheetsOf(input: PacketInput): Sheet[] {
  const { kinds } = packetContents(input);
  const all = [
    applicationSheet(input),
    attestationSheet(input),
    drawingSheet(input),
    scheduleSheet(input),
    observationSheet(input),
    testSheet(input),
    capacitySheet(input),
    scopeSheet(input),
    proposedPipeSheet(input),
    pavementSheet(input),
    safetySheet(input),
    responsibilitySheet(input),
    splitSheet(input),
    consentSheet(input),
    noticeSheet(input),
    contractorSheet(input),
    holdSheet(input),
  ];
  const own = formIsApplication(input) ? all.slice(1) : all;
  return [
    ...formSheets(input),
    ...own.filter(({ kind }) => kinds.has(kind)),
    ...uploadSheets(input),
  ];
}

/** By whose list the packet was put together, and what it leaves out on purpose. */
function contentsOf(input: PacketInput): string[] {
  const { file } = input;
  const contents = packetContents(input);
  const name = file.authority?.name ?? "the authority";
  const left = leftOutNames(contents, heldKinds(file));
  const why =
    contents.by === "authority"
      ? `${name} does not ask for them`
      : "no one is known to ask for them";
  const out = left.length === 0 ? [] : [`Left out on purpose, since ${why}: ${EN.list(left)}.`];
  return contents.by === "authority"
    ? out
    : [
        `What ${name} asks for is not on file. These are the sheets that most counters ask for; no amounts, refusals, tests or waivers are among them.`,
        ...out,
      ];
}

/** What stands in the way of this application, by what the authority asks for with it. */
function missingFrom(input: PacketInput, checks: readonly PacketCheck[]): string[] {
  const { file, report } = input;
  const asked = checks
    .filter(({ state, mandatory, due }) => state === "missing" && mandatory && due === "submission")
    .map(({ title, sentence }) => `${title}: ${sentence}`);
  const authority =
    file.authority === null ? ["The authority is not chosen; what it asks for is unknown."] : [];
  const usual =
    packetContents(input).by === "usual"
      ? (["application", "scope", "consents", "contractor-standing"] as const).flatMap((kind) => {
          const state = sheetState(kind, input);
          return state.complete ? [] : state.sentences;
        })
      : [];
  const held = holdsAgainst(report.holds, [{ stop: "submission", stretch: null }]).length;
  const draft =
    held === 0
      ? []
      : [
          `This is a draft, not for submission: ${held === 1 ? "one hold is" : `${held} holds are`} open in the office’s file.`,
        ];
  return [...authority, ...draft, ...asked, ...usual, ...formsMissing(input)];
}
