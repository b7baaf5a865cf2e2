import type { Cft } from "../../length/station.ts";
import type { Word } from "../transcript/word.ts";
import type { Distance, Mark } from "../vocabulary/mark.ts";
import { BEND, BEND_ANGLES } from "../vocabulary/things.ts";
import { clockTime, hourAt } from "./hour.ts";
import { FOOT, INCH, rangeEnd, withUnit } from "./length-said.ts";
import { whyNoDistance } from "./role.ts";
import { type SpokenNumber, spokenNumber } from "./spoken-number.ts";

/** The words of one clause, and what was said around it. */
export interface ClauseWords {
  readonly words: readonly string[];
  readonly said: readonly Word[];
  /** What was said before the clause in the same breath. */
  readonly lead: string;
  /** What follows it in the same sentence. */
  readonly follow: string;
}

/** What the number that begins at `at` measures, if one does. */
export function measureAt(clause: ClauseWords, at: number): Mark | null {
  const { words } = clause;
  const time = clockTime(words, at);
  if (time) return time;
  const written = writtenAt(clause, at);
  if (written) return written;
  const number = spokenNumber(words, at) ?? vagueNumber(words, at);
  if (!number) return zeroAt(words, at);
  return (
    hourOf(clause, at, number) ??
    angleAt(words, at, number) ??
    inchesAt(words, at, number) ??
    roleOf(clause, at, number) ??
    distanceAt(clause, at, number)
  );
}

