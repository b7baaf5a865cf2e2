import { feesOf, feeWords } from "../application/fees.ts";
import { contractorStanding, type StandingPaper } from "../clocks/contractor-standing.ts";
import { endOfWork } from "../clocks/work-end.ts";
import { usualRow } from "../facts/field.ts";
import type { LineFile } from "../facts/line-file.ts";
import type { Property } from "../facts/party.ts";
import { ROLE_WORDS } from "../facts/party.ts";
import { PERMIT, type Permit } from "../facts/permit.ts";
import type { ScopeItem } from "../facts/scope.ts";
import type { Report } from "../findings/report.ts";
import { formatFeet } from "../length/station.ts";
import { formatCents } from "../money/format-cents.ts";
import { heading, list, paragraph, table } from "../paper/common.ts";
import type { LetterBlock } from "../paper/letter.ts";
import { EN } from "../paper/words-en.ts";
import { formatAddress } from "../party/address.ts";
import { formatPhone } from "../party/phone.ts";
import { streetOf } from "../party/stakeholders.ts";
import { permitStateWords } from "../permit/say.ts";
import { permitStateOf } from "../permit/steps.ts";
import { itemAmount, itemAmountWords } from "../sharing/item-amount.ts";
import { scopeInForce } from "../sharing/scope-in-force.ts";
import { depthUnknown, groupCautions, scopeCautions } from "../split/scope-cautions.ts";
import { kindsOf } from "../split/work-deeds.ts";
import { SCOPE_KIND_WORDS } from "../split/work-kind-words.ts";
import { appliedFor } from "./applied-for.ts";
import { packetContents } from "./contents.ts";
import type { Sheet } from "./packet.ts";
import type { PacketInput } from "./packet-input.ts";

/** A sheet of composed blocks. */
export function composed(
  kind: Sheet["kind"],
  title: string,
  blocks: readonly LetterBlock[],
): Sheet {
  return { kind, title, blocks, plans: [], drawing: null, uploadId: null };
}

const STAKES: Record<Property["stake"], string> = {
  connected: "connected",
  candidate: "possibly connected",
  crossed: "crossed only",
  neighbour: "neighbor",
};

/** Where, who, what work, under which permits and tickets, at which fees. */
export function applicationSheet(input: PacketInput): Sheet {
  return composed("application", "Application data", [
    heading("The line"),
    ...lineFacts(input),
    ...appliedFor(input),
    heading("Properties"),
    ...propertyTable(input),
    heading("Owners and managers"),
    ...ownerTable(input),
    heading("Contractor"),
    ...contractorFacts(input),
    heading("Work applied for"),
    ...workLines(input),
    heading("Permits and locate tickets"),
    ...permitTable(input),
    ...feeBlocks(input),
  ]);
}

function lineFacts({ file, report }: PacketInput): LetterBlock[] {
  const { line } = file;
  const rows = [
    ["Name", line.name],
    ["Town", line.town],
    ["Length", formatFeet(report.extent)],
    [
      "At the main connection",
      `${EN.material[line.material]}${line.diameter === null ? "" : `, ${line.diameter} in`}`,
    ],
    [
      "Main connection along the public main",
      line.mainStation === null
        ? "unknown"
        : [formatFeet(line.mainStation), line.mainNote].filter((part) => part !== "").join(" "),
    ],
    ["Connected properties", String(file.properties.filter((p) => p.stake === "connected").length)],
  ];
  return table(["", ""], rows);
}

function propertyTable({ file }: PacketInput): LetterBlock[] {
  const rows = file.properties.map((property) => [
    formatAddress(property.address),
    property.parcel === "" ? "unknown" : property.parcel,
    property.legalDescription === "" ? "unknown" : property.legalDescription,
    STAKES[property.stake],
  ]);
  return table(["Address", "Parcel", "Legal description", "Connection"], rows);
}

