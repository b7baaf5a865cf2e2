import { expect, test } from "vitest";
import { cardWords, isCardMissing } from "#lib/domain/application/posted-card.ts";
import type { PermitState } from "#lib/domain/facts/permit.ts";
import { aFile, aPermit, aPermitStep, aScopeItem } from "#tests/support/file.ts";

const TODAY = "2026-11-25";
const DIG = aScopeItem("dig", { kind: "dig-and-replace", from: 500, to: 1_500 });

function at(state: PermitState, { scope = [DIG], permit = aPermit("p") } = {}) {
  const file = aFile({ scope, permits: [permit], permitSteps: [aPermitStep("s", "p", { state })] });
  return { words: cardWords(file, permit, TODAY), missing: isCardMissing(file, permit) };
}

test("a card is missing once the permit is issued and work is planned, and not before or after", () => {
  for (const state of ["issued", "working", "inspection-failed", "extended"] as const)
    expect(at(state)).toEqual({ words: "Card not posted: no posting is on file", missing: true });
  for (const state of ["drafting", "in-review", "as-built-submitted", "final"] as const)
    expect(at(state)).toEqual({ words: null, missing: false });
  expect(at("issued", { scope: [] })).toEqual({ words: null, missing: false });
});

test("a posted card is said with its day, person and place, whatever the permit is at", () => {
  const card = { postedOn: "2026-11-24", postedBy: "Sami Orlov", postedPlace: "front gate" };
  const permit = aPermit("p", card);
  expect(at("working", { permit }).missing).toBe(false);
  expect(at("working", { permit }).words).toMatch(/^Card posted .*, by Sami Orlov: front gate$/);
  expect(at("final", { permit }).words).toMatch(/^Card posted /);
  const bare = aPermit("p", { postedOn: "2026-11-24" });
  expect(at("working", { permit: bare }).words).not.toMatch(/by|:/);
});
