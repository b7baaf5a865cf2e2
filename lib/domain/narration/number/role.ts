import { isAddress, type NumberAt } from "./address-said.ts";
import { spokenNumber } from "./spoken-number.ts";

/** Farther from its zero than this, hundredths of a foot, no camera goes in a lateral. */
const FARTHEST = 50_000;

const MONTH =
  "january|february|march|april|may|june|july|august|september|october|november|december|jan|feb|mar|apr|jun|jul|aug|sept|sep|oct|nov|dec";
type Test = (n: NumberAt) => boolean;

/** What a number is, other than a distance, with the words by which it is told; the first that fits. */
const ROLES: readonly (readonly [why: string, is: Test])[] = [
  ["a reference or telephone number", isReference],
  ["a date", isDate],
  ["an amount of money", isMoney],
  ["a time of day", isHour],
  ["a rate", isRate],
  ["a length of time", (n) => TIME.test(n.follow)],
  ["a percentage", (n) => /^(percent|%|per cent|percentage)(?= |$)/.test(n.follow)],
  ["a part of the bore", isShare],
  ["a number of degrees", (n) => /^degrees?\b/.test(n.follow)],
  ["a size", isSize],
  ["a year", isYear],
  ["a house or unit number", isAddress],
  ["a distance on the ground", isOnGround],
  ["a depth", isDepth],
  ["a length of cable", isCable],
  ["a length of pipe", isPieces],
  ["a length of pipe", (n) => n.unit && WORKED_ON.test(n.lead)],
  ["the score of a game", (n) => SCORE.test(n.follow)],
  ["a length that is priced", isPriced],
  ["longer than any lateral", (n) => n.unit && isFar(n)],
  ["said in pairs, like an address or an hour", (n) => isFar(n) && isInPairs(n)],
  ["too large to be a footage", isFar],
  ["a length still to go", isToGo],
  [
    "a person’s age",
    ({ lead, unit, number }) => !unit && !number.parts && /\b(she|he)'s$/.test(lead),
  ],
  ["a count", isCount],
];

/** `they lined twenty-one feet and went home` */
const WORKED_ON =
  /\b(lined|relined|replaced|patched|dug|dug up|dug out|laid|swapped|swapped out|changed out|put in)( (about|maybe|like|only|just|some|around))?$/;
/** `forty-one to thirty-seven at the half` */
const SCORE =
  /^(to [\w ]{2,14}? )?(at (the )?half( ?time)?|at halftime|final|in (the )?(overtime|first|second|third|fourth|ninth)( (quarter|half|period|inning))?)( |$)/;

const TIME =
  /^(more )?(minutes?|mins?|seconds?|secs?|hours?|hrs?|years?|yrs?|days?|weeks?|months?|times|nights?)\b/;

/** `thirteen fourteen`, `nine oh seven`; not `fifteen hundred`. */
function isInPairs({ number }: NumberAt): boolean {
  return number.style !== "plain" && number.value % 10_000 !== 0;
}

function isFar({ number }: NumberAt): boolean {
  return number.value > FARTHEST;
}

/** Why a number is no distance; null where it may be one. */
export function whyNoDistance(n: NumberAt): string | null {
  const own = ROLES.find(([, is]) => is(n))?.[0];
  return own ?? paired(n);
}

/** `fifty or sixty years`, `ten, fifteen percent`: the first is what the second is. */
function paired(n: NumberAt): string | null {
  const found = /^(or|to|and|maybe|through|,)( maybe| or)? (.*)$/.exec(n.follow);
  if (!found || n.unit) return null;
  const [, joint = "", , rest = ""] = found;
  // `4.2, 22 degree bend`: read off to the tenth, it stands by itself.
  if (joint === "," && n.number.parts) return null;
  const words = rest.split(" ");
  const second = spokenNumber(words, 0);
  if (!second) return null;
  const follow = words.slice(second.to).join(" ");
  const lead = `${n.lead} ${joint}`.trim();
  const other = { ...n, number: second, lead, follow, first: false };
  // `Eleven, four inch wye`: a comma joins only what is no thing of its own.
  const roles = joint === "," ? LISTED : PAIRED;
  const counted = joint === "," && second.value >= TEN;
  if (/^(or|to)$/.test(joint) && COUNTABLE.test(other.follow)) return "a count";
  return (
    roles.find(([, is]) => is(other))?.[0] ??
    (counted && NOUN.test(other.follow) ? "a count" : null)
  );
}