function ownerTable({ file }: PacketInput): LetterBlock[] {
  const rows = file.roles.flatMap((role) => {
    const party = file.parties.find(({ id }) => id === role.partyId);
    const property = file.properties.find(({ id }) => id === role.propertyId);
    if (!party || !property || role.role === "occupant") return [];
    const name = role.capacity === "" ? party.name : `${party.name}, by its ${role.capacity}`;
    return [
      [
        name,
        ROLE_WORDS[role.role],
        streetOf(property.address),
        formatAddress(party.mailing ?? property.address),
      ],
    ];
  });
  return table(["Name", "Role", "Property", "Mailing address"], rows);
}

function contractorFacts({ file, office, report }: PacketInput): LetterBlock[] {
  const days = { today: report.today, end: endOfWork(file) };
  const papers = contractorStanding(office, days).map(({ title, number }) => [
    title,
    number === "" ? "not on file" : number,
  ]);
  return table(
    ["", ""],
    [
      ["Name", office.name],
      ["Address", formatAddress(office.address)],
      ["Phone", formatPhone(office.phone)],
      ["Email", office.email],
      ...papers,
    ],
  );
}

function workLines({ file }: PacketInput): LetterBlock[] {
  const items = scopeInForce(file);
  if (items.length === 0) return [paragraph("No work is entered yet.")];
  return list(items.map((item) => `${item.title}, ${placeOfWork(item, file.tieIns)}`));
}

function permitTable({ file }: PacketInput): LetterBlock[] {
  const permits = file.permits.map((permit) => [
    `${PERMITS[permit.kind]} permit`,
    permit.number === "" ? "no number yet" : permit.number,
    permitStateWords(permitStateOf(file, permit)),
  ]);
  const tickets = file.locateTickets.map(({ number, calledOn, workBeginsOn }) => [
    "Locate ticket",
    number,
    workBeginsOn === null
      ? `called on ${EN.day(calledOn)}`
      : `called on ${EN.day(calledOn)}, work begins on ${EN.day(workBeginsOn)}`,
  ]);
  const rows = [...permits, ...tickets];
  return rows.length === 0
    ? [paragraph("None on file.")]
    : table(["Kind", "Number", "Status"], rows);
}

const PERMITS = {
  "side-sewer": "Side sewer",
  "street-use": "Street use",
  connection: "Connection",
  other: "Other",
};

function feeBlocks({ file, report }: PacketInput): LetterBlock[] {
  const connections = report.tieIns.filter(({ live }) => live).length;
  const permit = file.permits.find(({ kind }) => kind === "side-sewer") ?? file.permits[0];
  const { lines, total, known } = feesOf(file, permit ?? UNNUMBERED, connections);
  if (lines.length === 0) return [];
  const rows = lines.map(({ fee: { title, citation, asOf }, sum, amount }) => [
    title,
    `${citation}, as of ${EN.day(asOf)}`,
    sum,
    feeWords(amount),
  ]);
  const comesTo =
    total === null ? `${formatCents(known)} and what is not known yet` : formatCents(total);
  return [
    heading(`Fees per the authority’s schedule: ${comesTo}`),
    ...table(["Fee", "Source", "Calculation", "Amount"], rows, { numeric: [3] }),
  ];
}

/** The line’s own permit before it is on file. */
const UNNUMBERED: Permit = { ...usualRow(PERMIT), id: "" };

/**
 * Every piece of work, what is done, where, and what the work is valued at. How the amounts come about
 * is the neighbors’ business: only where the authority asks who pays what.
 */
export function scopeSheet(input: PacketInput): Sheet {
  const { file, report } = input;
  const items = scopeInForce(file);
  const priced = packetContents(input).kinds.has("split");
  const total = items.reduce((sum, item) => sum + itemAmount(item), 0);
  return composed("scope", "Scope of work", [
    ...(priced ? pricedTable(items, file, total) : plainTable(items, file, total)),
    ...cautionBlocks(file, report.tieIns),
  ]);
}

