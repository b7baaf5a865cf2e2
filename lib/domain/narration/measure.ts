import { clockTime, hourAt, hourEnd } from "./hour.ts";
import type { Distance, Mark } from "./mark.ts";
import { type SpokenNumber, spokenNumber } from "./spoken-number.ts";
import { BEND, BEND_ANGLES } from "./things.ts";

const FOOT = new Set(["foot", "feet", "ft", "footer"]);
const INCH = new Set(["inch", "inches"]);
/** Beyond this many feet a number is no counter reading but a house number or a year. */
const FARTHEST = 100_000;

/** What the number that begins at `at` measures, if one does. The words are those of one clause. */
export function measureAt(
  words: readonly string[],
  at: number,
  capitals: readonly boolean[],
): Mark | null {
  const time = clockTime(words, at);
  if (time) return time;
  const number = spokenNumber(words, at) ?? vagueNumber(words, at);
  if (!number) return null;
  return (
    hourAt(words, at, number) ??
    angleAt(words, at, number) ??
    inchesAt(words, at, number) ??
    (isOther(words, at, number, capitals) ? counted(at, number) : distanceAt(words, at, number))
  );
}

function counted(at: number, number: SpokenNumber): Mark {
  return { what: "count", value: number.value / 100, from: at, to: number.to };
}

/** `a couple of feet`, `a few feet`. */
function vagueNumber(words: readonly string[], at: number): SpokenNumber | null {
  const value = new Map([
    ["couple", 200],
    ["few", 300],
  ]).get(words[at] ?? "");
  if (value === undefined) return null;
  const to = words[at + 1] === "of" ? at + 2 : at + 1;
  return FOOT.has(words[to] ?? "") ? { value, to, parts: false } : null;
}

/** `a forty-five`: a bend, not a distance. */
function angleAt(words: readonly string[], at: number, number: SpokenNumber): Mark | null {
  const degrees = /^degrees?$/.test(words[number.to] ?? "");
  const angle = number.value / 100;
  const known = BEND_ANGLES.has(Math.floor(angle));
  const bare = /^(a|an)$/.test(words[at - 1] ?? "") && !FOOT.has(words[number.to] ?? "");
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
  if (
    /^(of|deep|or|wide|down|in|off|gap|offset|drop|crack|hole|long|out)$/.test(words[to] ?? "") ||
    size < 2
  )
    return counted(at, { ...number, to });
  return { what: "diameter", inches: size, from: at, to };
}

const OTHER_UNIT =
  /^(percent|%|degrees?|gallons?|minutes?|minute|seconds?|hours?|hour|years?|year|days?|houses?|homes?|units?|times|psi|dollars|bucks|people|families|places|spots|pieces|more|of|pipes?|joints|ones|mile|miles|weeks?|months?|by|foot-candles|hundred|thousand|th|st|rd|nd|lines|guys|owners)$/;
/** `three foot joints`, `six foot deep`: how the pipe lies, not where. */
const PIECES =
  /^(joints?|sections?|pieces?|sticks?|lengths?|deep|down|wide|tall|high|ladder|diameter)$/;
