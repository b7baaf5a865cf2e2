import { type Cft, formatFeet } from "../line/station.ts";
import type { Fit } from "./align.ts";

interface AlignmentFacts {
  readonly fit: Fit;
  /** Who accepted the fit; null while it is a proposal. */
  readonly acceptedBy: string | null;
  readonly explained: number;
  readonly of: number;
  /** How many entries lie within tolerance when taken as written. */
  readonly plain: number;
  readonly rival: (Fit & { readonly explained: number }) | null;
  /** Pairs on opposite sides, of the pairs within the tolerance or accepted. */
  readonly mirrored: { readonly sides: number; readonly of: number };
  /** Records that have a fit of their own. */
  readonly own: readonly { readonly name: string; readonly fit: Fit }[];
  /** Every record that was compared. */
  readonly names: readonly string[];
}

/** How the record lies on the camera's axis, in the words of the trade, with its numbers. */
export function alignmentSentence(facts: AlignmentFacts): string {
  const many = facts.names.length > 1;
  const what = many ? "the records" : "the card";
  const by = facts.acceptedBy === null ? null : facts.acceptedBy || "somebody";
  const who = by === null ? capital(what) : `As ${by} accepted, ${what}`;
  const own = facts.own.map(({ name, fit }) => ownSentence(name, fit));
  return [
    `${who} ${fitWords(facts.fit, many)}; ${countWords(facts)}.`,
    ...own,
    ...rivalWords(facts),
    ...mirrorWords(facts),
  ].join(" ");
}

/** `reads 2.4 ft longer throughout: probably another zero point`. */
export function fitWords({ shift, scale }: Fit, many: boolean): string {
  const reads = many ? "read" : "reads";
  const agrees = many ? "agree" : "agrees";
  if (shift === 0 && scale === 0) return `${agrees} with the camera without any shift`;
  if (scale === 0) return `${reads} ${shiftWords(shift)} throughout: probably another zero point`;
  const stretch = `${percentWords(scale)} ${scale > 0 ? "short" : "long"} over its length`;
  if (Math.abs(shift) < 50) return `${reads} ${stretch}: probably a counter or scale error`;
  return `${reads} ${shiftWords(shift)} at the main and ${stretch}: probably another zero point and a counter or scale error`;
}

/** A record that reads longer has to be shifted down. */
function shiftWords(shift: Cft): string {
  return `${formatFeet(Math.abs(shift))} ${shift < 0 ? "longer" : "shorter"}`;
}

/** `1.2 %`, from parts per million. */
export function percentWords(scale: number): string {
  return `${(Math.abs(scale) / 10_000).toFixed(1)} %`;
}

function countWords({ fit, explained, of, plain }: AlignmentFacts): string {
  const entries = of === 1 ? "entry" : "entries";
  if (fit.shift === 0 && fit.scale === 0)
    return `${explained} of ${of} ${entries} ${explained === 1 ? "lies" : "lie"} within what readings may differ by`;
  return `with that allowed for, ${explained} of ${of} ${entries} ${explained === 1 ? "lies" : "lie"} within what readings may differ by, ${plain === 0 ? "none" : plain} without`;
}

function ownSentence(name: string, fit: Fit): string {
  return `${name || "One record"} is read by itself: it ${fitWords(fit, false)}.`;
}

/** Another fit that does as well, or does better on too few entries. */
function rivalWords({ rival, explained }: AlignmentFacts): string[] {
  if (!rival) return [];
  const by = `${formatFeet(Math.abs(rival.shift))} ${rival.shift > 0 ? "up" : "down"} the line`;
  const stretched = rival.scale === 0 ? "" : ` and stretching it by ${percentWords(rival.scale)}`;
  const moved = `moving the record ${by}${stretched}`;
  if (rival.shift === 0 && rival.scale === 0)
    return [
      `As written, ${rival.explained} would fit as well: settle one sure point before accepting.`,
    ];
  if (rival.explained > explained)
    return [
      `${capital(moved)} would bring ${rival.explained} within reach, but that is too few to tell it from chance.`,
    ];
  return [
    `${capital(moved)} would explain ${rival.explained}: settle one sure point before accepting.`,
  ];
}

/** A drawing made looking downstream has every side the other way round. */
function mirrorWords({ mirrored }: AlignmentFacts): string[] {
  const { sides, of } = mirrored;
  if (sides < 3 || sides * 3 < of * 2) return [];
  return [
    `${sides} of ${of} pairs lie on opposite sides: the sides on record may be those of somebody who looks downstream.`,
  ];
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
