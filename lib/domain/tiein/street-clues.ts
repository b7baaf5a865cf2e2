import type { Property } from "../facts/party.ts";
import type { TieInFinding } from "../findings/report.ts";
import { formatFeet } from "../length/station.ts";
import { type Clue, clue } from "./candidate-weights.ts";
import { onSide } from "./on-side.ts";

/** A house on a street: `12 1/2 Fennel Row` is number 12.5 of `fennel row`. */
export interface HouseNumber {
  readonly number: number;
  readonly street: string;
}

/** The house number and the street of an address line; null where it has no number first. */
export function houseNumberOf(street: string): HouseNumber | null {
  const match = /^\s*(\d{1,6})(?:\s+(1\/2)|½)?[a-z]?\s+(\S.*)$/i.exec(street);
  const [whole, digits, half, name] = match ?? [];
  if (whole === undefined || digits === undefined || name === undefined) return null;
  const extra = half !== undefined || whole.includes("½") ? 0.5 : 0;
  return {
    number: Number(digits) + extra,
    street: name.trim().toLowerCase().replace(/\.$/, ""),
  };
}

/** A settled tie-in on the same street. */
interface Known extends HouseNumber {
  readonly station: number;
  readonly finding: TieInFinding;
}

interface Street {
  readonly properties: readonly Property[];
  readonly tieIns: readonly TieInFinding[];
  readonly finding: TieInFinding;
}

/**
 * What the order of house numbers says of a property: along a street numbers rise or fall with the
 * stations of the tie-ins on one side, so a gap in the order points at the house whose number fills
 * it; and houses on one side of a street join on one side of the line. Says nothing of a property
 * with a tie-in of its own, or where the known tie-ins keep no order.
 */
export function streetClues(property: Property, street: Street): Clue[] {
  const house = houseNumberOf(property.address.street);
  const { finding, tieIns } = street;
  const hasOwn = tieIns.some(
    (each) => each.live && each.propertyId === property.id && each.tieIn.id !== finding.tieIn.id,
  );
  if (house === null || hasOwn) return [];
  const known = knownOn(house.street, street);
  return [...orderClue(house, known, finding), ...sideClue(house, known, finding)];
}

function knownOn(street: string, { properties, tieIns, finding }: Street): Known[] {
  return tieIns
    .filter(({ tieIn, live }) => live && tieIn.id !== finding.tieIn.id)
    .flatMap((each) => {
      const property = properties.find(({ id }) => id === each.propertyId);
      const house = property ? houseNumberOf(property.address.street) : null;
      if (house === null || house.street !== street || each.station === null) return [];
      return [{ ...house, station: each.station, finding: each }];
    })
    .toSorted((a, b) => a.station - b.station);
}

function orderClue(house: HouseNumber, known: readonly Known[], finding: TieInFinding): Clue[] {
  const { station, side } = finding;
  if (station === null) return [];
  const same = known.filter((each) => side === "unknown" || each.finding.side === side);
  const way = directionOf(same);
  if (way === 0) return [];
  const below = same.findLast((each) => each.station <= station);
  const above = same.find((each) => each.station > station);
  const fits =
    (below === undefined || way * (house.number - below.number) > 0) &&
    (above === undefined || way * (above.number - house.number) > 0);
  if (!fits) return [clue("out-of-order", "By house-number sequence it would join elsewhere.")];
  if (below && above)
    return [
      clue(
        "between-neighbors",
        `Its number ${house.number} lies between ${placeOf(below)} and ${placeOf(above)}, as this tie-in does.`,
      ),
    ];
  const beside = below ?? above;
  if (beside === undefined) return [];
  return [
    clue(
      "beside-neighbor",
      `Its number ${house.number} comes ${below ? "after" : "before"} ${placeOf(beside)}, as this tie-in does.`,
    ),
  ];
}

/** 1: numbers rise upstream; −1: they fall; 0: fewer than two, or no order. */
function directionOf(known: readonly Known[]): 1 | -1 | 0 {
  const steps = known
    .slice(1)
    .map((each, at) => Math.sign(each.number - (known[at]?.number ?? each.number)))
    .filter((step) => step !== 0);
  if (steps.length === 0) return 0;
  if (steps.every((step) => step > 0)) return 1;
  return steps.every((step) => step < 0) ? -1 : 0;
}

function placeOf({ number, station }: Known): string {
  return `${number} (at ${formatFeet(station)})`;
}

/** Even or odd numbers that all join on one side of the line. Two known houses are the least. */
function sideClue(house: HouseNumber, known: readonly Known[], finding: TieInFinding): Clue[] {
  const { side, compass } = finding;
  if (side !== "left" && side !== "right") return [];
  const alike = known.filter((each) => isEven(each) === isEven(house));
  const sides = new Set(alike.map((each) => each.finding.side));
  const [joins] = sides;
  if (alike.length < 2 || sides.size !== 1 || (joins !== "left" && joins !== "right")) return [];
  const numbers = isEven(house) ? "Even numbers" : "Odd numbers";
  return joins === side
    ? [
        clue(
          "numbers-join-here",
          `${numbers} of the street join on the ${onSide({ side, compass })}, as this does.`,
        ),
      ]
    : [clue("numbers-join-opposite", `${numbers} of the street join on the ${joins}, not here.`)];
}

function isEven({ number }: HouseNumber): boolean {
  return Math.floor(number) % 2 === 0;
}
