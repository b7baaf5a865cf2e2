import type { Fee } from "../facts/authority.ts";
import type { LineFile } from "../facts/line-file.ts";
import type { Permit } from "../facts/permit.ts";
import type { PermitFeeEntry } from "../facts/permit-fee.ts";
import type { Cents } from "../money/cents.ts";
import { formatCents } from "../money/format-cents.ts";
import { permitStateOf } from "../permit/steps.ts";
import { type CountedFile, countFor, type FeeCount } from "./fee-counts.ts";

type FeeFile = CountedFile & Pick<LineFile, "permitFees" | "permitSteps">;

/** One fee of the schedule as it comes to on this permit. */
interface FeeLine {
  readonly fee: Fee;
  /** Null: what it hangs on is not entered. */
  readonly amount: Cents | null;
  /** How it is worked out: `3 connections, 1 included: 2 × $60.00`; or what is not known. */
  readonly sum: string;
}

/** What a permit costs by the authority’s schedule, and what was billed, paid and returned. */
export interface PermitFees {
  readonly lines: readonly FeeLine[];
  /** All fees, deposits among them; null while one of them is not known. */
  readonly total: Cents | null;
  /** What those come to that are known. */
  readonly known: Cents;
  /** The part of it that comes back with the final. */
  readonly deposit: Cents;
  /** Null: the authority has not billed anything. */
  readonly billed: Cents | null;
  readonly paid: Cents;
  readonly refunded: Cents;
  /** What the office still owes; below zero what it has to get back. Null while a fee is not known. */
  readonly due: Cents | null;
  /** What is owed whatever the fees not known come to; never below zero while one is not known. */
  readonly dueAtLeast: Cents;
}

/** The fees of a permit, worked out from the facts as they are now. `connections` are the live tie-ins. */
export function feesOf(file: FeeFile, permit: Permit, connections: number): PermitFees {
  const lines = (file.authority?.fees ?? [])
    .filter(({ permitKind }) => permitKind === null || permitKind === permit.kind)
    .map((fee) => lineOf(fee, countFor(fee, file, { permit, connections })));
  const sum = (some: readonly FeeLine[]) =>
    some.reduce((all, { amount }) => all + (amount ?? 0), 0);
  const entries = file.permitFees.filter(({ permitId }) => permitId === permit.id);
  const bills = entries.filter(({ kind }) => kind === "billed");
  const known = sum(lines);
  const isWhole = lines.every(({ amount }) => amount !== null);
  const deposit = sum(lines.filter(({ fee }) => fee.per === "deposit"));
  const paid = entered(entries, "paid");
  const refunded = entered(entries, "refunded");
  const owed = permitStateOf(file, permit) === "final" ? known - deposit : known;
  const due = owed - (paid - refunded);
  return {
    lines,
    total: isWhole ? known : null,
    known,
    deposit,
    billed: bills.length === 0 ? null : entered(entries, "billed"),
    paid,
    refunded,
    due: isWhole ? due : null,
    dueAtLeast: isWhole ? due : Math.max(0, due),
  };
}

function entered(entries: readonly PermitFeeEntry[], of: PermitFeeEntry["kind"]): Cents {
  return entries.filter(({ kind }) => kind === of).reduce((sum, { amount }) => sum + amount, 0);
}

function lineOf(fee: Fee, count: FeeCount): FeeLine {
  if (count.hundredths === null) return { fee, amount: null, sum: `not known: ${count.lacks}` };
  const units = unitsOf(fee, count.hundredths);
  const plain = Math.round(fee.amount * units);
  const amount = count.hundredths === 0 && fee.per !== "cost" ? 0 : withinLimits(fee, plain);
  return { fee, amount, sum: sumWords(fee, { words: count.words, units, plain, amount }) };
}

/** Where nothing is counted there is nothing to charge the least for; a cost of nothing is still work. */
function withinLimits({ least, most }: Fee, plain: Cents): Cents {
  return Math.min(most ?? Number.POSITIVE_INFINITY, Math.max(least ?? 0, plain));
}