const ADDRESS =
  /^(number|house|lot|unit|apartment|apt|#|address|street|suite|parcel|building|since|year|schedule|sdr|route|highway|permit|truck|job|ticket|file|page|step|camera)$/;
const AT =
  /^(at|around|about|roughly|approximately|near|reads|reading|says|showing|show|counter|footage|is|that's|it's|we're|i'm|on|past|over|under|of|exactly|say|mark|to|from|between|until|through|bout|be|was|called|it|put|puts|now|maybe|only|clear)$/;

/** Counts, house numbers, years, percentages: numbers that are no distance. */
function isOther(
  words: readonly string[],
  at: number,
  number: SpokenNumber,
  capitals: readonly boolean[],
): boolean {
  const next = words[number.to] ?? "";
  const before = words[at - 1] ?? "";
  if (number.value > FARTHEST) return true;
  if (FOOT.has(next)) return PIECES.test(words[number.to + 1] ?? "");
  if (OTHER_UNIT.test(next)) return true;
  if (ADDRESS.test(before) || isHouse(words, at, number)) return true;
  if (capitals[number.to] && /^\d+$/.test(words[at] ?? "")) return isStreet(words, number.to);
  return !number.parts && number.value <= 1200 && isCount(words, at, number);
}

/** `the cleanout at 211`. */
function isHouse(words: readonly string[], at: number, number: SpokenNumber): boolean {
  const lead = words.slice(Math.max(0, at - 2), at).join(" ");
  return (
    number.value >= 10_000 &&
    /^(cleanout|out|house|yard|building|place|garage|duplex|here) at$/.test(lead)
  );
}

function isStreet(words: readonly string[], from: number): boolean {
  const next = words.slice(from, from + 3);
  return next.some((word) =>
    /^(street|st|avenue|ave|lane|row|road|rd|drive|court|alley|way|place|walk|terrace)$/.test(word),
  );
}

/** Small whole numbers without a unit count things, unless they stand where a reading would. */
function isCount(words: readonly string[], at: number, number: SpokenNumber): boolean {
  const next = words[number.to] ?? "";
  const before = words[at - 1] ?? "";
  const one = words[at] === "one";
  const said = AT.test(before);
  if (one) return !/^(counter|footage|reads|reading|at)$/.test(before) || next !== "";
  if (/^(this|that|other|the|only|no|these|those|all|got|see|two|another|last|first)$/.test(before))
    return true;
  if (/[a-z]{2,}s$/.test(next) && !/^(is|was|this|abs|us|there's|it's|that's)$/.test(next))
    return true;
  return !(said || at === 0);
}

function distanceAt(words: readonly string[], at: number, number: SpokenNumber): Mark {
  const first = withUnit(words, number);
  const second = rangeEnd(words, at, first.to);
  const end = second?.to ?? first.to;
  const after = measuredFrom(words, end);
  const back =
    /(from|off) (of )?(the )?(city |public |street )?(main|connection)( connection)?( it's| it is| that's| we're| i'm| about| at| around| call it)*$/.test(
      words.slice(0, at).join(" "),
    );
  const kind = kindOf(words, at, { end, unit: first.unit, value: first.value });
  const distance: Distance = {
    kind,
    from: kind === "relative" && isBackwards(words, end) ? -first.value : first.value,
    to: second?.value ?? null,
    base: after?.base ?? (back ? "main" : "counter"),
    slack: slackOf(words, at, end),
    choice: second?.choice ?? false,
  };
  return { what: "distance", distance, from: at, to: after?.to ?? end };
}

interface Length {
  readonly value: number;
  readonly to: number;
  readonly unit: boolean;
}

/** `31 foot 6`, `thirty-one feet six inches`, `thirty-four feet and a half`, `34.5 feet`. */
function withUnit(words: readonly string[], number: SpokenNumber): Length {
  if (!FOOT.has(words[number.to] ?? "")) return { value: number.value, to: number.to, unit: false };
  const at = number.to + 1;
  const half = /^and (a half|a quarter|three quarters)/.exec(words.slice(at, at + 3).join(" "));
  if (half)
    return {
      value: number.value + (HALVES.get(half[1] ?? "") ?? 0),
      to: at + half[0].split(" ").length,
      unit: true,
    };
  const joined = words[at] === "and" || words[at] === "point" ? at + 1 : at;
  const more = number.parts ? null : spokenNumber(words, joined);
  if (more && words[at] === "point")
    return { value: number.value + more.value / 10, to: more.to, unit: true };
  if (!more || more.value >= 1200) return { value: number.value, to: at, unit: true };
  return withInches(words, { number, at, more });
}

const HALVES = new Map([
  ["a half", 50],
  ["a quarter", 25],
  ["three quarters", 75],
]);

function withInches(
  words: readonly string[],
  { number, at, more }: { number: SpokenNumber; at: number; more: SpokenNumber },
): Length {
  const inch = INCH.has(words[more.to] ?? "");
  const next = words[more.to + 1] ?? "";
  const size =
    words[more.to] === "inch" &&
    next !== "" &&
    !/^(and|there|we|i|on|from|is|we're|mark|there's|i've)$/.test(next);
  const alone =
    !inch && (words[more.to] === undefined || !/^(to|or|and|o'clock)$/.test(words[more.to] ?? ""));
  if (size || !(inch || alone)) return { value: number.value, to: at, unit: true };
  const inches = Math.round(more.value / 12);
  return { value: number.value + inches, to: inch ? more.to + 1 : more.to, unit: true };
}

const JOINT =
  /^(?:(?:back|up|down|on|over|out|clear|all the way|on up|on down) )?(?:to|through|thru|till|until|or|and)(?: (?:about|around|maybe|like|roughly|at))?(?= |$)/;

/** `to forty-seven`, `through 47`, `or thirty-five`, and `and` after `between`. */
function rangeEnd(
  words: readonly string[],
  at: number,
  from: number,
): (Length & { choice: boolean }) | null {
  const joint = JOINT.exec(words.slice(from, from + 6).join(" "))?.[0].trim() ?? "";
  const between = words.slice(Math.max(0, at - 3), at).includes("between");
  if (joint === "" || (/^and\b/.test(joint) && !between)) return null;
  const skip = from + joint.split(" ").length;
  const number = spokenNumber(words, skip);
  if (!number || INCH.has(words[number.to] ?? "") || hourEnd(words, number.to) > number.to)
    return null;
  const length = withUnit(words, number);
  if (OTHER_UNIT.test(words[length.to] ?? "")) return null;
  return { ...length, choice: joint.startsWith("or") };
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
  if (measuredFrom(words, end)) return "at";
  if (
    /^(past|beyond|further|farther|later|more|after|before|short of|shy of|on from|further on|up from|back from|upstream of|ahead)/.test(
      after,
    ) &&
    value <= 4000
  )
    return "relative";
  if (
    /(first|first couple of|for|for about|for maybe|for a good|a good|another|next|last|for roughly|for around|runs|runs about|goes about|lasts|lasts about|about a)$/.test(
      before,
    ) &&
    !/at about a$/.test(before)
  )
    return "extent";
  if (
    /^(of|long|section|stretch|worth|run|piece|deep|wide|high|tall|cover|stick|crack|belly|sag|gap)( |$)/.test(
      after,
    )
  )
    return "extent";
  return "at";
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
