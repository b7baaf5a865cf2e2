import { expect, test } from "vitest";
import { undocumentedWords } from "#app/lines/[lineId]/reconcile/undocumented/questions.ts";
import { aFinding } from "#tests/support/answers.ts";
import { aTieIn } from "#tests/support/file.ts";

const T2 = aTieIn("T2", { settledOn: "2026-11-20", propertyId: "14", ownerAccepted: true });
const T4 = aTieIn("T4", { settledOn: "2026-11-21", inactive: true });

test("undocumentedWords() counts every tie-in that was not on record, also one that proved dead", () => {
  const settled = [
    aFinding(T2, { standing: "undocumented", level: 5 }),
    aFinding(T4, { standing: "inactive", live: false }),
    aFinding(aTieIn("T1"), { standing: "on-record-and-seen" }),
  ];
  expect(undocumentedWords(settled)).toBe("2 tie-ins not on record, all settled");
});

test("undocumentedWords() says first what is open, and nothing of a line that is all on record", () => {
  const open = [aFinding(aTieIn("T6"), { standing: "undocumented", level: 1 })];
  expect(undocumentedWords(open)).toBe("T6 has no proven owner");
  expect(undocumentedWords([aFinding(aTieIn("T1"), { standing: "on-record-and-seen" })])).toBe(
    "Every tie-in is on record",
  );
});
