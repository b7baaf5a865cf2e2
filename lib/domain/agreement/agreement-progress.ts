import type { AgreementStep, AgreementStepKind } from "../facts/agreement-step.ts";
import type { Agreement } from "../facts/authority.ts";
import type { LineFile } from "../facts/line-file.ts";
import { signersFor } from "../party/signers.ts";
import type { Day } from "../time/day.ts";
import { formatDate } from "../time/format-day.ts";

/** How far an agreement that is to be recorded has come. */
export type AgreementState =
  | "not-begun"
  | "draft"
  | "reviewed"
  | "returned"
  | "being-signed"
  | "signed"
  | "notarised"
  | "recorded"
  | "filed"
  | "given-up";

/** One whose signature the agreement needs, and what is in hand. */
interface AgreementHolder {
  readonly partyId: string;
  /** Name with the capacity in which it is signed. */
  readonly name: string;
  readonly holder: string;
  readonly capacity: string;
  readonly capacityMissing: boolean;
  readonly propertyIds: readonly string[];
  readonly signedOn: Day | null;
  readonly notarisedOn: Day | null;
}

export interface AgreementProgress {
  readonly state: AgreementState;
  /** In the order of their days; of one day in the order of entry. */
  readonly steps: readonly AgreementStep[];
  readonly holders: readonly AgreementHolder[];
  /** What the authority’s data ask for by way of a review before signing; null where nothing. */
  readonly reviewAsked: string | null;
  /** The steps that may follow, the likeliest first. */
  readonly next: readonly AgreementStepKind[];
  /** What is awaited, and of whom. */
  readonly waits: string;
}

export type AgreementWay = Pick<
  LineFile,
  "agreementSteps" | "roles" | "parties" | "authority" | "properties"
>;

/**
 * How far an agreement has come on its way to the record. A new draft, or one that came back, starts
 * again: what was reviewed and signed before was another text. It is signed on paper and acknowledged
 * before a notary by every title holder of the properties in it (common practice: some
 * cities review the draft before it is recorded).
 */
export function agreementProgress(file: AgreementWay, agreement: Agreement): AgreementProgress {
  const steps = stepsOf(file, agreement);
  const round = roundOf(steps);
  const holders = holdersOf(file, agreement, round);
  const reviewAsked = reviewAskedBy(file);
  const state = stateOf(agreement, { steps, round, holders });
  const known = { state, holders, round, reviewAsked };
  return { state, steps, holders, reviewAsked, next: nextOf(known), waits: waitsFor(known) };
}

function stepsOf({ agreementSteps }: AgreementWay, { id }: Agreement): AgreementStep[] {
  return agreementSteps
    .filter(({ agreementId }) => agreementId === id)
    .toSorted((one, other) => one.on.localeCompare(other.on));
}

/** The steps on the text as it is now: from the last draft or return on. */
function roundOf(steps: readonly AgreementStep[]): AgreementStep[] {
  const start = steps.findLastIndex(({ kind }) => kind === "drafted" || kind === "returned");
  return steps.slice(Math.max(start, 0));
}

function holdersOf(
  file: AgreementWay,
  { shares }: Agreement,
  round: readonly AgreementStep[],
): AgreementHolder[] {
  const holders = new Map<string, AgreementHolder>();
  for (const { propertyId } of shares.filter(({ parts }) => parts > 0)) {
    for (const signer of signersFor(file, propertyId)) {
      const { partyId, name, holder, capacity, capacityMissing } = signer;
      const known = holders.get(partyId);
      const dayOf = (kind: AgreementStepKind) =>
        round.find((step) => step.kind === kind && step.partyId === partyId)?.on ?? null;
      holders.set(partyId, {
        partyId,
        ...{ name, holder, capacity },
        capacityMissing: capacityMissing || known?.capacityMissing === true,
        propertyIds: [...(known?.propertyIds ?? []), propertyId],
        signedOn: dayOf("signed"),
        notarisedOn: dayOf("notarised"),
      });
    }
  }
  return [...holders.values()];
}

/** The requirement of the authority that speaks of reviewing an agreement or an easement. */
function reviewAskedBy({ authority }: AgreementWay): string | null {
  const asks = authority?.requirements.find(({ title, detail }) => {
    const words = `${title} ${detail}`;
    return /\breview/i.test(words) && /agreement|easement/i.test(words);
  });
  return asks?.title ?? null;
}

interface Known {
  readonly steps: readonly AgreementStep[];
  readonly round: readonly AgreementStep[];
  readonly holders: readonly AgreementHolder[];
}

function stateOf(agreement: Agreement, { steps, round, holders }: Known): AgreementState {
  const had = (kind: AgreementStepKind) => round.some((step) => step.kind === kind);
  if (had("number-filed")) return "filed";
  if (isRecorded(agreement) || had("recorded")) return "recorded";
  if (steps.length === 0) return "not-begun";
  if (had("given-up")) return "given-up";
  if (holders.length > 0 && holders.every(({ notarisedOn }) => notarisedOn !== null))
    return "notarised";
  if (holders.length > 0 && holders.every(({ signedOn }) => signedOn !== null)) return "signed";
  if (had("signed")) return "being-signed";
  if (had("reviewed")) return "reviewed";
  return had("returned") ? "returned" : "draft";
}

