import { feesOf } from "../application/fees.ts";
import { unbuiltWork } from "../closing/as-built.ts";
import { type AsBuilt, asBuiltOf, notBuilt } from "../closing/built-parts.ts";
import { CLOSING_WORDS, closingOf } from "../closing/closing.ts";
import { accountsIn } from "../ledger/accounts.ts";
import { statementRows } from "../ledger/statement-of-account.ts";
import { formatCents } from "../money/format-cents.ts";
import { heading, list, paragraph, table } from "../paper/common.ts";
import { feeBlocks } from "../paper/fee-sheet.ts";
import type { LetterBlock } from "../paper/letter.ts";
import { EN } from "../paper/words-en.ts";
import { streetOf } from "../party/stakeholders.ts";
import { permitName } from "../permit/say.ts";
import { PERMIT_STATE_WORDS } from "../permit/state-words.ts";
import { stepsOf } from "../permit/steps.ts";
import { tallyOf } from "../reconnection/tally.ts";
import { scopeInForce } from "../sharing/scope-in-force.ts";
import { formatDate } from "../time/format-day.ts";
import { asBuiltSheets } from "./as-built.ts";
import { officeLines } from "./compose.ts";
import type { Packet, Sheet } from "./packet.ts";
import type { PacketInput } from "./packet-input.ts";
import { noticeSheet } from "./sheet-notice.ts";
import { composed } from "./sheets-job.ts";
import { scheduleSheet, testSheet } from "./sheets-line.ts";
import { consentSheet, holdSheet, responsibilitySheet, splitSheet } from "./sheets-people.ts";

/**
 * The whole file as one document, to be opened when the next argument comes: how it closed, what was
 * built, record against camera, tests, who is responsible and who paid what, consents, letters and
 * their proof, holds, the history, and the papers behind them. What stands open is named first.
 */
export function composeCloseOut(input: PacketInput): Packet {
  const { file, report, office } = input;
  const built = asBuiltOf(file, report);
  const asBuilt = asBuiltSheets(input, built);
  return {
    purpose: "close-out",
    title: "Closeout file of a shared private sewer",
    lineName: file.line.name,
    authorityName: file.authority?.name ?? "",
    day: report.today,
    preparedOn: EN.day(report.today),
    preparedBy: officeLines(office),
    checks: [],
    missing: openAtClosing(input, built),
    contents: [
      "For the office: it holds names, amounts and consents of every neighbor. Each neighbor’s own closeout letter says what concerns them.",
      "The line file of the same day holds every fact behind these sheets; keep it with this document.",
    ],
    sheets: [
      closingSheet(input),
      ...asBuilt.filter(({ kind }) => kind === "as-built"),
      scheduleSheet(input),
      testSheet(input),
      responsibilitySheet(input),
      splitSheet(input),
      ledgerSheet(input),
      consentSheet(input),
      noticeSheet(input),
      holdSheet(input),
      historySheet(input),
      // A drawing takes pages of its own: it stands where no other sheet is broken off by it.
      ...asBuilt.filter(({ kind }) => kind === "line-drawing"),
      ...paperSheets(input),
    ],
    footer: [office.name, `${file.line.name}, closeout`, EN.day(report.today)].join(" · "),
  };
}

/** What keeps the file from closing, and what of the as-built nobody measured; each said once. */
function openAtClosing({ file, report }: PacketInput, { open }: AsBuilt): string[] {
  const { gaps, holds } = closingOf(file, report);
  const unsaid = CLOSING_WORDS.flatMap((word) => gaps[word] ?? []);
  const named = new Set(unbuiltWork(file).map(({ title }) => notBuilt(title)));
  const others = open.filter((line) => !named.has(line));
  return [...new Set([...unsaid, ...holds.map(({ sentence }) => sentence), ...others])];
}

function closingSheet(input: PacketInput): Sheet {
  const { file, report } = input;
  const { line } = file;
  const rows = [
    ["Opened", EN.day(line.openedOn)],
    ["Closed", line.closedOn === null ? "not closed yet" : EN.day(line.closedOn)],
    ["Authority", file.authority?.name ?? "not chosen"],
    [
      "Warranty",
      line.warrantyMonths === null
        ? "none on file"
        : [`${line.warrantyMonths} months`, line.warrantyCovers].filter(Boolean).join(", on: "),
    ],
    ...file.agreements.map(({ title, recordingNumber }) => [
      title,
      recordingNumber === "" ? "not recorded" : `recorded as ${recordingNumber}`,
    ]),
  ];
  const tally = tallyOf(file, scopeInForce(file), report.tieIns);
  return composed("as-built", "How the file stands", [
    ...table(["", ""], rows),
    ...permitBlocks(input),
    ...feesPaid(input),
    ...(tally.length === 0
      ? []
      : [heading("Branches that the work closed"), ...list(tally.map(({ sentence }) => sentence))]),
  ]);
}

