import type { SplitChoice, SplitRule } from "../facts/split.ts";
import type { Ground } from "../sharing/ground.ts";
import { canonicalJson, fingerprint, type Json } from "./fingerprint.ts";

/** Rules whose amounts depend on where tie-ins and work lie. */
const BY_PLACE: readonly SplitRule[] = ["portion-used", "upstream-of-fault", "reach-owner"];

/**
 * Fingerprint of all that the amounts under a choice depend on: who takes part, the priced work,
 * and what its rules look at (stations, units, weights, shares). Names, notes and what no rule in
 * use looks at make no difference.
 */
export function basisOf(ground: Ground, choice: SplitChoice): string {
  const rules = new Set([choice.rule, ...ground.items.flatMap(({ item }) => item.rule ?? [])]);
  const byPlace = BY_PLACE.some((rule) => rules.has(rule));
  return fingerprint(
    canonicalJson({
      rule: choice.rule,
      unknownShares: choice.unknownShares,
      faultStation: rules.has("upstream-of-fault") ? choice.faultStation : null,
      payerId: rules.has("single-payer") ? choice.payerId : null,
      upperEnd: byPlace ? ground.file.line.upperEnd : null,
      sharers: sharersBasis(ground, rules, byPlace),
      ...leaversBasis(ground),
      items: itemsBasis(ground, byPlace || rules.has("recorded-shares")),
      agreements: rules.has("recorded-shares") ? agreementsBasis(ground) : null,
    }),
  );
}

function sharersBasis(ground: Ground, rules: ReadonlySet<SplitRule>, byPlace: boolean): Json {
  const connected = ground.connected.flatMap((index) => ground.people[index] ?? []);
  return [...connected, ...ground.absent]
    .map((sharer) => ({
      key: sharer.key,
      stations: byPlace ? sharer.stations : [],
      unplaced: byPlace ? sharer.unplaced.length : 0,
      units: rules.has("per-unit") ? sharer.units : 0,
      weight: rules.has("weights") ? sharer.weight : null,
    }))
    .sort((a, b) => (a.key < b.key ? -1 : 1));
}

/** Only where somebody leaves, so that older fingerprints keep their meaning. */
function leaversBasis({ leavers }: Ground): { readonly [key: string]: Json } {
  return leavers.length === 0 ? {} : { leavers: leavers.map(({ key }) => key).sort() };
}

function itemsBasis(ground: Ground, withPlaces: boolean): Json {
  return ground.items
    .map(({ item, amount }) => ({
      id: item.id,
      amount,
      place: item.place,
      from: withPlaces ? item.from : null,
      to: withPlaces ? item.to : null,
      tieInId: item.place === "branch" ? item.tieInId : null,
      behind: item.place === "branch" ? behindBasis(ground, item.tieInId) : [],
      spread: item.place === "general" ? item.spread : null,
      rule: item.rule,
      payerId: item.payerId,
    }))
    .sort((a, b) => (a.id < b.id ? -1 : 1));
}

function behindBasis(ground: Ground, tieInId: string | null): Json {
  const behind = ground.behind.get(tieInId ?? "");
  if (behind === undefined) return [];
  const keys = behind.present.flatMap((index) => ground.people[index]?.key ?? []);
  return [...keys.sort(), behind.absent];
}

function agreementsBasis(ground: Ground): Json {
  return ground.agreements.map(({ agreement, rank }) => ({
    id: agreement.id,
    rank,
    from: agreement.fromStation,
    to: agreement.toStation,
    shares: agreement.shares
      .map(({ propertyId, parts }) => ({ propertyId, parts }))
      .sort((a, b) => (a.propertyId < b.propertyId ? -1 : 1)),
  }));
}
