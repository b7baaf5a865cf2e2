import type { LandStretch } from "../facts/land.ts";
import { PAVED } from "../facts/permit-rule.ts";
import { commonStretch, type Stretch, sayWhere, withoutStretches } from "../length/stretch.ts";
import { isLandSaid, unsaidLand } from "../line/whose-land.ts";
import { streetOf } from "../party/stakeholders.ts";
import { isDug, stretchOf } from "../split/work-deeds.ts";
import {
  type Answer,
  anyOf,
  type ConditionSite,
  NO_WORK,
  no,
  unknown,
  unsureWords,
  workOf,
  yes,
} from "./answer.ts";

type LandTest = (land: LandStretch) => boolean;

interface LandWords {
  /** Completes “because”, with where: `the right-of-way is dug`. */
  readonly isSo: string;
  readonly isNone: string;
}

const isStreet: LandTest = (land) => land.kind === "right-of-way";
const isLot: LandTest = (land) => land.kind === "lot" || land.kind === "common-area";

/** Whether something is dug in a street, by the land as entered over all that is dug. */
export function dugInStreet(site: ConditionSite): Answer {
  const words = { isSo: "the right-of-way is dug", isNone: "nothing is dug in the right-of-way" };
  return dugBelow(site, isStreet, words);
}

/** Whether something is dug on a lot or a common area; a crossed lot is a lot. */
export function dugOnLot(site: ConditionSite): Answer {
  const { crossings } = site.file;
  const words = { isSo: "a lot is dug", isNone: "nothing is dug on a lot" };
  const crossed = crossings.map(
    (each): LandStretch => ({
      ...{ ...each, kind: "lot", shownBy: "crossing" },
    }),
  );
  const wider = { ...site, file: { ...site.file, land: [...site.file.land, ...crossed] } };
  return dugBelow(wider, isLot, words);
}

function dugBelow(site: ConditionSite, test: LandTest, { isSo, isNone }: LandWords): Answer {
  const work = workOf(site);
  if (work.length === 0) return NO_WORK;
  const dug = work.filter(({ item }) => isDug(item, site.file));
  const said = site.file.land.filter(isLandSaid);
  const answers = dug.flatMap(({ item, sure }): Answer[] => {
    const stretch = stretchOf(item, site) ?? wholeLine(site);
    if (stretch === null) return [unknown(`where “${item.title}” digs is not entered`)];
    const on = said.filter(test).flatMap((land) => commonStretch(land, stretch) ?? []);
    const [first] = on;
    if (first !== undefined)
      return [sure ? yes(`${isSo} ${sayWhere(first)}`) : unknown(unsureWords(item))];
    const [open] = unsaidLand(site.file, stretch);
    return open === undefined ? [] : [unknown(`the land ${sayWhere(open)} is not entered`)];
  });
  return anyOf(answers, no(dug.length === 0 ? "nothing is dug" : isNone));
}

/** The whole trunk, for work whose place nobody said; null while its upper end is unknown. */
function wholeLine({ file }: ConditionSite): Stretch | null {
  return file.line.upperEnd === null ? null : { from: 0, to: file.line.upperEnd };
}

/** Whether pavement, sidewalk or curb in a street is cut. */
export function streetCut(site: ConditionSite): Answer {
  const inStreet = dugInStreet(site);
  const { surfaceCuts, land } = site.file;
  const streets = land.filter((each) => isLandSaid(each) && isStreet(each));
  const here = surfaceCuts.filter((cut) =>
    streets.some((street) => commonStretch(street, cut) !== null),
  );
  const paved = here.find(({ surface }) => PAVED.includes(surface));
  if (paved !== undefined) return yes(`the street surface is cut ${sayWhere(paved)}`);
  if (inStreet.answer === "no") return inStreet;
  const known = here.filter(({ surface }) => surface !== "not-set");
  const open = streets.flatMap((street) =>
    dugStretches(site).flatMap((dug) => {
      const both = commonStretch(street, dug);
      return both === null ? [] : withoutStretches(both, known);
    }),
  );
  if (inStreet.answer === "unknown") return inStreet;
  const [first] = open;
  return first === undefined
    ? no("no pavement is cut in the right-of-way")
    : unknown(`the surface that is cut ${sayWhere(first)} is not entered`);
}

function dugStretches(site: ConditionSite): Stretch[] {
  return workOf(site)
    .filter(({ item }) => isDug(item, site.file))
    .flatMap(({ item }) => stretchOf(item, site) ?? wholeLine(site) ?? []);
}

/** Whether the line crosses a lot that it does not serve. */
export function lotCrossed({ file }: ConditionSite): Answer {
  const { crossings, land, properties, line } = file;
  const property = (id: string | null) => properties.find((each) => each.id === id);
  const ids = [
    ...crossings.map(({ propertyId }) => propertyId),
    ...land.filter((each) => isLandSaid(each) && isLot(each)).map(({ propertyId }) => propertyId),
  ];
  const crossed = ids
    .map(property)
    .find((each) => each !== undefined && each.stake !== "connected");
  if (crossed !== undefined) return yes(`the line crosses ${streetOf(crossed.address)}`);
  if (line.upperEnd === null) return unknown("how far the line goes is not entered");
  const [open] = unsaidLand(file, { from: 0, to: line.upperEnd });
  return open === undefined
    ? no("the line crosses no lot but those that it serves")
    : unknown(`the land ${sayWhere(open)} is not entered`);
}

/** Whether a crossed lot has no recorded easement. */
export function crossedWithoutEasement(site: ConditionSite): Answer {
  const { crossings, properties } = site.file;
  const open = crossings.map((crossing): Answer => {
    const property = properties.find(({ id }) => id === crossing.propertyId);
    const street = property === undefined ? "a crossed lot" : streetOf(property.address);
    if (crossing.easement === "none") return yes(`${street} has no recorded easement`);
    if (crossing.easement === "unknown")
      return unknown(`whether ${street} has a recorded easement is not entered`);
    return no("");
  });
  if (open.length > 0) return anyOf(open, no("every crossed lot has a recorded easement"));
  const crossed = lotCrossed(site);
  return crossed.answer === "yes"
    ? unknown(`${crossed.because}, and its easement is not entered`)
    : crossed;
}
