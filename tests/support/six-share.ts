import type { LineFile } from "#lib/domain/facts/line-file.ts";
import { reportOn } from "#lib/domain/report/report-on.ts";
import type { Day } from "#lib/domain/time/day.ts";

/** The alley with every tie-in owned, six to share, and a rule chosen. */
export function sixShare(file: LineFile, today: Day): LineFile {
  const owners: Readonly<Record<string, string>> = {
    T1: "fr-12",
    T2: "fr-r11",
    T3: "fr-14",
    T4: "fr-16",
    T5: "fr-18",
    T6: "fr-18",
    T7: "fr-20",
  };
  const [owner] = file.parties;
  const [role] = file.roles;
  if (owner === undefined || role === undefined) throw new Error("The alley has nobody");
  const settled: LineFile = {
    ...file,
    tieIns: file.tieIns.map((each) => ({
      ...each,
      propertyId: owners[each.label] ?? null,
      ownerAccepted: true,
    })),
    properties: file.properties.map((each) =>
      each.id === "fr-r11" ? { ...each, stake: "connected" as const } : each,
    ),
    parties: [
      ...file.parties.map((each) =>
        each.id === "fr-p7" ? { ...each, language: "es" as const } : each,
      ),
      { ...owner, id: "second-owner", name: "Otto Brandvold" },
    ],
    roles: [...file.roles, { ...role, id: "second-role", partyId: "second-owner" }],
    options: [],
    scope: file.scope
      .filter(({ optionId }) => optionId !== "fr-dig")
      .map((each) => ({ ...each, optionId: null })),
  };
  const outcome = reportOn(settled, today).splits.find(
    ({ choice }) => choice.rule === "portion-used",
  );
  if (outcome === undefined || outcome.refusal !== null) throw new Error("No split by portion");
  const { choice, total, basis, shares } = outcome;
  const split = {
    ...choice,
    id: "six",
    optionId: null,
    sentAt: null,
    number: 1,
    total,
    basis,
    reason: "Each foot is paid by those whose sewage flows through it.",
    chosenOn: "2026-11-20",
    chosenBy: "Ruth Lindqvist",
    shares: shares.map(({ propertyId, tieInId, amount, recoverable }) => ({
      propertyId,
      tieInId,
      amount,
      recoverable,
    })),
  };
  return { ...settled, splits: [split] };
}
