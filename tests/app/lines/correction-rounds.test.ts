import { expect, test } from "vitest";
import { roundChoices } from "#app/lines/[lineId]/authority/corrections/columns.ts";
import { aFile, aPermit, aPermitStep } from "#tests/support/file.ts";

test("the newest round comes first, two of one day too: a new comment belongs to it", () => {
  const day = "2026-11-25";
  const steps = ["submitted", "corrections", "submitted", "corrections"] as const;
  const file = aFile({
    permits: [aPermit("permit")],
    permitSteps: steps.map((state, at) =>
      aPermitStep(`step-${at}`, "permit", { state, on: at === 0 ? "2026-11-20" : day }),
    ),
  });
  expect(roundChoices(file).map(({ value }) => value)).toEqual(["step-3", "step-1"]);
});
