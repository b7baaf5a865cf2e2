// An invented line as its technician tells it: in at the house cleanout, down to the main, zeroed
// there, and talking while the camera comes back. The card was measured from the house.

/** Length from the main to the house cleanout, in feet. */
const LENGTH = 70;

/** What the pipe is, in feet from the main, looking upstream; the line runs due west, so right is north. */
export const TRUTH = [
  { station: 12, side: "left", compass: "south", house: "904" },
  { station: 22, side: "right", compass: "north", house: "906" },
  { station: 31.5, side: "right", compass: "north", house: null },
  { station: 52, side: "right", compass: "north", house: "912" },
  { station: 63, side: "left", compass: "south", house: "916" },
] as const;

const HOUSES = TRUTH.flatMap(({ house, station, side }) =>
  house === null ? [] : [{ house, station, side }],
);

/** Captions as a recorder makes them: no punctuation, addresses, a day, a time, and few footages. */
export const TALK = `WEBVTT

00:00:02.000 --> 00:00:08.000
all right this is november twentieth two thousand twenty six we're at nine oh four alder street

00:00:08.000 --> 00:00:15.000
it's about ten fifteen in the morning and this line serves nine oh four nine oh six nine twelve and nine sixteen

00:00:15.000 --> 00:00:22.000
six inch clay went in at the house cleanout and pushed it all the way down to the main

00:00:22.000 --> 00:00:28.000
so there's the main and I'm going to zero it here and start pulling back

00:00:30.000 --> 00:00:36.000
we're at twelve feet from the main there's a wye on the right at three o'clock

00:00:56.000 --> 00:01:01.000
here's another wye on the left at nine o'clock

00:01:20.000 --> 00:01:27.000
thirty one and a half feet from the main here's another lateral at nine o'clock

00:01:28.000 --> 00:01:33.000
that one's not on the card

00:02:12.000 --> 00:02:18.000
fifty two feet from the main wye on the left at nine o'clock

00:02:40.000 --> 00:02:46.000
sixty three feet from the main there's a wye on the right at three o'clock

00:02:58.000 --> 00:03:04.000
seventy feet and that's the cleanout where we went in
`;

/** The line file without a run; `name` keeps one run of the journey apart from the next. */
export function pullBackLine(name: string): string {
  return JSON.stringify({
    version: 2,
    line: {
      id: `line-${name.replace(/\W+/g, "-").toLowerCase()}`,
      name,
      town: "Quillhaven, WA",
      openedOn: "2026-11-20",
      upperEnd: LENGTH,
      material: "vitrified-clay",
      diameter: 6,
      bearing: 270,
      bearingFrom: "compass on site",
      authorityId: "alder-district",
      ruleId: "to-main",
    },
    authority: {
      id: "alder-district",
      name: "Alder Hill Sewer District",
      rules: [
        {
          id: "to-main",
          title: "Owners to the main, shared by those who use it",
          pattern: "owners-to-main",
          boundary: "main-connection",
          sharedRule: "all-whose-flow-passes",
          citation: "Alder Hill Code 3.02 (invented)",
          asOf: "2026-11-02",
        },
      ],
      requirements: [
        {
          id: "schedule",
          sheet: "schedule-of-connections",
          title: "Schedule of connections",
          asOf: "2026-11-02",
        },
      ],
    },
    properties: [
      ...HOUSES.map(({ house }) => ({ id: `p-${house}`, address: addressOf(house) })),
      { id: "p-908", address: addressOf("908"), stake: "candidate" },
    ],
    parties: [...HOUSES.map(({ house }) => house), "908"].map((house) => ({
      id: `o-${house}`,
      name: `Owner of ${house}`,
      email: `owner-${house}@example.com`,
    })),
    roles: [...HOUSES.map(({ house }) => house), "908"].map((house) => ({
      id: `r-${house}`,
      partyId: `o-${house}`,
      propertyId: `p-${house}`,
      role: "owner",
    })),
    records: [
      {
        id: "card",
        kind: "card",
        title: "Side sewer card",
        number: "377",
        dated: "1958",
        measuredFrom: "upper-end",
      },
    ],
    entries: HOUSES.map(({ house, station, side }) => ({
      id: `e-${house}`,
      recordId: "card",
      label: `House ${house}`,
      distance: LENGTH - station,
      side,
      propertyId: `p-${house}`,
    })),
  });
}

function addressOf(house: string) {
  return { street: `${house} Alder Street`, city: "Quillhaven", state: "WA", zip: "98000" };
}
