import type { Side } from "../facts/line.ts";
import type { PlanShape } from "../facts/plan.ts";
import type { TieInFinding } from "../findings/report.ts";
import type { CompassPoint } from "../plan/compass.ts";
import { buildingToward } from "../plan/toward.ts";
import { type LetterFacts, placeOf } from "./facts.ts";
import type { LetterWords } from "./words-en.ts";

/** A side in a cell: by the compass where the line has a bearing, else as one looks upstream. */
export function shortSide(words: LetterWords, side: Side, compass: CompassPoint | null): string {
  return compass === null ? words.sideShort[side] : words.shortSide(words.compass[compass]);
}

/** A side in a sentence: `on the north side of the pipe, toward your garage`. */
export function longSide(facts: LetterFacts, finding: TieInFinding): string {
  const { file, words } = facts;
  const { compass, side, station } = finding;
  if (compass === null) return words.side[side];
  const said = words.onSide(words.compass[compass]);
  const building = buildingToward(file, station, side);
  const what = building === null ? null : buildingSaid(facts, building);
  return what === null ? said : words.toward(said, what);
}

/** A building by whose it is; null where nobody said. */
function buildingSaid({ file, property, words }: LetterFacts, shape: PlanShape): string | null {
  if (property !== null && shape.propertyId === property.id)
    return words.yourBuilding(shape.name.trim().toLowerCase());
  const owner = file.properties.find(({ id }) => id === shape.propertyId);
  return owner === undefined ? null : words.buildingAt(placeOf(owner.address));
}
