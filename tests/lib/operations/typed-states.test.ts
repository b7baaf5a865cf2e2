import { expect, test } from "vitest";
import { getAuthority } from "#db/queries/authority.ts";
import { usualRow } from "#lib/domain/facts/field.ts";
import { STATUTORY_PAPER } from "#lib/domain/facts/statutory-paper.ts";
import { bringInPeople } from "#lib/operations/bring-in-people.ts";
import { openLine } from "#lib/operations/open-line.ts";
import { saveAuthority } from "#lib/operations/save-authority.ts";
import { saveLine } from "#lib/operations/save-line.ts";
import { anAddress, anAuthority } from "#tests/support/file.ts";
import { aDb, anAct, anOpenLine, fileOf, must } from "#tests/support/office.ts";

test("a line's town is kept with its state in two letters", () => {
  const act = anAct(aDb());
  const opening = { name: "Heron Court", town: "Alder Fork, or", authorityId: null };
  const { lineId } = must(openLine(act, opening));
  expect(fileOf(act, lineId).line.town).toBe("Alder Fork, OR");
  must(saveLine(act, { lineId, facts: { town: "Dry Mesa, nevada" } }));
  expect(fileOf(act, lineId).line.town).toBe("Dry Mesa, NV");
});

test("an authority is kept with its states in two letters", () => {
  const act = anAct(aDb(), { role: "admin" });
  const paper = {
    ...usualRow(STATUTORY_PAPER),
    ...{ id: "cancel", authorityId: "authority-1", title: "Right to cancel" },
    ...{ event: "contract" as const, citation: "Code 5", asOf: "2026-11-02", state: "or" },
    ...{ by: "in-person" as const },
  };
  const address = anAddress("1 Harbor Square", { state: "or" });
  must(saveAuthority(act, anAuthority({ address, statutoryPapers: [paper] })));
  expect(getAuthority(act.db, "authority-1")).toMatchObject({
    address: { state: "OR" },
    statutoryPapers: [{ state: "OR" }],
  });
});

test("a list of owners comes in with states in two letters", () => {
  const act = anAct(aDb());
  const lineId = anOpenLine(act);
  const row = {
    ...{ site: "12 Fennel Row", siteCity: "Alder Fork", siteState: "or", siteZip: "97000" },
    ...{ owner: "Ottilie Brandvold", mail: "PO Box 118", mailCity: "Dry Mesa", mailState: "nv" },
  };
  must(bringInPeople(act, { lineId, rows: [row] }));
  const { properties, parties } = fileOf(act, lineId);
  expect([properties[0]?.address.state, parties[0]?.mailing?.state]).toEqual(["OR", "NV"]);
});
