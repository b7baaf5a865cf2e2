/**
 * A small line file to start from: three houses on a card, four tie-ins on camera, one of them on no
 * record. Invented throughout. Lengths are feet, money is cents; what is left out has a usual value.
 */
export const EXAMPLE = {
  version: 2,
  line: {
    id: "example-line",
    name: "Alley behind Larch Street",
    town: "Quillhaven, WA",
    openedOn: "2026-11-02",
    upperEnd: 80,
    material: "vitrified-clay",
    diameter: 6,
    authorityId: "example-district",
    ruleId: "to-main",
  },
  authority: {
    id: "example-district",
    name: "Example Sewer District",
    rules: [
      {
        id: "to-main",
        title: "Owners to the main, shared by those who use it",
        pattern: "owners-to-main",
        boundary: "main-connection",
        sharedRule: "all-whose-flow-passes",
        citation: "Example District Code 14.20.060 (invented)",
        asOf: "2026-11-02",
      },
    ],
  },
  properties: [
    { id: "larch-1", address: { street: "1 Larch Street", city: "Quillhaven", state: "WA" } },
    { id: "larch-3", address: { street: "3 Larch Street", city: "Quillhaven", state: "WA" } },
    { id: "larch-5", address: { street: "5 Larch Street", city: "Quillhaven", state: "WA" } },
  ],
  parties: [{ id: "owner-1", name: "Imani Castellane", email: "imani@example.com" }],
  roles: [{ id: "role-1", partyId: "owner-1", propertyId: "larch-1", role: "owner" }],
  tieIns: [
    { id: "t1", label: "T1" },
    { id: "t2", label: "T2" },
    { id: "t3", label: "T3" },
    { id: "t4", label: "T4" },
  ],
  records: [
    { id: "card", title: "Side sewer card 77", number: "77", dated: "1958", measuredFrom: "main" },
  ],
  entries: [
    {
      id: "e1",
      recordId: "card",
      label: "House 1",
      distance: 20,
      side: "left",
      propertyId: "larch-1",
    },
    {
      id: "e3",
      recordId: "card",
      label: "House 3",
      distance: 41.5,
      side: "left",
      propertyId: "larch-3",
    },
    {
      id: "e5",
      recordId: "card",
      label: "House 5",
      distance: 74,
      side: "left",
      propertyId: "larch-5",
    },
  ],
  runs: [
    {
      id: "run-1",
      name: "Run 1",
      ranOn: "2026-11-03",
      looks: "upstream",
      measuredFrom: "access",
      accessPoint: "Alley cleanout",
      zeroAt: "center of the cleanout",
      fromCounter: 0,
      toCounter: 74,
      crossingSeen: "no",
    },
  ],
  anchors: [{ id: "a1", runId: "run-1", kind: "cleanout", counter: 0, station: 6 }],
  observations: [
    { id: "o1", runId: "run-1", kind: "tie-in", counter: 14.2, clock: 9, tieInId: "t1" },
    { id: "o2", runId: "run-1", kind: "tie-in", counter: 29.6, clock: 3, tieInId: "t2" },
    { id: "o3", runId: "run-1", kind: "tie-in", counter: 35.5, clock: 9, tieInId: "t3" },
    { id: "o4", runId: "run-1", kind: "fault", fault: "roots", counter: 50, toCounter: 53 },
    { id: "o5", runId: "run-1", kind: "tie-in", counter: 68.1, clock: 9, tieInId: "t4" },
  ],
  pairings: [
    {
      id: "p1",
      entryId: "e1",
      tieInId: "t1",
      state: "accepted",
      distance: 0.2,
      reason: "Same side and place",
      decidedBy: "Dana Okafor",
      decidedOn: "2026-11-06",
    },
  ],
  scope: [
    {
      id: "s1",
      title: "Dig and replace the rooted section",
      work: "replacement",
      place: "stretch",
      from: 55,
      to: 60,
      quantity: 5,
      unit: "ft",
      rate: 18_500,
    },
    { id: "s2", title: "Permit fee", place: "general", unit: "each", rate: 31_000 },
  ],
  locateTickets: [
    {
      id: "ticket-1",
      number: "26-555-0190",
      calledOn: "2026-11-06",
      whiteLinedOn: "2026-11-05",
      whiteLinedBy: "Marek Łódź",
      whiteLinedHow: "paint",
    },
  ],
} as const;
