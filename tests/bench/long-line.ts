import type { LineFile } from "#lib/domain/facts/line-file.ts";
import {
  aFile,
  anAddress,
  anAnchor,
  anEntry,
  anObservation,
  aParty,
  aProperty,
  aRecord,
  aRole,
  aRun,
  aScopeItem,
  aTieIn,
} from "#tests/support/file.ts";

const TIE_INS = 40;
const PROPERTIES = 200;
const ITEMS = 300;
const RUNS = 4;
const OBSERVATIONS = 500;

/**
 * The longest line that an office may have on file: 40 tie-ins, 200 properties with an owner each, a
 * record entry for each tie-in, 300 items of work, four runs of 500 observations.
 */
export function theLongLine(id: string): LineFile {
  const at = (index: number) => 500 + index * 400;
  const end = at(TIE_INS);
  const owner = (index: number) => `o${index}`;
  return aFile({
    line: { id, name: "The long line", upperEnd: end },
    properties: count(PROPERTIES, (index) =>
      aProperty(`p${index}`, { address: anAddress(`${index + 1} Longacre Row`) }),
    ),
    parties: count(PROPERTIES, (index) =>
      aParty(owner(index), { name: `Owner ${index + 1} of Longacre` }),
    ),
    roles: count(PROPERTIES, (index) => aRole(owner(index), `p${index}`, { role: "owner" })),
    records: [aRecord("card", { title: "Side sewer card" })],
    entries: count(TIE_INS, (index) =>
      anEntry(`e${index}`, {
        recordId: "card",
        label: `House ${index + 1}`,
        distance: at(index) - 60,
      }),
    ),
    tieIns: count(TIE_INS, (index) =>
      aTieIn(`t${index}`, { propertyId: `p${index}`, kind: "building", settledReason: "dug up" }),
    ),
    runs: count(RUNS, (index) =>
      aRun(`run${index}`, {
        name: `Run ${index + 1}`,
        looks: "upstream",
        fromCounter: 0,
        toCounter: end,
      }),
    ),
    anchors: count(RUNS, (index) => anAnchor(`run${index}`, { counter: 0, station: 0 })),
    observations: count(RUNS, (run) =>
      count(OBSERVATIONS, (index) =>
        anObservation(`r${run}o${index}`, {
          runId: `run${run}`,
          ...(index < TIE_INS
            ? { counter: at(index), clock: 9, tieInId: `t${index}` }
            : {
                kind: "fault",
                fault: index % 2 === 0 ? "crack" : "roots",
                counter: Math.round((index * end) / OBSERVATIONS),
                tieInId: null,
              }),
        }),
      ),
    ).flat(),
    scope: count(ITEMS, (index) =>
      aScopeItem(`s${index}`, {
        title: `Dig and replace ${index + 1}`,
        place: "stretch",
        from: (index * 37) % end,
        to: Math.min(end, ((index * 37) % end) + 600),
        quantity: 600,
        unit: "ft",
        rate: 10_000 + index,
      }),
    ),
  });
}

function count<T>(many: number, make: (index: number) => T): T[] {
  return Array.from({ length: many }, (_none, index) => make(index));
}
