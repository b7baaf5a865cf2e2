import type { Bend, FixedPoint, PlanShape, Tie } from "#lib/domain/facts/plan.ts";

// Where Cinder Alley lies: feet east and north of the main connection, off an invented plat.

export const BENDS: readonly Bend[] = [
  {
    id: "fr-bend1",
    station: 6_400,
    turn: "left",
    degrees: 22.5,
    note: "The alley turns here; seen in Run 1",
  },
];

export const FIXED_POINTS: readonly FixedPoint[] = [
  { id: "fr-hydrant", name: "hydrant", east: 650, north: -970, note: "South side of the alley" },
  { id: "fr-corner12", name: "SE corner of 12", east: 1_940, north: 2_550, note: "" },
  { id: "fr-pole", name: "power pole", east: 5_260, north: 380, note: "Pole 4471" },
];

/** Ties of the main connection and of the branch that nobody knows. */
export function tiesOf(unknownTieInId: string): Tie[] {
  const usual = { pointId: null, side: "unknown", tapedBy: "Marek Łódź", note: "" } as const;
  return [
    {
      ...usual,
      id: "fr-tie1",
      tieInId: null,
      station: 0,
      fromId: "fr-hydrant",
      fromDistance: 1_170,
      otherId: "fr-corner12",
      otherDistance: 3_210,
      apart: 3_740,
      side: "left",
      tapedOn: "2026-11-12",
    },
    {
      ...usual,
      id: "fr-tie2",
      tieInId: unknownTieInId,
      station: null,
      fromId: "fr-hydrant",
      fromDistance: 2_660,
      otherId: "fr-corner12",
      otherDistance: 2_010,
      apart: 3_740,
      side: "right",
      tapedOn: "2026-11-12",
    },
  ];
}

function shape(id: string, kind: PlanShape["kind"], name: string, outline: string): PlanShape {
  return { id: `fr-plan-${id}`, kind, name, propertyId: null, outline, note: "" };
}

export const PLAN_SHAPES: readonly PlanShape[] = [
  shape("north", "street-edge", "Cinder Alley", "-17.5,3.9; 58.7,22.9; 91.1,46.9"),
  shape("south", "street-edge", "", "-13.6,-11.6; 65.5,8.1; 100.6,34.0"),
  shape("lot1", "lot-line", "", "7.8,10.2; -0.9,45.1"),
  shape("lot2", "lot-line", "", "24.3,14.3; 15.6,49.2"),
  shape("lot3", "lot-line", "", "41.7,18.6; 33.0,53.6"),
  shape("lot4", "lot-line", "", "58.2,22.8; 49.5,57.7"),
  {
    ...shape("12", "building", "House", "6.8,22.3; 18.4,25.2; 13.1,46.6; 1.5,43.7"),
    propertyId: "fr-12",
  },
  {
    ...shape("14", "building", "House", "23.3,26.4; 35.9,29.6; 30.6,50.9; 18.0,47.8"),
    propertyId: "fr-14",
  },
  {
    ...shape("16", "building", "House", "39.8,30.5; 50.5,33.2; 45.1,54.5; 34.5,51.9"),
    propertyId: "fr-16",
  },
  {
    ...shape("18", "building", "House", "62.2,35.5; 73.5,43.8; 62.8,58.3; 51.5,50.0"),
    propertyId: "fr-18",
  },
  {
    ...shape("20", "building", "Bakery", "86.5,16.1; 104.2,29.2; 119.7,8.3; 102.0,-4.8"),
    propertyId: "fr-20",
  },
  {
    ...shape("r11", "building", "Garage", "25.2,-10.2; 40.7,-6.3; 44.6,-21.9; 29.1,-25.7"),
    propertyId: "fr-r11",
  },
];