const PAIRED = ROLES.filter(([why]) =>
  /time|percentage|money|degrees|bore|size|house|depth|cable/.test(why),
);
/** `thirty or forty cracks` */
const COUNTABLE =
  /^((little|small|tiny|big|old|different|separate) )*(cracks|taps|holes|joints|hairs|hairlines|lines|pieces|spots|chips|strands|guys|calls|jobs|of (them|those|these))\b/;

/** So many, hundredths, nobody reads off in feet and counts in one breath: `fifteen, twenty little cracks`. */
const TEN = 1_000;
const LISTED = ROLES.filter(([why]) => /percentage|degrees|length of time/.test(why));

function isReference({ lead, follow, unit }: NumberAt): boolean {
  if (!unit && /\b(her|his|my|their|your|phone|cell|permit|office) number\b/.test(lead))
    return true;
  if (/^(, )?(not|or) (schedule|sdr)\b/.test(follow)) return true;
  if (/\bcopy( that| you)?( ,)*$/.test(lead)) return true;
  if (/\b(call|text|phone|cell|reach)( \w+){0,3} at$/.test(lead)) return true;
  return /\b(clip|extension|ext|channel|limit|chapter|resolution|hertz|slide|photo|picture|frame|job|permit|ticket|file|order|invoice|sheet|page|run|recording|video|part|camera|reel|route|highway|schedule|sdr|manhole|mh|tract|parcel|crew|truck|line|version|take|step|class|grade|type|dash)( (number|no|#))?$/.test(
    lead,
  );
}

function isDate({ lead }: NumberAt): boolean {
  return (
    new RegExp(`\\b(${MONTH})( the)?$`).test(lead) &&
    !/\b(we|i|you|they|it|this|that|there)( \w+)? may$/.test(lead)
  );
}

/** `twenty feet a minute`, `sixty a foot`, `a quarter per foot`. */
function isRate({ follow }: NumberAt): boolean {
  return /^((feet|foot|gallons|bucks|dollars) )?(a|an|per|each|every) (minute|second|hour|day|week|month|year|foot|pop|head|call|visit|piece|side|house|lot)\b/.test(
    follow,
  );
}

function isMoney({ lead, follow, unit, number, text }: NumberAt): boolean {
  // `parking 18.00`: nobody reads hundredths
  if (/^\d+\.00$/.test(text) && !unit) return true;
  if (/^(hundred )?(thousand )?(dollars?|bucks|grand|k|thousand|cents)\b/.test(follow)) return true;
  const priced =
    /\b(paid|pay|cost|costs|price|quote|quoted|bid|bids|estimate|charge|charged|fee|worth)\b( \w+){0,4}$/.test(
      lead,
    );
  return priced && !unit && number.value >= 10_000;
}

function isHour({ lead, follow, number, unit }: NumberAt): boolean {
  if (unit) return false;
  // `twenty to eleven right now`
  if (/^(to|past|till|of) \w+ (right now|already|now|in the|this morning)\b/.test(follow))
    return true;
  if (/^(after|till|past)( the hour)?( ,|$)/.test(follow)) return true;
  if (/\b(half|quarter) (past|to|till|after|of)$/.test(lead)) return true;
  if (
    /^([ap] ?m|appointment|meeting|o'clock now|in the (morning|afternoon|evening)|this morning)\b/.test(
      follow,
    )
  )
    return true;
  if (
    /\b(meeting|appointment|lunch|coffee|break|dinner|started|start|done|finished|leave|leaving|here|home|back|be there|parked|got|have|open|wait)( is| was| it| we| by)* (at|by|till|until)$/.test(
      lead,
    ) &&
    (number.style !== "plain" ||
      /\b(meeting|appointment|lunch|coffee|parked|got|have|leave)\b/.test(lead))
  )
    return !/^(feet|foot|on the counter)/.test(follow);
  const minutes = (number.value / 100) % 100;
  const clock =
    number.style === "short" && number.value < 126_000 && [0, 15, 30, 45].includes(minutes);
  return (
    clock &&
    /\b(it's|it is|now|about|around|at|till|until)$/.test(lead) &&
    /^(by|now|right)/.test(follow)
  );
}

/** `maybe forty to go`, `only twenty more and we’re there`, `I’m guessing it’s about eighty to the main`. */
function isToGo({ lead, follow, unit }: NumberAt): boolean {
  if (/^((feet|foot) )?to go\b/.test(follow)) return true;
  if (!unit && /^more (and|before|till|until|to) /.test(follow)) return true;
  return (
    /^((feet|foot) )?(to (the|our|your) |total\b|all told\b|altogether\b)/.test(follow) &&
    /\b(guess|guessing|figure|figuring|supposed|should be|expect|expecting|thinking|bet|estimate)( [\w']+){0,4}$/.test(
      lead,
    )
  );
}

/** `three quarters full`, `a third of the pipe`. */
function isShare({ follow, number }: NumberAt): boolean {
  return (
    !number.parts && number.value <= 900 && /^(quarters?|thirds?|fifths?|eighths?)\b/.test(follow)
  );
}

function isSize({ lead, follow, number }: NumberAt): boolean {
  if (SIZE.test(follow)) return true;
  // `eight inch coming down to six`
  if (/\b(inch|inches)( \w+){0,3} (to|by|down to|up to|or|and)$/.test(lead))
    return number.value <= 1_800;
  const by = /^by (a )?\w+/.test(follow) && !/^by (the|my|your|that)\b/.test(follow);
  return by && number.value < 2_400;
}

const SIZE =
  /^(inch|inches|millimeters?|mm|centimeters?|psi|gallons?|gpm|pounds?|mile|miles|acres?|blocks?)\b/;

/** `in 2009`, `built in nineteen fifty-four`, `since sixty-two`. */
function isYear({ lead, number, unit }: NumberAt): boolean {
  if (unit || number.parts) return false;
  if (
    /\b(twenties|thirties|forties|fifties|sixties|seventies|eighties|nineties)( ,)?( maybe| like| about| or)*$/.test(
      lead,
    )
  )
    return true;
  if (number.value >= 170_000 && number.value <= 209_900) return true;
  const short = number.value >= 2_000 && number.value <= 9_900;
  return (
    short &&
    /\b(since|back in|in|circa|year)$/.test(lead) &&
    !/\b(comes?|coming|come|broke|tied|ties|tie|break|cut|tap|hammer|run|running|stick|sticking|pokes|sticks|zoom|still|go|going|goes|are|is|right|back) in$/.test(
      lead,
    )
  );
}

/** `cleanout’s right by the porch, about three foot off the wall`: where to find it. */
const WHERE_IT_IS =
  /\b(cleanout|manhole|cap|access|box|lid|vent)( [\w']+){0,2} (by|near|beside|behind|along|against|on|next to|in front of) (the|their|your|his|her)( [\w']+){1,5}$/;

/** `ten feet from the oak`, `fifteen feet out in the street`, `twelve feet that way`: nothing that a camera counts from. */
const GROUND =
  "curb|fence|driveway|property line|sidewalk|tree|porch|street|road|lot line|line|edge|hydrant|alley|yard|lawn|ditch";
/** What footage is counted from, and what lies in the pipe. */
const COUNTED_FROM =
  "cleanout|clean|co|main|tap|access|wye|tee|lateral|connection|joint|last|first|crack|offset|house|building|hole|pit|wall|foundation|stack|start|entry|opening|toilet|flange|manhole|city|street|sewer|public|front|back|basement|garage|side|way|yard|one|that|bend|break|belly|two|we|i|camera";
const OFF_ANOTHER = new RegExp(
  [
    String.raw`^(?:, )?(?:(?:away|over|out|back|down|in) )?(?:off|from|behind|outside|in front|left|right|north|south|east|west|(?:this|that|the other) side|inside) (?:of )?(?:the|their|your|his|her|our|my|that|this|here|where|mr|mrs)(?: (?!(?:${COUNTED_FROM})\b)[\w']+| (?=to\b))`,
    String.raw`^(?:out )?in(?:to)? (?:the|their|your|his|her) (?:${GROUND})\b`,
    String.raw`^(?:over )?(?:that|this) way\b`,
    String.raw`^(?:past|shy of|short of|beyond|in front of|inside|behind|off|from|away from) (?:the|their|your|his|her|our|my) (?:\w+ )?(?:${GROUND})\b`,
  ].join("|"),
);

/** `the cleanout is two feet off the house`, `ten feet from the curb`. */
function isOnGround({ lead, follow, unit }: NumberAt): boolean {
  if (!unit) return false;
  if (
    /^(in |out |away )?(off|from) /.test(follow.replace(/^(feet|foot) /, "")) &&
    WHERE_IT_IS.test(lead)
  )
    return true;
  if (OFF_ANOTHER.test(follow)) return true;
  if (/\b(sits?|set|setback|stands?) (way )?back( about| maybe| roughly| like)*$/.test(lead))
    return true;
  return /\b(cleanout|manhole|meter|tree|maple|oak|willow|house|garage|gas line|water line)('s)?( is| sits)?( about| maybe| roughly| like)*$/.test(
    lead,
  );
}

/** `the locator’s reading seven six`. */
const DEPTH_READ =
  /\b(locator|sonde|transmitter|beacon|depth)( (says|reads|reading|shows|showing|has|had|puts|gives|giving|is|s|it|me|that|at|about|roughly))+$/;

/** `How deep is it?`, `Gimme a depth.`, and the answer. */
const DEPTH_ASKED =
  /\b(how deep|(what's|get|got|give me|gimme|need|call) (a|the|me a|your|my|our) depth)( \w+){0,3} ,$/;

/** `it drops to eleven feet at the street`: how low the pipe lies. */
const FALLS =
  /\b(drops?|dropped|falls?|rises?|climbs?|comes? up|goes down|gets)( (off|down|up|out|back))* to( (about|around|maybe|like|roughly))*$/;

/** `you’d be digging twelve feet` */
const DUG =
  /\b(dig|digs|digging|dug|excavate|excavating|trench|trench'd)( (it|this|that|up|out|down|be|is|about|maybe|like|a|another|at least|the))*$/;

/** `frost’s down to four feet`: how deep the ground freezes. */
const FROST = /\b(freez(e|es|ing)|froze|frozen|frost|water table)\b/;

function isDepth({ follow, unit, lead }: NumberAt): boolean {
  if (
    DEPTH_READ.test(lead) ||
    DEPTH_ASKED.test(lead) ||
    (unit && (DUG.test(lead) || FALLS.test(lead) || FROST.test(lead)))
  )
    return true;
  if (!unit) return /^(deep|down from grade)\b/.test(follow);
  return (
    /^(deep|of cover|of dirt|of earth|of fill|in the ground|down (here|there)(?! (is|we|i|there))|below|underground|under the|under it|down below|down (at|under|in) the (street|road|curb|main)|high|tall|wide|down from grade|to grade)\b/.test(
      follow,
    ) ||
    /\b(depth|deep|buried|locat(e|es|ing) (it |this )?at|located (it )?at|sonde)( is| of| at| about)*$/.test(
      lead,
    )
  );
}

/** `bring the long rod, 150 feet`, `the short reel’s eighty feet`: as long as it is. */
const TOOL =
  /(?<!\b(on|of|by|off|counter|my) (the |my )?)\b(rods?|cable|snake|hose|auger|reel|push rod)( (is|are|has|have|only|about|maybe|like|goes|go|got|that's|it's|reaches))*( ,)?( (is|that's|it's|about|maybe|only|like))*$/;

/** `ninety feet of cable`, `118 ft of rod out`, `ran the camera a hundred feet down to the main`. */
function isCable({ follow, unit, lead, number }: NumberAt): boolean {
  const some = /^(some|odd|plus|something)( odd)? (feet|foot)/.test(follow);
  if (!unit && !some) return false;
  if (TOOL.test(lead)) return true;
  const rest = follow.replace(/^((some|odd|plus|something) )*(feet|foot) /, "");
  if (
    /^(more )?(of )?(my |the )?(cable|rod|rods|line out|hose|rope|push rod|pushrod|reel|jetter)\b/.test(
      rest,
    )
  )
    return true;
  const ran =
    /\b(ran|pushed|took me|took us|takes|fed|sent|run)( the| my| our| this| it| about| around| roughly| maybe| a| camera| head| cable| out| us| me)*$/.test(
      lead,
    );
  return (
    ran &&
    number.value > 2_000 &&
    /^(down|out|to|of|in|and|until|till|before|into|through|, and)\b/.test(rest)
  );
}

/** No pipe of a lateral comes in longer pieces, hundredths of a foot. */
const LONGEST_PIECE = 2_000;

/** `three foot joints`, `five foot lengths`; at thirty feet a joint is found. */
function isPieces({ follow, unit, number }: NumberAt): boolean {
  return (
    unit &&
    number.value <= LONGEST_PIECE &&
    /^(pipe|joints?|sections?|pieces?|sticks?|lengths?|diameter|of riser|of this|drop|fall|step|ladder|riser|manhole|vault|pit|ditch|trench|hole|wall|ceiling)\b/.test(
      follow,
    )
  );
}

/** `thirty foot, at a hundred ten a foot`, `sixty a foot, forty feet`, `twenty feet, so two thousand bucks`. */
function isPriced({ lead, follow, unit }: NumberAt): boolean {
  if (!unit) return false;
  return (
    /\b(a|per) (foot|ft)( ,)?$/.test(lead) ||
    /^(, )?(at|times|for|and) ([\w']+ ){1,6}(a|per) (foot|ft)\b/.test(follow) ||
    /^(, )?(so|that's|for|is|comes to|runs|at|you're at)( (about|like|maybe|around))?( [\w']+){1,3} (hundred|thousand|grand|bucks|dollars)\b/.test(
      follow,
    )
  );
}

const PLACED =
  /\b(at|around|about|roughly|approximately|near|reads|reading|says|showing|show|counter|footage|is|that's|it's|we're|i'm|you're|on|past|over|under|of|exactly|say|mark|to|from|between|until|till|through|bout|be|was|called|it|put|puts|now|maybe|only|clear|make|hit|hits|hitting|here's|even|then|still|again|have|see)$/;

const NOUN =
  /^(of (those|these|them|the|us|my|our|your)|houses?|homes?|units?|people|families|places|spots|pieces|pipes|joints|ones|lines|guys|men|man|owners|backups|bids|bathrooms?|families|others|different|separate|way|crew|kids|dogs|or (two|three|four)|in a row|minor|small|little|big|hairlines?)\b/;

/** Nobody counts more of a thing than this in one pipe; `forty, more roots` is read off. */
const MANY = 1_200;

/** `zero roots`: none of them; any other zero is that of the footage. */
const NONE_OF =
  /^(visible |signs of |sign of )?(roots|cracks|issues|problems|taps|tie ins|visibility|defects|offsets|flow|slope|percent|%)(?= |$)/;

/** Small whole numbers without a unit count things, unless they stand where a reading would. */
function isCount(n: NumberAt): boolean {
  const { number, lead, follow, unit } = n;
  if (unit || number.parts) return false;
  if (number.value === 0) return NONE_OF.test(follow);
  if (/\bdozen( \w+)?( ,)?( or| maybe| like)*$/.test(lead)) return true;
  if (NOUN.test(follow)) return true;
  if (number.value <= MANY && /^more\b/.test(follow)) return true;
  // `the eighteen`, `with forty`: named, not read off.
  if (number.value > MANY) {
    const got =
      /\b(got|looks like|look like)$/.test(lead) && /^(,|$|on (it|that|this)\b)/.test(follow);
    // `where it goes back, at the forty-one`
    const there = /\bat the$/.test(lead) && /^(,|$|it's|there's|you|we)/.test(follow);
    return NAMED.test(lead) && !HARDLY_OF.test(lead) && !got && !there;
  }
  if (/\b(make|call|say|called) (that|it|this)$/.test(lead)) return false;
  return isSmallCount(n);
}

/** `just shy of twenty-three` is read off. */
const HARDLY_OF = /\b(shy|short|north|south|side|inside|tick|hair) of$/;
const NAMED =
  /\b(the|a|an|my|his|her|their|our|your|these|those|of|with|for|like|than|in|by|every|all|got)$/;
/** Words in s that are no plurals. */
const SINGULAR =
  /^(is|was|this|abs|us|there's|it's|that's|has|roots|cracks|starts|changes|goes|turns|always|its|here's|looks|kinks)\b/;

/** `Okay, so twelve`: nothing before it in its clause that counts. */
const OPENS = /(^|, )((okay|ok|alright|so|and|now|then|well|um|uh|yeah|yep) ?)+$/;

function isSmallCount({ number, lead, follow, first }: NumberAt): boolean {
  // `three of four`
  if (/(^| )of$/.test(lead) && !/\b(reading|footage|mark|distance|counter) of$/.test(lead))
    return true;
  const read = /\b(counter|footage|reads|reading|at)$/.test(lead);
  if (number.one && (!read || follow === "")) return true;
  if (/^[a-z]{3,}s\b/.test(follow) && !SINGULAR.test(follow)) return true;
  return !(first || OPENS.test(lead) || PLACED.test(lead));
}
