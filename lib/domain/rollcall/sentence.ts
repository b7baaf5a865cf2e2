import type { RollCallMatter } from "../facts/roll-call.ts";
import { capital } from "../say/capital.ts";
import { sayCount } from "../say/count.ts";
import { sayList } from "../say/say-list.ts";
import type { Day } from "../time/day.ts";
import { formatNearDay } from "../time/format-day.ts";
import { type Door, openDoors, type RollCall } from "./roll-call.ts";

/** `3 of 7 not reached, 1 needs help`; `All 7 reached`; that drains are on again is told. */
export function rollCallSentence(call: Pick<RollCall, "doors" | "matter">): string {
  const { doors } = call;
  const reachedWord = call.matter === "drains-off" ? "reached" : "told";
  if (doors.length === 0) return "No one on file has drains on this line";
  const count = (...states: Door["state"][]) =>
    doors.filter(({ state }) => states.includes(state)).length;
  const silent = count("not-asked", "not-reached", "other-hours");
  const help = count("needs-help");
  const first = count("call-first");
  const waived = count("waived");
  const parts = [
    silent === 0 ? "" : `${silent} of ${doors.length} not ${reachedWord}`,
    help === 0 ? "" : `${help} ${help === 1 ? "needs" : "need"} help`,
    first === 0 ? "" : `${sayCount(first, "household")} to call first`,
  ].filter((part) => part !== "");
  if (openDoors(call).length > 0) return parts.join(", ");
  const reached = doors.length - waived;
  if (waived === 0)
    return doors.length === 1 ? capital(reachedWord) : `All ${doors.length} ${reachedWord}`;
  return sayList([...(reached === 0 ? [] : [`${reached} ${reachedWord}`]), `${waived} waived`]);
}

const MATTER_WORDS: Record<RollCallMatter, (day: string) => string> = {
  "drains-off": (day) => `Drain shutdown ${day}`,
  "drains-on": () => "Drains are back on",
};

/** `Drain shutdown Wednesday, December 2: 3 of 7 not reached`. */
export function rollCallLine(call: RollCall, today: Day): string {
  const head = MATTER_WORDS[call.matter](formatNearDay(call.pause.on, today));
  return `${head}: ${lowered(rollCallSentence(call))}`;
}

function lowered(words: string): string {
  return words.charAt(0).toLowerCase() + words.slice(1);
}
