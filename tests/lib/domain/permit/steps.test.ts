import { expect, test } from "vitest";
import { PERMIT_STATES, type PermitState } from "#lib/domain/facts/permit.ts";
import { moverOf } from "#lib/domain/permit/mover.ts";
import { nextPermitStates } from "#lib/domain/permit/moves.ts";
import { permitSentence, permitStanding } from "#lib/domain/permit/say.ts";
import {
  isDoneWith,
  isInForce,
  lastStepOf,
  permitStateOf,
  usualStepsOf,
} from "#lib/domain/permit/steps.ts";
import { aFile, aPermit, aPermitStep } from "#tests/support/file.ts";

const USUAL: readonly PermitState[] = [
  "drafting",
  "waiting-on-signatures",
  "submitted",
  "returned-incomplete",
  "submitted",
  "in-review",
  "corrections",
  "submitted",
  "in-review",
  "approved-fees-due",
  "issued",
  "working",
  "inspection-requested",
  "inspection-failed",
  "inspection-requested",
  "passed-may-backfill",
  "as-built-submitted",
  "as-built-rejected",
  "as-built-submitted",
  "as-built-accepted",
  "final",
];

test("nextPermitStates() allows the usual way from the draft to the final", () => {
  USUAL.slice(1).forEach((state, at) => {
    expect(nextPermitStates(USUAL[at] ?? "final")).toContain(state);
  });
});

test("nextPermitStates() takes the as-built down as accepted, which is not yet the final", () => {
  const file = aFile({
    permits: [aPermit("p")],
    permitSteps: [aPermitStep("s", "p", { state: "as-built-accepted" })],
  });
  expect(nextPermitStates("passed-may-backfill")).not.toContain("as-built-accepted");
  expect(isInForce("as-built-accepted")).toBe(true);
  expect(moverOf("as-built-accepted")).toBe("authority");
  expect(usualStepsOf(file, aPermit("p"))).toEqual(["final"]);
});

test("nextPermitStates() takes a denial down as one, and an appeal of it, and lets no work begin", () => {
  for (const state of ["submitted", "in-review", "corrections"] as const)
    expect(nextPermitStates(state)).toContain("denied");
  expect(nextPermitStates("denied")).toEqual(["appealed", "superseded", "withdrawn"]);
  expect(nextPermitStates("appealed")).toContain("issued");
  for (const state of ["denied", "appealed"] as const) {
    expect(isInForce(state)).toBe(false);
    expect(nextPermitStates(state)).not.toContain("working");
  }
  expect(moverOf("denied")).toBe("office");
});

test("nextPermitStates() lets no work begin before the permit is issued", () => {
  for (const state of PERMIT_STATES.filter((each) => !isInForce(each) && !isDoneWith(each))) {
    expect(nextPermitStates(state)).not.toContain("working");
    expect(nextPermitStates(state)).not.toContain("passed-may-backfill");
  }
});

test("nextPermitStates() leads every state somewhere that ends, and from the draft everywhere", () => {
  const reached = new Set<PermitState>(["drafting"]);
  for (const state of reached) for (const next of nextPermitStates(state)) reached.add(next);
  expect([...reached].toSorted()).toEqual([...PERMIT_STATES].toSorted());
  expect(PERMIT_STATES.filter((state) => nextPermitStates(state).length === 0)).toEqual([
    "final",
    "withdrawn",
    "superseded",
  ]);
});

test("nextPermitStates() lets an expired permit be extended, and a permit in force expire", () => {
  expect(nextPermitStates("expired")).toContain("extended");
  for (const state of PERMIT_STATES.filter(isInForce))
    expect(nextPermitStates(state)).toContain("expired");
});

test("moverOf() is nobody exactly where a permit is over for good", () => {
  for (const state of PERMIT_STATES)
    expect(moverOf(state) === "nobody").toBe(nextPermitStates(state).length === 0);
});

test("permitStateOf() is the last step by day, and of one day the one entered last", () => {
  const permit = aPermit("p");
  const file = aFile({
    permits: [permit],
    permitSteps: [
      aPermitStep("2", "p", { state: "in-review", on: "2026-11-04" }),
      aPermitStep("1", "p", { state: "submitted", on: "2026-11-02" }),
      aPermitStep("3", "p", { state: "corrections", on: "2026-11-04" }),
      aPermitStep("x", "other", { state: "final", on: "2026-12-04" }),
    ],
  });
  expect(permitStateOf(file, permit)).toBe("corrections");
  expect(lastStepOf(file, permit)?.id).toBe("3");
  expect(permitStateOf(aFile(), permit)).toBe("drafting");
});

test("permitSentence() says the state and since when", () => {
  const permit = aPermit("p", { number: "SS-26-0818" });
  const step = (state: PermitState, on: string) =>
    aFile({ permitSteps: [aPermitStep("s", "p", { state, on })] });
  const today = "2026-11-25";
  expect(permitSentence(step("approved-fees-due", "2026-11-20"), permit, today)).toBe(
    "Side sewer permit SS-26-0818 is approved, fees due (since Friday, November 20)",
  );
  expect(permitSentence(step("submitted", "2026-11-25"), permit, today)).toBe(
    "Side sewer permit SS-26-0818 was submitted (today)",
  );
  expect(permitSentence(step("returned-incomplete", "2026-11-23"), permit, today)).toBe(
    "Side sewer permit SS-26-0818 was returned as incomplete (on Monday, November 23)",
  );
  expect(permitSentence(aFile(), aPermit("p", { kind: "street-use" }), today)).toBe(
    "Street use permit is being drafted",
  );
  expect(permitStanding(aFile(), permit)).toBe("side sewer permit SS-26-0818 is being drafted");
});

test("usualStepsOf() offers only what may follow, and goes on after an extension", () => {
  const permit = aPermit("p");
  const offered = (...states: PermitState[]) =>
    usualStepsOf(
      aFile({
        permits: [permit],
        permitSteps: states.map((state, at) =>
          aPermitStep(`s${at}`, "p", { state, on: `2026-11-1${at}` }),
        ),
      }),
      permit,
    );
  for (const state of PERMIT_STATES)
    for (const next of offered(state)) expect(nextPermitStates(state)).toContain(next);
  expect(offered()).toEqual(["submitted", "waiting-on-signatures"]);
  expect(offered("issued", "working")).toEqual(["inspection-requested"]);
  expect(offered("working", "extended")).toEqual(["inspection-requested"]);
  expect(offered("final")).toEqual([]);
});
