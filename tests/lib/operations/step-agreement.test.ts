import { expect, test } from "vitest";
import { rankedAgreements } from "#lib/domain/agreement/agreement-standing.ts";
import { consentTable } from "#lib/domain/consent/table.ts";
import type { AgreementStepKind } from "#lib/domain/facts/agreement-step.ts";
import { stepAgreement } from "#lib/operations/step-agreement.ts";
import { anAgreement } from "#tests/support/file.ts";
import { aDesk, addRows, fileOf, must } from "#tests/support/office.ts";

function anAgreementDesk() {
  const desk = aDesk();
  const { act, lineId } = desk;
  addRows(act, { lineId, table: "agreements" }, [
    anAgreement("a", {
      recordingNumber: "",
      recordedOn: null,
      shares: [
        { propertyId: "12", parts: 1 },
        { propertyId: "14", parts: 1 },
      ],
    }),
  ]);
  const take = (kind: AgreementStepKind, partyId: string | null = null, number = "") =>
    stepAgreement(act, {
      lineId,
      agreementId: "a",
      kind,
      on: "2026-11-20",
      partyId,
      number,
      uploadId: null,
      note: "",
    });
  return { act, lineId, take, file: () => fileOf(act, lineId) };
}

test("an agreement that goes its whole way is recorded with its number, and every consent stands", () => {
  const { take, file } = anAgreementDesk();
  must(take("drafted"));
  for (const owner of ["owner-12", "owner-14"]) must(take("signed", owner));
  for (const owner of ["owner-12", "owner-14"]) must(take("notarised", owner));
  expect(rankedAgreements(file()).map(({ rank }) => rank)).toEqual(["signed"]);
  must(take("recorded", null, " 202611200031 "));
  must(take("number-filed"));
  const after = file();
  expect(after.agreements[0]).toMatchObject({
    recordingNumber: "202611200031",
    recordedOn: "2026-11-20",
  });
  expect(rankedAgreements(after).map(({ rank }) => rank)).toEqual(["recorded"]);
  const [row] = consentTable(after).filter(({ propertyId }) => propertyId === "12");
  expect(row?.cells["agreement-signed"].inHand).toBe(true);
  expect(row?.cells["agreement-notarised"].inHand).toBe(true);
  expect(row?.cells["agreement-recorded"].inHand).toBe(true);
  expect(after.history.some(({ action }) => action === "step-agreement")).toBe(true);
});

test("a new text asks everybody again who had signed the old one", () => {
  const { take, file } = anAgreementDesk();
  must(take("drafted"));
  must(take("signed", "owner-12"));
  must(take("returned"));
  const [row] = consentTable(file()).filter(({ propertyId }) => propertyId === "12");
  expect(row?.cells["agreement-signed"].open).toEqual([{ partyId: "owner-12", standing: "asked" }]);
});

test("a step out of turn is refused and writes nothing", () => {
  const { take, file } = anAgreementDesk();
  const before = file();
  expect(take("recorded", null, "1")).toMatchObject({
    ok: false,
    error: { reason: "not-in-this-state", path: "kind" },
  });
  expect(file()).toEqual(before);
});
