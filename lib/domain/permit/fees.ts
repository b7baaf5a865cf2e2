import type { Fee, FeePer } from "../facts/authority.ts";
import type { LineFile } from "../facts/line-file.ts";
import type { Permit } from "../facts/permit.ts";
import type { PermitFeeEntry } from "../facts/permit-fee.ts";
import type { Cents } from "../money/cents.ts";
import { formatCents } from "../money/format-cents.ts";
import { heldInspections, reinspections } from "./inspections.ts";
import { permitStateOf } from "./steps.ts";

type FeeFile = Pick<
  LineFile,
  "authority" | "inspections" | "permitFees" | "permitSteps" | "properties"
>;

/** One fee of the schedule as it comes to on this permit. */
interface FeeLine {
  readonly fee: Fee;
  readonly amount: Cents;
  /** How it is worked out: `3 connections, 1 included: 2 × $60.00`. */
  readonly sum: string;
}

/** What a permit costs by the authority’s schedule, and what was billed, paid and returned. */
export interface PermitFees {
  readonly lines: readonly FeeLine[];
  /** All fees, deposits among them. */
  readonly total: Cents;
  /** The part of it that comes back with the final. */
  readonly deposit: Cents;
  /** Null: the authority has not billed anything. */
  readonly billed: Cents | null;
  readonly paid: Cents;
  readonly refunded: Cents;
  /** What the office still owes; below zero what it has to get back. */
  readonly due: Cents;
}

/**
 * The fees of a permit, worked out from the facts as they are now. `connections` are the live tie-ins.
 * Hours that nobody entered cost nothing yet; one inspection is expected where none is scheduled.
 */
export function feesOf(file: FeeFile, permit: Permit, connections: number): PermitFees {
  const counts = countsOf(file, permit, connections);
  const lines = (file.authority?.fees ?? [])
    .filter(({ permitKind }) => permitKind === null || permitKind === permit.kind)
    .map((fee) => lineOf(fee, counts[fee.per]));
  const sum = (some: readonly FeeLine[]) => some.reduce((all, { amount }) => all + amount, 0);
  const entries = file.permitFees.filter(({ permitId }) => permitId === permit.id);
  const bills = entries.filter(({ kind }) => kind === "billed");
  const total = sum(lines);
  const deposit = sum(lines.filter(({ fee }) => fee.per === "deposit"));
  const paid = entered(entries, "paid");
  const refunded = entered(entries, "refunded");
  const owed = permitStateOf(file, permit) === "final" ? total - deposit : total;
  return {
    lines,
    total,
    deposit,
    billed: bills.length === 0 ? null : entered(entries, "billed"),
    paid,
    refunded,
    due: owed - (paid - refunded),
  };
}

function entered(entries: readonly PermitFeeEntry[], of: PermitFeeEntry["kind"]): Cents {
  return entries.filter(({ kind }) => kind === of).reduce((sum, { amount }) => sum + amount, 0);
}

/** Counts in hundredths, since hours may be parts of one. */
function countsOf(file: FeeFile, permit: Permit, connections: number): Record<FeePer, number> {
  const held = heldInspections(file, permit);
  const served = file.properties.filter(({ stake }) => stake === "connected");
  return {
    permit: 100,
    deposit: 100,
    connection: 100 * connections,
    structure: 100 * served.length,
    inspection: 100 * Math.max(1, held.length),
    reinspection: 100 * reinspections(file, permit).length,
    hour: held.reduce((sum, { hours }) => sum + (hours ?? 0), 0),
  };
}

function lineOf(fee: Fee, count: number): FeeLine {
  const charged = Math.max(0, count - 100 * fee.included);
  const amount = Math.round((fee.amount * charged) / 100);
  return { fee, amount, sum: sumWords(fee, count, charged) };
}

const ONES: Record<FeePer, string> = {
  permit: "permit",
  deposit: "deposit",
  connection: "connection",
  structure: "property served",
  inspection: "inspection",
  reinspection: "reinspection",
  hour: "hour",
};

function sumWords({ amount, per, included }: Fee, count: number, charged: number): string {
  if (per === "deposit") return "returned with the final";
  const many = per === "structure" ? "properties served" : `${ONES[per]}s`;
  const has = count === 100 ? `1 ${ONES[per]}` : `${inUnits(count)} ${many}`;
  const free = included === 0 ? "" : `, ${included} included`;
  return `${has}${free}: ${inUnits(charged)} × ${formatCents(amount)}`;
}

function inUnits(hundredths: number): string {
  return String(hundredths / 100);
}

/**
 * What is to be done about a permit’s fees, in a sentence each: what differs between bill and schedule,
 * what is left to pay after facts have changed, what has to come back. Empty: nothing.
 */
export function feeSentences(fees: PermitFees, isFinal: boolean): string[] {
  const { total, billed, paid, refunded, due, deposit } = fees;
  const off =
    billed !== null && billed !== total
      ? [
          `Billed ${formatCents(billed)}; by the schedule and the facts as they are now it is ${formatCents(total)}. Check what is counted, or ask the authority.`,
        ]
      : [];
  if (paid === 0) return off;
  const net = paid - refunded;
  if (due > 0)
    return [
      ...off,
      `Paid ${formatCents(net)}. The schedule now comes to ${formatCents(net + due)}: ${formatCents(due)} left to pay.`,
    ];
  if (due === 0) return off;
  const back = formatCents(-due);
  return [
    ...off,
    isFinal && -due <= deposit
      ? `The permit is final: ${back} of the deposit has to come back.`
      : `Paid ${formatCents(net)}, ${back} more than the schedule now comes to. Ask the authority for it.`,
  ];
}
