import { err, ok } from "../../result.ts";
import { type Cft, formatFeet } from "../length/station.ts";
import { sayList } from "../say/say-list.ts";
import {
  type Allotment,
  equalAllotment,
  type Member,
  millionths,
  sayMillionths,
  soleAllotment,
  weightedAllotment,
} from "../sharing/allotment.ts";
import type { Ground } from "../sharing/ground.ts";
import type { Sharer } from "../sharing/sharers.ts";
import { carriedByAll, equallyBehind, freePlan, type RuleMaker } from "./plan.ts";

/*
 * Rules under which each pays the same part of every item on the trunk. Whatever the rule, work on
 * a branch is paid by those behind it (Fort Worth City Code ch. 35: main to wye shared, wye to
 * house each its own), save under a single payer.
 */

/** Each property the same. */
export const equalRule: RuleMaker = (ground) => {
  const refusal = nobodyKnown(ground);
  if (refusal !== null) return err(refusal);
  return freePlan(equalAllotment(ground.connected), equallyBehind(ground));
};

/** Each dwelling and business the same. */
export const perUnitRule: RuleMaker = (ground) => {
  const refusal = nobodyKnown(ground);
  if (refusal !== null) return err(refusal);
  const members = (indices: readonly number[]): Member[] =>
    indices.map((index) => ({ index, weight: BigInt(ground.people[index]?.units ?? 1) }));
  const share = (indices: readonly number[]) =>
    weightedAllotment(members(indices), (weight) => String(weight), "units");
  return freePlan(share(ground.connected), (who) =>
    who.present.length > 0 ? share(who.present) : equallyBehind(ground)(who),
  );
};

/** By a measure that the owners agreed on, such as fixture units. */
export const weightsRule: RuleMaker = (ground) => {
  const refusal = nobodyKnown(ground) ?? weightsMissing(ground);
  if (refusal !== null) return err(refusal);
  const share = (indices: readonly number[]): Allotment =>
    weightedAllotment(
      indices.map((index) => ({ index, weight: millionths(ground.people[index]?.weight ?? 0) })),
      sayMillionths,
      "by weight",
    );
  const all = share(ground.connected);
  if (all.sum === 0n) return err("All weights are 0. Enter at least one weight above 0.");
  return freePlan(all, (who) => {
    const own = share(who.present);
    return own.sum > 0n ? own : equallyBehind(ground)(who);
  });
};

function weightsMissing(ground: Ground): string | null {
  const people = ground.connected.flatMap((index) => ground.people[index] ?? []);
  const unknown = people.filter((person) => person.propertyId === null);
  if (unknown.length > 0) {
    return `${sayLabels(unknown)} can’t have a weight yet. Identify the owner, or let the others cover the share.`;
  }
  const missing = people.filter((person) => person.weight === null);
  if (missing.length > 0) return `Enter a weight for ${sayLabels(missing)}.`;
  const negative = people.filter((person) => (person.weight ?? 0) < 0);
  if (negative.length > 0) return `Enter a weight of 0 or more for ${sayLabels(negative)}.`;
  return null;
}

/**
 * Those whose flow passes the fault, equally (Donner v. Blue, 187 Wn. App. 51 (2015)). A tie-in at
 * the very station of the fault counts as above it.
 */
export const upstreamOfFaultRule: RuleMaker = (ground, { faultStation }) => {
  const refusal = nobodyKnown(ground) ?? stationsMissing(ground);
  if (refusal !== null) return err(refusal);
  if (faultStation === null)
    return err(`Enter the station of the defect being repaired.${seen(ground)}`);
  const above = ground.connected.filter((index) => joinsAbove(ground.people[index], faultStation));
  const note = ` at or above ${formatFeet(faultStation)}`;
  if (above.length > 0) return freePlan(equalAllotment(above, note), equallyBehind(ground));
  const carried = ground.absent.some((sharer) => joinsAbove(sharer, faultStation))
    ? carriedByAll(ground)
    : null;
  if (carried !== null) return freePlan(carried, equallyBehind(ground));
  return err(`No active tie-in at or above ${formatFeet(faultStation)}. Check the defect station.`);
};

function seen({ faults }: Ground): string {
  if (faults.length === 0) return "";
  return ` The camera saw defects at ${sayList(faults.map((fault) => formatFeet(fault)))}.`;
}

function joinsAbove(sharer: Sharer | undefined, station: Cft): boolean {
  return (sharer?.top ?? -1) >= station;
}

/** One property pays for everything without its own rule or payer. */
export const singlePayerRule: RuleMaker = (ground, { payerId }) => {
  if (payerId === null) return err("Select the property that pays.");
  const index = ground.indexOf.get(payerId);
  if (index === undefined) {
    return err("The property selected to pay is not on this line. Select another.");
  }
  const allotment = soleAllotment(index, "all of it");
  return ok({ kind: "free", allotment, takesAll: true, behind: () => allotment });
};

/** Null while somebody known, or held apart, takes part. */
export function nobodyKnown(ground: Ground): string | null {
  if (ground.connected.length > 0) return null;
  if (ground.absent.length > 0) {
    return `The only active tie-ins (${sayLabels(ground.absent)}) have no known owner yet, so there is no one to cover their share. Identify the owners, or set their shares aside.`;
  }
  return "No active tie-in yet. Enter the tie-ins and the property each one serves.";
}

/** Null while everyone who takes part has a place on the trunk. */
export function stationsMissing(ground: Ground): string | null {
  const people = ground.connected.flatMap((index) => ground.people[index] ?? []);
  const labels = [...people, ...ground.absent].flatMap((sharer) => sharer.unplaced);
  if (labels.length === 0) return null;
  const have = labels.length === 1 ? "has" : "have";
  return `${sayList(labels)} ${have} no station yet. Enter it, or give the camera run a point of known station.`;
}

function sayLabels(sharers: readonly Sharer[]): string {
  return sayList(sharers.map((sharer) => sharer.label));
}
