import { type Cft, formatFeet } from "../length/station.ts";
import { capital } from "../say/capital.ts";
import { whyOf } from "./doubt.ts";
import { type Fit, isAsWritten, type Move, readingOf, stretchOf } from "./fit.ts";

interface AlignmentFacts {
  readonly fit: Fit;
  /** Who accepted the fit; null while it is a proposal. */
  readonly acceptedBy: string | null;
  readonly explained: number;
  readonly of: number;
  /** Entries that lie where a run looked, or are paired. */
  readonly inView: number;
  /** How many entries lie within tolerance when taken as recorded. */
  readonly plain: number;
  readonly rival: RivalFacts | null;
  /** Pairs on opposite sides, of the pairs within the tolerance or accepted. */
  readonly mirrored: { readonly sides: number; readonly of: number };
  /** Records that have a fit of their own. */
  readonly own: readonly { readonly name: string; readonly fit: Fit }[];
  /** Entries of which a person said what became of them, and that no tie-in answers to. */
  readonly gone: number;
  /** Every record that was compared. */
  readonly names: readonly string[];
  /** Records that explain more when they are read otherwise. */
  readonly readings: readonly ReadingFacts[];
}

interface RivalFacts extends Fit {
  readonly explained: number;
  /** Too few entries to tell it from chance. */
  readonly few: boolean;
}

interface ReadingFacts {
  readonly name: string;
  readonly fromUpperEnd: boolean;
  readonly fit: Fit & { readonly explained: number };
  readonly used: Fit;
  readonly now: number;
  readonly of: number;
}

/** How the record lies on the camera's axis, in the words of the trade, with its numbers. */
export function alignmentSentence(facts: AlignmentFacts): string {
  return [
    `${layWords(facts)}; ${countWords(facts)}.`,
    ...facts.own.map(({ name, fit }) => ownSentence(name, fit)),
    ...facts.readings.map((reading) => readingSentence(reading, facts.names.length > 1)),
    ...rivalWords(facts),
    ...mirrorWords(facts),
  ].join(" ");
}

/** Who says how the records lie; a record is only said to agree where half of it in view does. */
function layWords(facts: AlignmentFacts): string {
  const many = facts.names.length > 1;
  const what = many ? "the records" : "the card";
  const by = facts.acceptedBy === null ? null : facts.acceptedBy || "someone";
  const who = by === null ? capital(what) : `Accepted by ${by}: ${what}`;
  const agrees = facts.explained > 0 && facts.explained * 2 >= facts.inView;
  if (!isPlain(facts.fit) || agrees) return `${who} ${fitWords(facts.fit, many)}`;
  if (by !== null) return `${who} ${many ? "are" : "is"} taken as recorded`;
  const does = many ? "do" : "does";
  const how =
    facts.explained === 0
      ? `${does} not match the camera`
      : `${many ? "match" : "matches"} the camera only in part`;
  return `As recorded, ${what} ${how}, and no other zero explains enough`;
}

/** `reads 2.4 ft longer throughout, probably a different zero point`. */
export function fitWords(move: Move, many: boolean): string {
  const reads = many ? "read" : "reads";
  const matches = many ? "match" : "matches";
  const { shift, scale } = move;
  if (!isAsWritten(move)) return readingWords(move, many);
  if (shift === 0 && scale === 0) return `${matches} the camera with no shift`;
  if (scale === 0)
    return `${reads} ${shiftWords(shift)} throughout, probably a different zero point`;
  const stretch = stretchWords(scale);
  if (Math.abs(shift) < 50) return `${reads} ${stretch}, probably a counter or scale error`;
  return `${reads} ${shiftWords(shift)} at the main and ${stretch}, probably a different zero point and a counter or scale error`;
}

/** `is in meters`, `is measured from the other end, its zero at 163.0 ft`. */
function readingWords(move: Move, many: boolean): string {
  const { meters, reversed } = readingOf(move);
  const stretch = stretchOf(move);
  const is = many ? "are" : "is";
  const zero = `${many ? "their" : "its"} zero at ${formatFeet(move.shift)}`;
  const inMeters = meters ? ["in meters"] : [];
  const fromEnd = reversed ? ["measured from the other end"] : [];
  const tail = [
    ...(reversed || Math.abs(move.shift) >= 50 ? [`, ${zero}`] : []),
    ...(stretch === 0 ? [] : [`, ${stretchWords(stretch)}`]),
  ];
  return `${is} ${[...inMeters, ...fromEnd].join(" and ")}${tail.join("")}`;
}

