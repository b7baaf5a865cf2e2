import { feeSentences, feesOf, feeWords, type PermitFees } from "../application/fees.ts";
import type { LineFile, Office } from "../facts/line-file.ts";
import type { Permit } from "../facts/permit.ts";
import type { FeeEntryKind, PermitFeeEntry } from "../facts/permit-fee.ts";
import type { Report } from "../findings/report.ts";
import { formatCents } from "../money/format-cents.ts";
import { formatAddress } from "../party/address.ts";
import { formatPhone } from "../party/phone.ts";
import { streetOf } from "../party/stakeholders.ts";
import { permitName } from "../permit/say.ts";
import { permitStateOf } from "../permit/steps.ts";
import { heading, paragraph, table } from "./common.ts";
import type { ClerkSheet } from "./corrections-answer.ts";
import type { LetterBlock } from "./letter.ts";
import { EN } from "./words-en.ts";

interface Around {
  readonly file: LineFile;
  readonly office: Office;
  readonly report: Pick<Report, "today" | "tieIns">;
}

/** What an amount between office and authority is called on paper. */
export const FEE_ENTRY_WORDS: Record<FeeEntryKind, string> = {
  billed: "billed by the authority",
  paid: "paid",
  refunded: "returned to us",
};

/**
 * What a permit cost and who paid it, for the file and for whoever asks: each amount with its day, the
 * authority’s receipt and who paid, beside what the schedule comes to. Null where no such permit is. It
 * is the office’s own record, not the authority’s receipt, and says so.
 */
export function feeSheet({ file, office, report }: Around, permitId: string): ClerkSheet | null {
  const permit = file.permits.find(({ id }) => id === permitId);
  if (permit === undefined) return null;
  const connections = report.tieIns.filter(({ live }) => live).length;
  const fees = feesOf(file, permit, connections);
  const contact = [formatPhone(office.phone), office.email].filter((part) => part !== "");
  const served = file.properties.filter(({ stake }) => stake !== "neighbour");
  return {
    title: "Permit fees paid",
    day: report.today,
    from: [office.name, formatAddress(office.address), contact.join(" · ")].filter(
      (line) => line !== "",
    ),
    to: ["For the file"],
    about: [
      ["Permit", permitName(permit)],
      ["Line", `${file.line.name}: ${EN.list(served.map(({ address }) => streetOf(address)))}`],
      ["Authority", file.authority?.name ?? "not chosen"],
      ["Paid, less what came back", formatCents(fees.paid - fees.refunded)],
      ["As of", EN.day(report.today)],
    ],
    blocks: feeBlocks(file, permit, fees),
    signed: [],
    footer: [office.name, permitName(permit), EN.day(report.today)].join(" · "),
  };
}

/** The amounts that passed for one permit, and what the schedule comes to. */
export function feeBlocks(file: LineFile, permit: Permit, fees: PermitFees): LetterBlock[] {
  const entries = file.permitFees
    .filter(({ permitId }) => permitId === permit.id)
    .toSorted((one, other) => one.on.localeCompare(other.on));
  const isFinal = permitStateOf(file, permit) === "final";
  return [
    ...unreceipted(entries),
    heading("Billed, paid and returned"),
    ...(entries.length === 0
      ? [paragraph("Nothing was billed or paid yet.")]
      : table(
          ["Date", "What", "For", "Receipt or invoice", "Paid by", "Note", "Amount"],
          entries.map((entry) => entryRow(file, entry)),
          { numeric: [6] },
        )),
    heading("By the authority’s schedule"),
    ...scheduleTable(fees),
    ...feeSentences(fees, isFinal).map(paragraph),
    paragraph("From the office’s records. The authority’s own receipt is what proves a payment."),
  ];
}

function entryRow(file: LineFile, entry: PermitFeeEntry): string[] {
  const fee = file.authority?.fees.find(({ id }) => id === entry.feeId);
  return [
    EN.day(entry.on),
    FEE_ENTRY_WORDS[entry.kind],
    fee?.title ?? "all fees",
    entry.receipt || "–",
    entry.by || "–",
    entry.note || "–",
    formatCents(entry.amount),
  ];
}

/** A payment without a receipt number or without who made it proves nothing later. */
function unreceipted(entries: readonly PermitFeeEntry[]): LetterBlock[] {
  const lines = entries.flatMap(({ kind, amount, on, receipt, by }) => {
    const lacks = [
      ...(receipt === "" ? ["receipt number"] : []),
      ...(by === "" ? ["who paid"] : []),
    ];
    if (kind !== "paid" || lacks.length === 0) return [];
    return [`${formatCents(amount)} on ${EN.day(on)}: ${EN.list(lacks)}.`];
  });
  return lines.length === 0
    ? []
    : [{ kind: "caution", title: "Not entered yet", text: lines.join(" ") }];
}

function scheduleTable({ lines, total, known }: PermitFees): LetterBlock[] {
  if (lines.length === 0) return [paragraph("No fees of this authority are entered.")];
  return table(
    ["Fee", "Source", "Calculation", "Amount"],
    [
      ...lines.map(({ fee, sum, amount }) => [
        fee.title,
        fee.asOf === "" ? fee.citation : `${fee.citation}, as of ${EN.day(fee.asOf)}`,
        sum,
        feeWords(amount),
      ]),
      total === null
        ? ["Without what is not known", "", "", formatCents(known)]
        : ["Total", "", "", formatCents(total)],
    ],
    { numeric: [3], totals: 1 },
  );
}
