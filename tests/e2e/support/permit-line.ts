import { threeHouses } from "./three-houses.ts";

/** The authority of `permitLine`: what it asks for before the final, and one inspection. */
export const DISTRICT = "dunmore-district";

const SOURCE = { citation: "Dunmore Code 9.12 (invented)", asOf: "2026-11-02" };
const SIGNED = { state: "given", stateOn: "2026-11-12", note: "Signed at the kitchen table" };

/**
 * The line of three houses, ready for its permit: twenty feet to dig on one owner's lot, who agreed
 * to it; an authority that wants an inspection before backfill and an as-built before the final.
 */
export function permitLine(name: string): string {
  const file = JSON.parse(threeHouses(name));
  return JSON.stringify({
    ...file,
    line: { ...file.line, authorityId: DISTRICT },
    authority: {
      ...file.authority,
      id: DISTRICT,
      name: "Dunmore Sewer District",
      requirements: [
        {
          id: "dunmore-drawing",
          title: "Line drawing to scale",
          sheet: "line-drawing",
          mandatory: true,
          due: "submission",
          ...SOURCE,
        },
        {
          id: "dunmore-as-built",
          title: "As-built drawing",
          sheet: "as-built",
          mandatory: true,
          due: "final",
          ...SOURCE,
        },
      ],
      inspectionKinds: [
        { id: "dunmore-trench", title: "Open trench", neededBefore: "backfill", ...SOURCE },
      ],
    },
    land: [{ id: "lot", from: 0, to: 60, kind: "lot", propertyId: "b", shownBy: "County map" }],
    scope: [
      {
        id: "dig",
        title: "Dig and replace the sag",
        work: "replacement",
        place: "stretch",
        from: 30,
        to: 50,
        quantity: 20,
        unit: "ft",
        rate: 16000,
      },
    ],
    consents: ["enter", "dig"].map((kind) => ({
      id: `consent-${kind}`,
      kind,
      partyId: "owner-b",
      propertyId: "b",
      ...SIGNED,
    })),
  });
}