function stretchWords(stretch: number): string {
  return `${percentWords(stretch)} ${stretch > 0 ? "short" : "long"} over its length`;
}

/** A record that reads longer has to be shifted down. */
function shiftWords(shift: Cft): string {
  return `${formatFeet(Math.abs(shift))} ${shift < 0 ? "long" : "short"}`;
}

/** `1.2%`, from parts per million. */
export function percentWords(scale: number): string {
  return `${(Math.abs(scale) / 10_000).toFixed(1)}%`;
}

const WITHIN = "within tolerance";

function countWords({ fit, explained, of, plain, inView, gone }: AlignmentFacts): string {
  const entries = of === 1 ? "entry" : "entries";
  const are = explained <= 1 ? "is" : "are";
  const count = `${explained === 0 ? "none" : explained} of ${of} ${entries} ${are} ${WITHIN}`;
  const out = of - inView - gone;
  const unseen = [
    ...(gone > 0 ? [`, ${gone} ${gone === 1 ? "is" : "are"} explained`] : []),
    ...(out > 0 ? [`, and ${out} ${out === 1 ? "is" : "are"} where no run looked`] : []),
  ].join("");
  if (isPlain(fit)) return `${count}${unseen}`;
  return `with that corrected, ${count}, ${plain === 0 ? "none" : plain} without it${unseen}`;
}

function isPlain({ shift, scale, mirrored }: Fit): boolean {
  return shift === 0 && scale === 0 && !mirrored;
}

function ownSentence(name: string, fit: Fit): string {
  return `${name || "One record"} is aligned on its own: it ${fitWords(fit, false)}.`;
}

/** `The card may be in meters: read that way, 5 of 5 entries lie within …, 1 as it is read now.` */
function readingSentence(reading: ReadingFacts, many: boolean): string {
  const { fit, used, now, of } = reading;
  const what = many ? reading.name || "One record" : "The card";
  const end = `measured from ${reading.fromUpperEnd ? "the main" : "the house end"}, its zero at ${formatFeet(fit.shift)}`;
  const why = whyOf(fit, used);
  const inMeters = why === "other-end" ? [] : ["in meters"];
  const how = [...inMeters, ...(why === "meters" ? [] : [end])].join(" and ");
  return `${what} may be ${how}: read that way, ${fit.explained} of ${of} entries are ${WITHIN}, ${now === 0 ? "none" : now} as it is read now. Check the record before accepting anything.`;
}

/** Another fit that does as well, or does better on too few entries. */
function rivalWords({ rival, explained }: AlignmentFacts): string[] {
  if (!rival) return [];
  const by = `${formatFeet(Math.abs(rival.shift))} ${rival.shift > 0 ? "upstream" : "downstream"}`;
  const bend = rival.scale > 0 ? "stretching" : "shortening";
  const stretched = rival.scale === 0 ? "" : ` and ${bend} it by ${percentWords(rival.scale)}`;
  const moved = `shifting the record ${by}${stretched}`;
  if (rival.shift === 0 && rival.scale === 0)
    return [
      `As recorded, ${rival.explained} would match as well: confirm one known point before accepting.`,
    ];
  if (rival.explained > explained && rival.few)
    return [`${capital(moved)} would match ${rival.explained}, too few to rule out chance.`];
  return [
    `${capital(moved)} would match ${rival.explained}: confirm one known point before accepting.`,
  ];
}

/** A drawing made looking downstream has every side the other way round. */
function mirrorWords({ mirrored }: AlignmentFacts): string[] {
  const { sides, of } = mirrored;
  if (sides < 3 || sides * 3 < of * 2) return [];
  return [
    `${sides} of ${of} pairs lie on opposite sides: the sides on record may be as seen looking downstream.`,
  ];
}