function isRecorded({ recordedOn, recordingNumber }: Agreement): boolean {
  return recordedOn !== null || recordingNumber.trim() !== "";
}

type Way = Pick<AgreementProgress, "state" | "holders" | "reviewAsked"> & Pick<Known, "round">;

const ALWAYS: readonly AgreementStepKind[] = ["returned", "drafted", "given-up"];

function nextOf({ state, holders, round, reviewAsked }: Way): AgreementStepKind[] {
  const mayBeSigned =
    reviewAsked === null || round.some(({ kind }) => kind === "reviewed") || state === "reviewed";
  const toSign = holders.some(({ signedOn }) => signedOn === null);
  const toNotarise = holders.some(
    ({ signedOn, notarisedOn }) => signedOn !== null && notarisedOn === null,
  );
  switch (state) {
    case "not-begun":
    case "given-up":
      return ["drafted"];
    case "returned":
      return ["drafted", "given-up"];
    case "filed":
      return [];
    case "recorded":
      return ["number-filed"];
    case "notarised":
      return ["recorded", ...ALWAYS];
    default:
      return [
        ...(mayBeSigned ? [] : (["reviewed"] as const)),
        ...(toSign && mayBeSigned ? (["signed"] as const) : []),
        ...(toNotarise ? (["notarised"] as const) : []),
        ...(mayBeSigned && state === "draft" ? (["reviewed"] as const) : []),
        ...ALWAYS,
      ];
  }
}

const WAITS: Partial<Record<AgreementState, string>> = {
  "not-begun": "Draft it first.",
  returned: "Returned: revise the draft and save the new one.",
  notarised: "Take it to the county recorder, and enter the recording number.",
  recorded: "File the recording number with the authority.",
  filed: "Nothing more to do: it is recorded and its number is filed.",
  "given-up": "Abandoned. A new draft starts over.",
};

function waitsFor({ state, holders, reviewAsked, round }: Way): string {
  const said = WAITS[state];
  if (said !== undefined) return said;
  if (holders.length === 0)
    return "List the properties it covers in the table above, with their parts, and who owns them.";
  const reviewed = round.some(({ kind }) => kind === "reviewed");
  if (reviewAsked !== null && !reviewed)
    return `Let the authority review the draft before anyone signs (“${reviewAsked}”).`;
  const toSign = holders.filter(({ signedOn }) => signedOn === null);
  if (toSign.length > 0) return `To sign on paper: ${names(toSign)}.`;
  const toNotarise = holders.filter(({ notarisedOn }) => notarisedOn === null);
  return `To be notarized: ${names(toNotarise)}.`;
}

function names(holders: readonly AgreementHolder[]): string {
  return holders.map(({ name }) => name).join("; ");
}

interface NewStep {
  readonly kind: AgreementStepKind;
  readonly on: Day;
  readonly partyId: string | null;
  readonly number: string;
}

/** Why a step cannot be taken now, with the field that it is about; null where it can. */
export function stepProblem(
  file: AgreementWay,
  agreement: Agreement,
  step: NewStep,
): { readonly path: keyof NewStep; readonly words: string } | null {
  const progress = agreementProgress(file, agreement);
  if (!progress.next.includes(step.kind)) return { path: "kind", words: outOfTurn(progress, step) };
  return (
    signerProblem(progress, step) ??
    numberProblem(step) ??
    dayProblem(roundOf(progress.steps), step)
  );
}

function outOfTurn({ state, waits }: AgreementProgress, { kind }: NewStep): string {
  const words = kind.replaceAll("-", " ");
  return state === "filed"
    ? "It is recorded and its number is filed; no further steps"
    : `“${words}” is not the next step. ${waits}`;
}

function signerProblem({ holders }: AgreementProgress, { kind, partyId, on }: NewStep) {
  if (kind !== "signed" && kind !== "notarised") return null;
  const holder = holders.find((each) => each.partyId === partyId);
  const problem = (words: string) => ({ path: "partyId", words }) as const;
  if (holder === undefined) return problem("Choose the title holder");
  const { signedOn, notarisedOn, name } = holder;
  if (kind === "signed")
    return signedOn === null ? null : problem(`${name} signed on ${formatDate(signedOn)} already`);
  if (signedOn === null) return problem(`${name} has not signed yet`);
  if (notarisedOn !== null) return problem(`Notarized on ${formatDate(notarisedOn)} already`);
  return on < signedOn
    ? ({ path: "on", words: `${name} signed on ${formatDate(signedOn)}` } as const)
    : null;
}

function numberProblem({ kind, number }: NewStep) {
  if (kind !== "recorded" || number.trim() !== "") return null;
  return { path: "number", words: "Enter the recording number" } as const;
}

/** Signatures come in in any order; everything else follows what was before it. */
function dayProblem(round: readonly AgreementStep[], { kind, on }: NewStep) {
  const before = kind === "signed" || kind === "notarised" ? round.slice(0, 1) : round;
  const last = before.at(-1);
  if (last === undefined || on >= last.on) return null;
  return { path: "on", words: `The step before was on ${formatDate(last.on)}` } as const;
}
