import { expect, test } from "vitest";
import { lettersDue } from "#lib/domain/desk/letters-due.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import { reportOn } from "#lib/domain/report/report-on.ts";
import {
  aFile,
  aNotice,
  anAnchor,
  anEvent,
  anObservation,
  aParty,
  aPermit,
  aPermitStep,
  aProperty,
  aRole,
  aRun,
} from "#tests/support/file.ts";

const TODAY = "2026-11-25";

const HOUSES = {
  properties: [aProperty("12"), aProperty("14")],
  parties: [aParty("ada"), aParty("ben")],
  roles: [aRole("ada", "12"), aRole("ben", "14")],
};
const SEEN = {
  runs: [aRun("run")],
  anchors: [anAnchor("run")],
  observations: [anObservation("o", { counter: 2_000 })],
};

function due(file: LineFile) {
  return lettersDue(file, reportOn(file, TODAY)).map(({ kind, recipients }) => [
    kind,
    recipients.map(({ partyId }) => partyId),
  ]);
}

test("lettersDue() calls for nothing before anything was seen, nor on a closed file", () => {
  expect(due(aFile(HOUSES))).toEqual([]);
  const file = aFile({ ...HOUSES, ...SEEN, line: { closedOn: TODAY } });
  expect(due(file)).toEqual([]);
});

test("lettersDue() leaves out whoever has the letter or a draft of it", () => {
  const file = aFile({ ...HOUSES, ...SEEN });
  expect(due(file)[0]).toEqual(["finding", ["ada", "ben"]]);
  const drafted = aNotice("n", { kind: "finding", partyId: "ada", propertyId: "12" });
  expect(due({ ...file, notices: [drafted] })[0]).toEqual(["finding", ["ben"]]);
});

test("lettersDue() puts what has a day first, and wants it anew for another day", () => {
  const renters = HOUSES.roles.map((role) => ({ ...role, role: "occupant" as const }));
  const paused = anEvent("e1", { event: "drains-paused", on: "2026-12-02" });
  const file = aFile({
    ...HOUSES,
    ...SEEN,
    roles: [...HOUSES.roles, ...renters],
    events: [paused],
  });
  const kinds = due(file).map(([kind]) => kind);
  expect(kinds[0]).toBe("drain-pause");
  expect(kinds).toContain("finding");
  const pauseTo = (partyId: string, propertyId: string) =>
    aNotice(`n-${partyId}`, {
      ...({ kind: "drain-pause", partyId, propertyId, state: "sent" } as const),
      createdOn: "2026-11-01",
    });
  const told = { ...file, notices: [pauseTo("ada", "12"), pauseTo("ben", "14")] };
  expect(due(told).map(([kind]) => kind)).not.toContain("drain-pause");
  const past = anEvent("e0", { event: "drains-paused", on: "2026-11-10" });
  const again = due({ ...told, events: [past, paused] });
  expect(again[0]).toEqual(["drain-pause", ["ada", "ben"]]);
});

test("lettersDue() asks for close-out letters once the permit is final, and not before", () => {
  const permits = [aPermit("p")];
  const issued = aPermitStep("s1", "p", { state: "issued" });
  const file = aFile({ ...HOUSES, ...SEEN, permits, permitSteps: [issued] });
  expect(due(file).map(([kind]) => kind)).not.toContain("close-out");
  const final = aPermitStep("s2", "p", { state: "final", on: "2026-11-24" });
  expect(due({ ...file, permitSteps: [issued, final] }).map(([kind]) => kind)).toContain(
    "close-out",
  );
});
