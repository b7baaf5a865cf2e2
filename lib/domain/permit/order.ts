import type { LineFile } from "../facts/line-file.ts";
import type { Permit, PermitState } from "../facts/permit.ts";
import type { AwaitedStep, PermitOrder, WaitingStep } from "../facts/permit-rule.ts";
import { kindName, permitStanding } from "./say.ts";
import { isInForce, permitStateOf, stepsOf, usualStepsOf } from "./steps.ts";

type OrderFile = Pick<LineFile, "authority" | "permits" | "permitSteps">;

/** Steps of a permit by the step of the authority’s order that they are; a call for inspection shows work. */
const STEP_OF: Partial<Record<PermitState, WaitingStep>> = {
  submitted: "submitted",
  issued: "issued",
  working: "working",
  "inspection-requested": "working",
};

const STEP_WORDS: Readonly<Record<WaitingStep, string>> = {
  submitted: "is not submitted",
  issued: "is not issued",
  working: "does not let work begin",
};

const UNTIL_WORDS: Readonly<Record<AwaitedStep, string>> = {
  submitted: "is submitted",
  issued: "is issued",
  final: "is final",
};

/**
 * Why a permit may not take a step yet, as the authority orders its permits: `The street use permit is
 * not submitted until the side sewer permit is issued (QMC 13.08.060): side sewer permit SS-1 is in
 * review`. Null: nothing says so.
 */
export function orderBar(
  file: OrderFile,
  { kind }: Pick<Permit, "kind">,
  state: PermitState,
): string | null {
  const step = STEP_OF[state];
  const order = (file.authority?.permitOrders ?? []).find(
    (each) => each.kind === kind && each.step === step && !isReached(file, each),
  );
  if (order === undefined) return null;
  const source = order.citation === "" ? "" : ` (${order.citation})`;
  const rule = `The ${kindName(kind)} ${STEP_WORDS[order.step]} until the ${kindName(order.waitsFor)} ${UNTIL_WORDS[order.until]}${source}`;
  return `${rule}: ${standingOf(file, order)}`;
}

function standingOf(file: OrderFile, { waitsFor }: PermitOrder): string {
  const others = file.permits.filter(({ kind }) => kind === waitsFor);
  return others.length === 0
    ? `there is no ${kindName(waitsFor)} in the file`
    : others.map((permit) => permitStanding(file, permit)).join(", ");
}

/** Where a permit has come to nothing, whatever it had reached. */
const ENDED: readonly PermitState[] = [
  "drafting",
  "waiting-on-signatures",
  "returned-incomplete",
  "denied",
  "expired",
  "withdrawn",
  "superseded",
];

function isReached(file: OrderFile, { waitsFor, until }: PermitOrder): boolean {
  return file.permits
    .filter(({ kind }) => kind === waitsFor)
    .some((permit) => {
      const state = permitStateOf(file, permit);
      if (until === "final") return state === "final";
      if (until === "issued") return state === "final" || isInForce(state);
      return (
        !ENDED.includes(state) && stepsOf(file, permit).some((step) => !ENDED.includes(step.state))
      );
    });
}

/** What a permit waits for before its usual next step; null: for no other permit. */
export function waitsOn(file: OrderFile, permit: Permit): string | null {
  const [next] = usualStepsOf(file, permit);
  return next === undefined ? null : orderBar(file, permit, next);
}