/** How often the amount is charged: beyond what is included, in steps, a part as the fee has it. */
function unitsOf({ included, partCounts, ...fee }: Fee, hundredths: number): number {
  const charged = Math.max(0, hundredths - 100 * included);
  const units = charged / (100 * (isStepped(fee) ? (fee.step ?? 1) : 1));
  return isStepped(fee) && partCounts === "whole" ? Math.ceil(units) : units;
}

function isStepped({ per }: Pick<Fee, "per">): boolean {
  return per === "cost" || per === "square-foot";
}

interface Charged {
  readonly words: string;
  readonly units: number;
  readonly plain: Cents;
  readonly amount: Cents;
}

function sumWords(fee: Fee, { words, units, plain, amount }: Charged): string {
  if (fee.per === "deposit") return "returned with the final";
  const limit =
    amount === plain ? "" : `, ${amount > plain ? "at least" : "at most"} ${formatCents(amount)}`;
  const times = `${Number(units.toFixed(4))} × ${formatCents(fee.amount)}`;
  return `${words}${included(fee)}: ${times}${stepWords(fee)}${limit}`;
}

function included({ included: free, per }: Fee): string {
  if (free === 0) return "";
  if (per === "cost") return `, ${formatCents(100 * free)} included`;
  return per === "square-foot" ? `, ${free} sq ft included` : `, ${free} included`;
}

/** ` for each $100.00 or part of it`; nothing where it is for each piece. */
function stepWords({ per, step, partCounts }: Fee): string {
  if (!(per === "cost" || per === "square-foot")) return "";
  if (per === "square-foot" && (step ?? 1) === 1) return "";
  const one = per === "cost" ? formatCents(100 * (step ?? 1)) : `${step} sq ft`;
  return ` for each ${one}${partCounts === "whole" ? " or part of it" : ""}`;
}

/**
 * What is to be done about a permit’s fees, in a sentence each: what is not known, what differs between
 * bill and schedule, what is left to pay after facts have changed, what has to come back. Empty: nothing.
 */
export function feeSentences(fees: PermitFees, isFinal: boolean): string[] {
  return [...unknownSentences(fees), ...billSentences(fees), ...dueSentences(fees, isFinal)];
}

function unknownSentences({ lines, known }: PermitFees): string[] {
  const open = lines.filter(({ amount }) => amount === null).map(({ fee }) => `“${fee.title}”`);
  if (open.length === 0) return [];
  return [
    `What ${open.join(", ")} comes to is not known yet; see below for what to enter. The other fees come to ${formatCents(known)}.`,
  ];
}

function billSentences({ billed, total }: PermitFees): string[] {
  if (billed === null || total === null || billed === total) return [];
  return [
    `Billed ${formatCents(billed)}; by the schedule and the facts as they are now it is ${formatCents(total)}. Check what is counted, or ask the authority.`,
  ];
}

function dueSentences(fees: PermitFees, isFinal: boolean): string[] {
  const { paid, refunded, due, dueAtLeast, deposit } = fees;
  if (paid === 0) return [];
  const net = paid - refunded;
  const at = due === null ? "at least " : "";
  if (dueAtLeast > 0)
    return [
      `Paid ${formatCents(net)}. The schedule now comes to ${at}${formatCents(net + dueAtLeast)}: ${at}${formatCents(dueAtLeast)} left to pay.`,
    ];
  if (due === null || due === 0) return [];
  const back = formatCents(-due);
  return [
    isFinal && -due <= deposit
      ? `The permit is final: ${back} of the deposit has to come back.`
      : `Paid ${formatCents(net)}, ${back} more than the schedule now comes to. Ask the authority for it.`,
  ];
}

/** An amount of a schedule, or that it is not known. */
export function feeWords(amount: Cents | null): string {
  return amount === null ? "not known" : formatCents(amount);
}