function permitBlocks({ file }: PacketInput): LetterBlock[] {
  const rows = file.permits.flatMap((permit) =>
    stepsOf(file, permit).map(({ state, on, by, note }) => [
      permitName(permit),
      EN.day(on),
      PERMIT_STATE_WORDS[state],
      [by, note].filter(Boolean).join(": "),
    ]),
  );
  if (rows.length === 0) return [heading("Permits"), paragraph("None on file.")];
  return [heading("Permits, step by step"), ...table(["Permit", "On", "Step", "Per"], rows)];
}

/** What each permit cost, with receipts; nothing where no amount passed. */
function feesPaid({ file, report }: PacketInput): LetterBlock[] {
  const connections = report.tieIns.filter(({ live }) => live).length;
  return file.permits
    .filter(({ id }) => file.permitFees.some(({ permitId }) => permitId === id))
    .flatMap((permit) => [
      heading(`Fees: ${permitName(permit)}`),
      ...feeBlocks(file, permit, feesOf(file, permit, connections)),
    ]);
}

/** Every account with all of its entries: nothing of the ledger is summed up only. */
function ledgerSheet({ file }: PacketInput): Sheet {
  const accounts = accountsIn(file).flatMap((account): LetterBlock[] => {
    const party = file.parties.find(({ id }) => id === account.partyId)?.name ?? "unknown";
    const property = file.properties.find(({ id }) => id === account.propertyId);
    const where = property === undefined ? "" : `${streetOf(property.address)}: `;
    return [
      heading(`${where}${party}`),
      ...table(
        ["On", "Entry", "Charged", "Paid or credited", "Balance"],
        statementRows(file, account, "en").map(({ on, words, charged, settled, balance }) => [
          EN.day(on),
          words,
          charged === null ? "" : formatCents(charged),
          settled === null ? "" : formatCents(settled),
          formatCents(balance),
        ]),
        { numeric: [2, 3, 4] },
      ),
    ];
  });
  return composed(
    "split",
    "Ledger",
    accounts.length === 0 ? [paragraph("Nothing was invoiced or paid.")] : accounts,
  );
}

/** Everything that was done on the file, by whom. */
function historySheet({ file }: PacketInput): Sheet {
  const rows = file.history.map(({ at, by, sentence }) => [
    formatDate(at.slice(0, 10)).replaceAll(" ", "\u00a0"),
    by.replaceAll(" ", "\u00a0"),
    sentence,
  ]);
  return composed(
    "upload",
    "History of the file",
    rows.length === 0
      ? [paragraph("Nothing is in the history.")]
      : table(["Day (UTC)", "By", "What was done"], rows),
  );
}

/** Papers that were added as proof, each once; what the office made itself is not proof of it. */
function paperSheets({ file }: PacketInput): Sheet[] {
  const party = (id: string | undefined) =>
    file.parties.find((each) => each.id === id)?.name ?? "unknown";
  const notice = (id: string) => file.notices.find((each) => each.id === id);
  const requirement = (id: string) =>
    file.authority?.requirements.find((each) => each.id === id)?.title ?? "Enclosure";
  const papers = [
    ...file.built.map(({ uploadId }) => ({ uploadId, title: "As-built" })),
    ...file.permitSteps.map(({ uploadId, on, state }) => ({
      uploadId,
      title: `Sent with “${PERMIT_STATE_WORDS[state]}”, ${EN.day(on)}`,
    })),
    ...file.requirementMarks.map(({ uploadId, requirementId }) => ({
      uploadId,
      title: requirement(requirementId),
    })),
    ...file.records.map(({ uploadId, title, number }) => ({
      uploadId,
      title: `${title} ${number}`.trim(),
    })),
    ...file.agreementSteps.map(({ uploadId }) => ({ uploadId, title: "Agreement" })),
    ...file.consents.map(({ uploadId, partyId }) => ({
      uploadId,
      title: `Signed by ${party(partyId)}`,
    })),
    ...file.deliveries.map(({ proofUploadId, noticeId }) => ({
      uploadId: proofUploadId,
      title: `Proof of delivery to ${party(notice(noticeId)?.partyId)}`,
    })),
    ...file.ledger.map(({ uploadId, number }) => ({
      uploadId,
      title: `Paper of ledger entry ${number}`,
    })),
  ];
  const seen = new Set<string>();
  return papers.flatMap(({ uploadId, title }) => {
    const upload = file.uploads.find(({ id }) => id === uploadId);
    if (upload === undefined || seen.has(upload.id)) return [];
    seen.add(upload.id);
    return [{ ...composed("upload", `${title} (${upload.name})`, []), uploadId: upload.id }];
  });
}
