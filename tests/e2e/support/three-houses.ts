// An invented line that is settled up to the price: three houses, every tie-in on record and seen.

const HOUSES = [
  { id: "a", number: "1", station: 20, owner: "Odalys Marchetti" },
  { id: "b", number: "3", station: 40, owner: "Bram Oyelaran" },
  { id: "c", number: "5", station: 60, owner: "Siobhán Łuczak" },
] as const;

/** The line file, to be brought in; `name` keeps one run of a journey apart from the next. */
export function threeHouses(name: string): string {
  return JSON.stringify({
    version: 2,
    line: {
      id: `line-${name.replace(/\W+/g, "-").toLowerCase()}`,
      name,
      town: "Quillhaven, WA",
      openedOn: "2026-11-02",
      upperEnd: 60,
      material: "vitrified-clay",
      diameter: 6,
      authorityId: "three-houses-district",
      ruleId: "to-main",
    },
    authority: {
      id: "three-houses-district",
      name: "Larkmoor Sewer District",
      rules: [
        {
          id: "to-main",
          title: "Owners to the main, shared by those who use it",
          pattern: "owners-to-main",
          boundary: "main-connection",
          sharedRule: "all-whose-flow-passes",
          citation: "Larkmoor Code 7.04 (invented)",
          asOf: "2026-11-02",
        },
      ],
    },
    properties: HOUSES.map(({ id, number }) => ({
      id,
      address: { street: `${number} Larkmoor Row`, city: "Quillhaven", state: "WA", zip: "98000" },
    })),
    parties: HOUSES.map(({ id, owner }) => ({
      id: `owner-${id}`,
      name: owner,
      email: `${id}@example.com`,
    })),
    roles: HOUSES.map(({ id }) => ({
      id: `role-${id}`,
      partyId: `owner-${id}`,
      propertyId: id,
      role: "owner",
    })),
    land: [{ id: "street", from: 0, to: 60, kind: "right-of-way", shownBy: "County parcel map" }],
    tieIns: HOUSES.map(({ id }) => ({ id: `t-${id}`, label: `T${id.toUpperCase()}` })),
    records: [
      {
        id: "card",
        title: "Side sewer card 41",
        number: "41",
        dated: "1962",
        measuredFrom: "main",
      },
    ],
    entries: HOUSES.map(({ id, number, station }) => ({
      id: `e-${id}`,
      recordId: "card",
      label: `House ${number}`,
      distance: station,
      side: "left",
      propertyId: id,
    })),
    runs: [
      {
        id: "run",
        name: "Run 1",
        ranOn: "2026-11-03",
        looks: "upstream",
        zeroAt: "the main",
        toCounter: 60,
        ended: "reached-upper-end",
        crossingSeen: "no",
      },
    ],
    anchors: [{ id: "main", runId: "run", kind: "main-connection", counter: 0, station: 0 }],
    observations: HOUSES.map(({ id, station }) => ({
      id: `o-${id}`,
      runId: "run",
      kind: "tie-in",
      counter: station,
      clock: 9,
      tieInId: `t-${id}`,
    })),
    pairings: HOUSES.map(({ id }) => ({
      id: `p-${id}`,
      entryId: `e-${id}`,
      tieInId: `t-${id}`,
      state: "accepted",
      distance: 0,
      reason: "Same place and side",
      decidedBy: "Dana Okafor",
      decidedOn: "2026-11-06",
    })),
  });
}
