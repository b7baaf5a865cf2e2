import { EN } from "../letter/words-en.ts";
import { formatAddress } from "../party/address.ts";
import { formatPhone } from "../party/phone.ts";
import { packetChecks } from "./checks.ts";
import type { Packet, PacketCheck, Sheet } from "./packet.ts";
import { capacitySheet } from "./sheet-capacity.ts";
import { noticeSheet } from "./sheet-notice.ts";
import { safetySheet } from "./sheet-safety.ts";
import { type PacketInput, sheetState } from "./sheet-states.ts";
import { applicationSheet, contractorSheet, scopeSheet } from "./sheets-job.ts";
import { drawingSheet, observationSheet, scheduleSheet, testSheet } from "./sheets-line.ts";
import { consentSheet, holdSheet, responsibilitySheet, splitSheet } from "./sheets-people.ts";
import { uploadSheets } from "./sheets-upload.ts";

/**
 * The permit packet as data: every sheet in the order in which a clerk reads, and before all of
 * them what the authority asked for and what is still missing. In English: it goes to an authority.
 */
export function composePacket(input: PacketInput): Packet {
  const { file, report, office } = input;
  const checks = packetChecks(input);
  const contact = [formatPhone(office.phone), office.email]
    .filter((part) => part !== "")
    .join(" · ");
  const licence = office.licence === "" ? "" : EN.frame.licence(office.licence);
  return {
    title: "Permit application for a shared private sewer",
    lineName: file.line.name,
    authorityName: file.authority?.name ?? "authority unknown",
    day: report.today,
    preparedOn: EN.day(report.today),
    preparedBy: [office.name, formatAddress(office.address), contact, licence].filter(
      (line) => line !== "",
    ),
    checks,
    missing: missingFrom(input, checks),
    sheets: sheetsOf(input),
    footer: [office.name, file.line.name, EN.day(report.today)].join(" · "),
  };
}

function sheetsOf(input: PacketInput): Sheet[] {
  return [
    applicationSheet(input),
    drawingSheet(input),
    scheduleSheet(input),
    observationSheet(input),
    testSheet(input),
    ...capacitySheet(input),
    scopeSheet(input),
    safetySheet(input),
    responsibilitySheet(input),
    splitSheet(input),
    consentSheet(input),
    noticeSheet(input),
    contractorSheet(input),
    holdSheet(input),
    ...uploadSheets(input),
  ];
}

/** What stands in the way, first: wanting requirements, then papers, holds and a stale split. */
function missingFrom(input: PacketInput, checks: readonly PacketCheck[]): string[] {
  const asked = checks
    .filter(({ state, mandatory }) => state === "missing" && mandatory)
    .map(({ title, sentence }) => `${title}: ${sentence}`);
  const always = (["contractor-standing", "holds-and-waivers", "split"] as const).flatMap(
    (kind) => {
      const state = sheetState(kind, input);
      return state.complete ? [] : state.sentences;
    },
  );
  const told = always.filter((sentence) => !asked.some((line) => line.includes(sentence)));
  const authority =
    input.file.authority === null
      ? ["The authority is not chosen; what it asks for is unknown."]
      : [];
  return [...authority, ...asked, ...told];
}
