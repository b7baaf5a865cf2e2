import { expect, test } from "vitest";
import { optionChoice, particularsOf } from "#app/lines/[lineId]/cost/particulars.ts";
import { SPLIT_RULES } from "#lib/domain/facts/split.ts";
import { reportOn } from "#lib/domain/report/report-on.ts";
import { presentChoice } from "#lib/domain/split/outcomes.ts";
import { aFile } from "../../support/file.ts";

test("what a stranger owes is carried by no neighbor until a person says so", () => {
  const file = aFile();
  const particulars = particularsOf(file, reportOn(file, "2026-11-25"), {});
  for (const rule of SPLIT_RULES) {
    expect(presentChoice(file, rule).unknownShares).toBe("held-apart");
    expect(optionChoice(file, particulars, { rule }).unknownShares).toBe("held-apart");
  }
});
