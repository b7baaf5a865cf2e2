import type { Mark } from "../vocabulary/mark.ts";
import { type SpokenNumber, spokenNumber } from "./spoken-number.ts";

/** `10:00`, as machines write ten o’clock; a time of day has other minutes. */
export function clockTime(words: readonly string[], at: number): Mark | null {
  const found = /^(\d{1,2}):(00|30)$/.exec(words[at] ?? "");
  if (!found) return null;
  const clock = (Number(found[1]) % 12 || 12) + (found[2] === "30" ? 0.5 : 0);
  return {
    what: "clock",
    clock: clock > 12 ? clock - 12 : clock,
    from: at,
    to: hourEnd(words, at + 1),
  };
}

const OCLOCK = new Set(["o'clock", "oclock", "clock"]);

/** Index after `o’clock` where that stands at `at`; else `at` itself. */
export function hourEnd(words: readonly string[], at: number): number {
  if (OCLOCK.has(words[at] ?? "")) return at + 1;
  return words[at] === "o" && words[at + 1] === "clock" ? at + 2 : at;
}

/** `ten o’clock`, `ten thirty o’clock`, `ten to two o’clock`: the middle, going clockwise. */
export function hourAt(words: readonly string[], at: number, number: SpokenNumber): Mark | null {
  const end = hourEnd(words, number.to);
  if (end > number.to && number.value <= 1250) {
    const hour = Math.round(number.value / 50) / 2;
    return { what: "clock", clock: asHour(hour), from: at, to: end };
  }
  const half = words[at + 1] === "thirty" ? hourEnd(words, at + 2) : 0;
  const single = spokenNumber([words[at] ?? ""], 0);
  if (half > at + 2 && single)
    return { what: "clock", clock: asHour(single.value / 100 + 0.5), from: at, to: half };
  return hoursBetween(words, at, number);
}

function hoursBetween(words: readonly string[], at: number, number: SpokenNumber): Mark | null {
  if (!/^(to|or|and|through)$/.test(words[number.to] ?? "") || number.parts) return null;
  const second = spokenNumber(words, number.to + 1);
  const end = second ? hourEnd(words, second.to) : 0;
  if (!second || end === second.to || number.value > 1200) return null;
  const span = (second.value - number.value + 1200) % 1200;
  return {
    what: "clock",
    clock: asHour(Math.round((number.value + span / 2) / 50) / 2),
    from: at,
    to: end,
  };
}

function asHour(hour: number): number {
  return hour > 12.5 ? hour - 12 : hour || 12;
}
