import type { Mark } from "./mark.ts";

const HEIGHTS = /^(upper|top|high|higher|lower|bottom|low)$/;

/** Left, right, top and bottom as hours, seen in the direction in which the camera looks. */
export function sideAt(words: readonly string[], at: number): Mark | null {
  const word = words[at] ?? "";
  if (HEIGHTS.test(word) && /^(left|right)$/.test(words[at + 1] ?? "") && words[at - 1] !== "no") {
    const up = /^(upper|top|high|higher)$/.test(word);
    const left = words[at + 1] === "left";
    return clockMark(left ? leftHour(up) : rightHour(up), at, sideEnd(words, at + 2));
  }
  if (/^(l|lt|r|rt)$/.test(word) && at > 0)
    return clockMark(word.startsWith("l") ? 9 : 3, at, at + 1);
  if (word === "left" && isLeft(words, at)) return clockMark(9, at, sideEnd(words, at + 1));
  if (word === "right" && isRight(words, at)) return clockMark(3, at, sideEnd(words, at + 1));
  return topOrBottom(words, at);
}

function leftHour(up: boolean): number {
  return up ? 10.5 : 7.5;
}

function rightHour(up: boolean): number {
  return up ? 1.5 : 4.5;
}

/** The mark of a clock position (1 to 12) on the words `from` up to `to`. */
export function clockMark(clock: number, from: number, to: number): Mark {
  return { what: "clock", clock, from, to };
}

function sideEnd(words: readonly string[], at: number): number {
  const hand = words[at] === "hand" ? at + 1 : at;
  return words[hand] === "side" ? hand + 1 : hand;
}

function isLeft(words: readonly string[], at: number): boolean {
  const after = words[at + 1] ?? "";
  const before = words[at - 1] ?? "";
  // `no bottom left`, `not much left`: nothing remains.
  if (
    /\b(no|nothing|not much|any|hardly any|what|what's)( \w+)?$/.test(
      words.slice(Math.max(0, at - 3), at).join(" "),
    ) &&
    after === ""
  )
    return false;
  return (
    !/^(over|it|the|off|him|them|my)$/.test(after) &&
    !/^(what's|have|is|i|we|nothing|they|got)$/.test(before)
  );
}

/** `right` is a side after `the` or before `side`; elsewhere it mostly means exactly. */
function isRight(words: readonly string[], at: number): boolean {
  const before = words[at - 1] ?? "";
  const after = words[at + 1] ?? "";
  if (/^(tap|wye|tee|saddle|lateral|branch|connection|stub)$/.test(before))
    return !/^(here|there|at|now|in|where|by|on)$/.test(after);
  if (/^(side|hand)$/.test(after)) return true;
  if (
    /^(at|here|there|past|now|before|after|by|around|next|behind|above|away|along|through|up|where|about|under|beyond|in|near|on|off|below|inside)$/.test(
      after,
    ) &&
    !/^(the|my|your)$/.test(before)
  )
    return false;
  if (/^(on|the|to|from|my|your|hand|of|upper|and|no|not|or|hard|off)$/.test(before)) return true;
  const near = words.slice(Math.max(0, at - 4), at).includes("left");
  const last = after === "" || /^\d/.test(after);
  return (
    near || (last && at > 0 && !/^(all|that's|yeah|okay|ok|is|you're|about|it's)$/.test(before))
  );
}

const TOPS = new Map([
  ["top", 12],
  ["crown", 12],
  ["overhead", 12],
  ["ceiling", 12],
  ["roof", 12],
  ["bottom", 6],
  ["invert", 6],
  ["floor", 6],
  ["flowline", 6],
]);

function topOrBottom(words: readonly string[], at: number): Mark | null {
  const hour = TOPS.get(words[at] ?? "");
  const flow = words[at] === "flow" && words[at + 1] === "line";
  if (flow) return clockMark(6, at, at + 2);
  if (hour === undefined) return null;
  const before = words[at - 1] ?? "";
  const placed = /^(the|at|on|in|from|along|of|its|and|)$/.test(before) || at === words.length - 1;
  const other = /^(of the (hill|yard|stack|street|hole|stairs))/.test(
    words.slice(at + 1, at + 4).join(" "),
  );
  const wye = /^(drains?|vents?|leaders?|tile)$/.test(words[at + 1] ?? "");
  return placed && !other && !wye ? clockMark(hour, at, at + 1) : null;
}