function plainTable(items: readonly ScopeItem[], file: LineFile, total: number): LetterBlock[] {
  if (items.length === 0) return [paragraph("No work is entered yet.")];
  const rows = items.map((item) => [
    item.title,
    doneWords(item, file),
    placeOfWork(item, file.tieIns),
  ]);
  return [
    ...table(["Work", "What is done", "Where"], rows),
    paragraph(`Value of the work: ${formatCents(total)}.`),
  ];
}

function pricedTable(items: readonly ScopeItem[], file: LineFile, total: number): LetterBlock[] {
  if (items.length === 0) return [paragraph("No work is entered yet.")];
  const rows = items.map((item) => [
    item.title,
    doneWords(item, file),
    placeOfWork(item, file.tieIns),
    itemAmountWords(item),
    formatCents(itemAmount(item)),
  ]);
  return table(
    ["Work", "What is done", "Where", "Price", "Amount"],
    [...rows, ["Total", "", "", "", formatCents(total)]],
    { numeric: [4], totals: 1 },
  );
}

/** What is done; where nobody said, what it may be. */
function doneWords(item: ScopeItem, file: LineFile): string {
  const words = kindsOf(item, file).map((kind) => SCOPE_KIND_WORDS[kind]);
  return item.kind === "unknown" ? `not specified: ${words.join(" or ")}` : words.join("");
}

/** What depth and place ask of each piece of work; raised by the facts, so always there. */
function cautionBlocks(file: LineFile, tieIns: Report["tieIns"]): LetterBlock[] {
  const cautions = scopeCautions(file, tieIns);
  const unknown = depthUnknown(file);
  if (cautions.length === 0 && unknown === null) return [];
  return [
    heading("Depth and location requirements"),
    ...(unknown === null ? [] : [paragraph(unknown)]),
    ...groupCautions(cautions).flatMap(({ works, needs }) => [
      ...works.map(({ title, depth }) => paragraph(`${title}. ${depth}`.trim())),
      ...list(
        needs.map(({ words, citation }) => (citation === "" ? words : `${words} (${citation})`)),
      ),
    ]),
  ];
}

function placeOfWork(
  item: ScopeItem,
  tieIns: readonly { readonly id: string; readonly label: string }[],
): string {
  if (item.place === "point" && item.from !== null) return `at ${formatFeet(item.from)}`;
  if (item.place === "stretch" && item.from !== null && item.to !== null) {
    return EN.stretch(item.from, item.to);
  }
  if (item.place === "branch") {
    return `branch at ${tieIns.find(({ id }) => id === item.tieInId)?.label ?? "unknown"}`;
  }
  return "whole job";
}

/** License, bond and insurance with the day on which each runs out, held against the end of the work. */
export function contractorSheet({ file, office, report }: PacketInput): Sheet {
  const end = endOfWork(file);
  const papers = contractorStanding(office, { today: report.today, end });
  const rows = papers.map(({ title, number, expiresOn, state }) => [
    title,
    number === "" ? "not on file" : number,
    expiresOn === null ? "unknown" : EN.day(expiresOn),
    STATES[state],
  ]);
  // Until somebody enters the last day of work, one sentence says so of all of them.
  const bad = papers.filter(({ state }) => state !== "in-force" && state !== "end-of-work-unknown");
  return composed("contractor-standing", "Contractor’s license, bond and insurance", [
    paragraph(
      end === null
        ? "The last day of work is not entered yet, so whether these last until it is unknown."
        : `The last day of work is ${EN.day(end)}.`,
    ),
    ...table(["Document", "Number", "Expires", `On ${EN.day(report.today)}`], rows),
    ...bad.map(
      ({ title, sentence }): LetterBlock => ({
        kind: "caution",
        title: `${title} needs attention`,
        text: sentence,
      }),
    ),
  ]);
}

const STATES: Record<StandingPaper["state"], string> = {
  "in-force": "current through the end of the work",
  "ends-before-work": "EXPIRES BEFORE THE WORK ENDS",
  "end-of-work-unknown": "current; end of work unknown",
  expired: "EXPIRED",
  "expiry-unknown": "expiration date unknown",
  "not-on-file": "not on file",
};