/** `I’m zeroed at the cap`, `she’s on goose egg`, `counter says nothing`: the footage is zero. */
function zeroAt(words: readonly string[], at: number): Mark | null {
  if (/^(zeroed|zeroing|zero'd|zeros)$/.test(words[at] ?? "")) return zeroed(at, at + 1);
  if (isReset(words, at)) return zeroed(at, at + 1);
  if (words[at] === "goose" && words[at + 1] === "egg") return zeroed(at, at + 2);
  const before = words.slice(Math.max(0, at - 2), at).join(" ");
  const none = /^(nothing|nada|zip|nil)$/.test(words[at] ?? "");
  return none &&
    /\b(counter|footage|reel)$|\b(counter|footage|reel|it|her) (says|reads|shows|is|on|at|to|back to)$/.test(
      before,
    )
    ? zeroed(at, at + 1)
    : null;
}

/** `I’m resetting it`, `footage is reset there`, `reset the counter`. */
function isReset(words: readonly string[], at: number): boolean {
  if (!/^(reset|resetting|resets)$/.test(words[at] ?? "")) return false;
  const behind = words.slice(at + 1, at + 3).join(" ");
  const before = words.slice(Math.max(0, at - 4), at).join(" ");
  return (
    /^(it|the (counter|footage|reel|number)|my counter|here|there|at)\b/.test(behind) ||
    /\b(counter|footage|reel|number|it|i'm|we're)( is| was| has been| got|'s)?$/.test(before) ||
    behind === ""
  );
}

function zeroed(at: number, to: number): Mark {
  const distance: Distance = {
    kind: "at",
    from: 0,
    to: null,
    base: "counter",
    slack: 0,
    choice: false,
    weight: 3,
  };
  return { what: "distance", distance, from: at, to };
}

/** What is written as no distance ever is: dates, fractions, sizes, telephone numbers, references. */
function writtenAt(clause: ClauseWords, at: number): Mark | null {
  const text = clause.words[at] ?? "";
  if (/^\d+\/\d+$/.test(text))
    return INCH.has(clause.words[at + 1] ?? "")
      ? other(at, at + 2, "a size")
      : other(at, at + 1, "a part of something");
  if (/^\d+x\d+$/.test(text)) return other(at, at + 1, "a size");
  if (/^\d+([/.-])\d+\1\d+$|^\d+(st|nd|rd|th)$/.test(text)) return other(at, at + 1, "a date");
  if (/^\d+:\d\d(:\d\d)?$/.test(text)) return other(at, at + 1, "a time of day");
  if (/^\(?\d{3}\)?[-. ](\d{3}[-.])?\d{4}$|^[a-z]{1,4}-\d/.test(text))
    return other(at, at + 1, "a reference or telephone number");
  return null;
}

function other(from: number, to: number, why: string, value = 0): Mark {
  return { what: "other", value, why, from, to };
}

/** Hours tell where in the pipe; `call it eleven o’clock now` tells when. */
function hourOf({ words }: ClauseWords, at: number, number: SpokenNumber): Mark | null {
  const mark = hourAt(words, at, number);
  if (!mark) return null;
  const before = words.slice(Math.max(0, at - 3), at).join(" ");
  const time =
    /^(now|this morning|already|a|in the morning|tomorrow|today|sharp)$/.test(
      words[mark.to] ?? "",
    ) || /\b(until|till|by|before|after|call it|since)$/.test(before);
  return time ? other(at, mark.to, "a time of day") : mark;
}

function roleOf(clause: ClauseWords, at: number, number: SpokenNumber): Mark | null {
  const { words, said } = clause;
  const length = withUnit(words, number);
  const unit = length.unit;
  const before = [...clause.lead.split(" "), ",", ...words.slice(0, at)].filter(
    (word) => word !== "",
  );
  const after = [...words.slice(unit ? length.to : number.to), ",", ...clause.follow.split(" ")];
  const next = said[number.to];
  const why = whyNoDistance({
    number,
    lead: before.slice(-12).join(" "),
    follow: after
      .filter((word) => word !== "")
      .slice(0, 8)
      .join(" "),
    possessive:
      said[number.to - 1]?.possessive === true &&
      number.value > 0 &&
      !/^(a|an|the|another|where|feet|foot|ft|footer)$/.test(words[number.to] ?? ""),
    beforeName: next?.capital === true && /^[a-z]/.test(next.text) && !FOOT.has(next.text),
    first: at === 0,
    unit,
    text: words[at] ?? "",
  });
  return why === null ? null : other(at, unit ? length.to : number.to, why, number.value / 100);
}

/** `a couple of feet`, `a few feet`, `a foot past that`. */
function vagueNumber(words: readonly string[], at: number): SpokenNumber | null {
  const value = new Map([
    ["couple", 200],
    ["few", 300],
    ["a", 100],
    ["another", 100],
  ]).get(words[at] ?? "");
  if (value === undefined) return null;
  const to = words[at + 1] === "of" ? at + 2 : at + 1;
  // `forty bucks a foot`
  if (words[at] === "a" && (PRICED.test(words[at - 1] ?? "") || spokenNumber(words, at - 1)))
    return null;
  return FOOT.has(words[to] ?? "") ? { value, to, parts: false, style: "plain", one: false } : null;
}

const PRICED =
  /^(bucks|dollars|cents|inch|inches|percent|grand|hundred|thousand|half|quarter|per|times?|pounds?)$/;

/** `a forty-five`: a bend, not a distance. */
function angleAt(words: readonly string[], at: number, number: SpokenNumber): Mark | null {
  const degrees = /^degrees?$/.test(words[number.to] ?? "");
  const angle = number.value / 100;
  const known = BEND_ANGLES.has(Math.floor(angle));
  const bare =
    /^(a|an|another|second|third|long|short)$/.test(words[at - 1] ?? "") &&
    !FOOT.has(words[number.to] ?? "");
  if (!known || !(degrees || bare)) return null;
  const end = degrees ? number.to + 1 : number.to;
  const to = /^(bend|elbow|fitting|sweep|turn)$/.test(words[end] ?? "") ? end + 1 : end;
  return {
    what: "thing",
    thing: BEND,
    from: at,
    to,
  };
}

/** A size: `six inch`. Inches of water or of mud, and inches that tell a distance, are none. */
function inchesAt(words: readonly string[], at: number, number: SpokenNumber): Mark | null {
  if (!INCH.has(words[number.to] ?? "")) return null;
  const to = number.to + 1;
  const size = number.value / 100;
  if (isStep(words, to)) return inchStep(at, to, Math.round(number.value / 12));
  if (
    /^(of|deep|or|wide|down|in|off|gap|offset|drop|crack|hole|long|out)$/.test(words[to] ?? "") ||
    size < 2
  )
    return other(at, to, "a size", size);
  return { what: "diameter", inches: size, from: at, to };
}

/** `eight inches past that`, `six inches up from the wye`: on from what was told last. */
function isStep(words: readonly string[], at: number): boolean {
  return /^((past|beyond|after) (that|the|it|this)|(up|on|further|farther|over) from (that|the|it|there|this)|further|farther)\b/.test(
    words.slice(at, at + 3).join(" "),
  );
}

function inchStep(from: number, to: number, way: Cft): Mark {
  const distance: Distance = {
    kind: "relative",
    from: way,
    to: null,
    base: "counter",
    slack: 0,
    choice: false,
    weight: 3,
  };
  return { what: "distance", distance, from, to };
}

function distanceAt(clause: ClauseWords, at: number, number: SpokenNumber): Mark {
  const { words } = clause;
  const first = withUnit(words, number);
  const second = rangeEnd(words, at, first.to);
  const end = second?.to ?? first.to;
  const after = measuredFrom(words, end);
  const back =
    /(from|off) (of )?(the )?(city |public |street )?(main|connection)( connection)?( it's| it is| that's| we're| i'm| about| at| around| call it)*$/.test(
      words.slice(0, at).join(" "),
    );
  const unit = first.unit || second?.unit === true;
  const kind = kindOf(words, at, { end, unit, value: first.value });
  const distance: Distance = {
    kind,
    from: kind === "relative" && isBackwards(words, end) ? -first.value : first.value,
    to: second?.value ?? null,
    base: after?.base ?? (back ? "main" : "counter"),
    slack: slackOf(words, at, end),
    choice: second?.choice ?? false,
    weight: weightOf(clause, at, {
      number,
      unit: first.unit,
      fromSomewhere: after !== null || back,
      ranged: second !== null,
    }),
  };
  return { what: "distance", distance, from: at, to: after?.to ?? end };
}

/** How much speaks against a bare hundred or more, by the way in which it was read off. */
const HOUSE_LIKE = { plain: 0.5, short: 1.5, pairs: 1.5 } as const;

/** Spoken with feet, tenths, the counter or the main it is one; by itself it may be. */
function weightOf(
  { words, said, lead }: ClauseWords,
  at: number,
  {
    number,
    unit,
    fromSomewhere,
    ranged,
  }: { number: SpokenNumber; unit: boolean; fromSomewhere: boolean; ranged: boolean },
): number {
  const before = [...lead.split(" "), ...words.slice(0, at)].slice(-4).join(" ");
  const counter =
    /\b(counter|footage|reads|reading|mark)\b/.test(before) ||
    /^(on the counter|on the footage|even)\b/.test(words.slice(number.to, number.to + 3).join(" "));
  if (unit || fromSomewhere || counter || number.parts) return 3;
  const whole = number.value % 100 === 0 && number.value >= 10_000;
  const house = whole ? HOUSE_LIKE[number.style] : 0;
  if (/\b(at|around|near|about|@)$/.test(before) || ranged) return 2 - house;
  return (at === 0 || said[at - 1]?.clause !== said[at]?.clause ? 2 : 1) - house;
}

const FROM_MAIN =
  /^(?:(?:up|out|back|in|upstream|away) )?(?:from|off|off of|above) (?:the |our )?(?:(?:city|public|street|sewer) )*(?:main|connection|tap|city)(?: connection| line| sewer)?(?= |$)/;
const FROM_ACCESS =
  /^(?:(?:in|up|out|down|back|downstream|upstream|along) )?(?:from|off|off of|of|past where|inside) (?:the |my |our |where |that )?(?:(?:front|back|house|yard|two way|basement|outside|driveway|garage|side) )*(?:cleanout|clean out|co|access|way in|hole|house|building|i went in|we went in|we came in|we're at|entry|pit|stack|start|wall|foundation|here|zero|opening|toilet|roof vent|flange|i put in|manhole|pulled toilet)(?= |$)/;

function measuredFrom(
  words: readonly string[],
  at: number,
): { base: "counter" | "main"; to: number } | null {
  const rest = words.slice(at, at + 9).join(" ");
  const main = FROM_MAIN.exec(rest);
  if (main) return { base: "main", to: at + main[0].split(" ").length };
  const access = FROM_ACCESS.exec(rest);
  return access ? { base: "counter", to: at + access[0].split(" ").length } : null;
}

function kindOf(
  words: readonly string[],
  at: number,
  { end, unit, value }: { end: number; unit: boolean; value: number },
): Distance["kind"] {
  if (!unit) return "at";
  const before = words.slice(Math.max(0, at - 3), at).join(" ");
  const after = words.slice(end, end + 2).join(" ");
  if (/^(more|further|farther)$/.test(words[end - 2] ?? "")) return "relative";
  if (measuredFrom(words, end)) return "at";
  if (
    /^(past|beyond|further|farther|later|more|after|before|short of|shy of|on from|further on|up from|back from|upstream of|ahead|on$|on there's|on we|on i|on up)/.test(
      after,
    ) &&
    value <= 4000
  )
    return "relative";
  if (
    /(first|first couple of|for|for about|for maybe|for a good|a good|another|next|last|for roughly|for around|runs|runs about|runs maybe|goes|goes about|goes maybe|goes for|lasts|lasts about|lasts maybe|lasted|lasted about|ran about|ran maybe|went about|only|only about|only maybe|about a)$/.test(
      before,
    ) &&
    !/at about a$/.test(before)
  )
    return "extent";
  if (/^(of|long|section|stretch|worth|run|piece|deep|wide|high|tall|cover|stick)( |$)/.test(after))
    return "extent";
  return /^(crack|belly|sag|gap|split)( |$)/.test(after) &&
    /\b(a|an|the|about|another|maybe)$/.test(before)
    ? "extent"
    : "at";
}

function isBackwards(words: readonly string[], end: number): boolean {
  return /^(before|short of|shy of)/.test(words.slice(end, end + 2).join(" "));
}

const NEAR =
  /(coming up on|close to|approaching|almost|nearly|just about|closing in on|about|around|roughly|maybe|approximately|call it|near|neighborhood of|say|bout|somewhere|like|probably|i think|i'd say|i want to say)( at| to| around| about| on| a)?$/;
const HARDLY_OFF =
  /(just past|just over|touch over|hair over|hair past|little over|little past|tad over|tad past|bit over|bit past|better than|touch past|right past|smidge over|smidge past|skosh over|skosh past|shy of|just under|touch under|hair under|not quite|just before|short of|little under|bit under|tad under|touch shy of|hair shy of|smidge under|just after|touch less than|touch more than)( at)?$/;

/** By the speaker's own words: `about` is a foot, `a touch over` half a foot. */
function slackOf(words: readonly string[], at: number, end: number): number {
  const before = words.slice(Math.max(0, at - 5), at).join(" ");
  const after = words.slice(end, end + 3).join(" ");
  if (HARDLY_OFF.test(before)) return 50;
  const vague =
    /^(ish|or so|give or take|or thereabouts|something|some odd|odd|and some|roughly|maybe|and change|ballpark|approximately|i think|or something|i'd say|thereabouts)/.test(
      after,
    );
  return NEAR.test(before) || vague ? 100 : 0;
}
