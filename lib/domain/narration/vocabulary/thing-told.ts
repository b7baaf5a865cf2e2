import { anyFormOf } from "./forms.ts";
import { isPlain } from "./plain-words.ts";
import { PLAIN_THING } from "./things.ts";
import { ANY, type Construction, OURS } from "./told.ts";

const WHO =
  "(?:houses?|neighbors?|units?(?: \\w+)?|duplex|building|apartments?|garage|shop|kitchen|laundry(?: room)?|bathroom|bath|half bath|powder room|upstairs|basement|addition|downspout|gutter|leader|roof drain|rain drain|yard drain|patio drain|floor drain|area drain|sump(?: pump)?|sink|washer|garage drain|guest house|back house|carriage house|cottage(?: \\w+)?|cabin|trailer|townhouse|condo|store|church|barn|school|salon|restaurant|bakery|office|pool|stairwell|next door)";
/** What is laid under streets and yards besides sewers. */
const UTILITY =
  "(?:gas|water|power|electric(?:al)?|fiber(?: optic)?|phone|telephone|cable(?: tv)?|tv|internet|telecom|sprinkler|irrigation|steam|propane|street ?light)";
const LAID = "(?:services?|lines?|pipes?|mains?|conduits?|ducts?|cables?|feeds?|laterals?|tubing)";
const ACROSS =
  "(?:across|through|thru|crosses|crossing|bored|drilled|punched|pierces|piercing|inside(?: of)? (?:the|our|your|this|a)|in one side|passes|passing)";
const JOINS = `(?:${anyFormOf("come join tie connect enter drop feed dump hook tap run")})`;

const TIE_IN = { ...PLAIN_THING, kind: "tie-in" } as const;
const BROKEN_IN = { ...TIE_IN, fitting: "break-in", describes: true } as const;
const BLOCKAGE = { ...PLAIN_THING, kind: "blockage" } as const;

/** Branches, obstacles and the end of the way, told by a subject and what is said of it. */
export const THINGS_TOLD: readonly Construction[] = [
  {
    // `a chunk of concrete sitting in the invert`
    said: /\b(?:chunks?|hunks?|lumps?|blocks?|blobs?|globs?|stones?|bricks?|slabs?)\b(?: of [\w']+)?(?: [\w']+){0,2}? (?:sitting|laying|lying|stuck|wedged|lodged|resting) (?:in|on|along|at) (?:the|our|your|here|there)\b/g,
    means: () => ({ ...PLAIN_THING, kind: "deposit" }),
    covers: (thing) => thing.kind === "deposit" || thing.kind === "blockage",
  },
  {
    // `a nail through the pipe`, `their cable goes right through our line`
    said: /\b(?:nail|screw|rebar|stake|fence post|post|bolt|cable|wire|conduit|spike|anchor|gas line|water line|auger)\b(?: [\w']+){0,5}? (?:through|thru) (?:the|our|this|your|my) (?:pipe|line|lateral|sewer)\b/g,
    means: () => ({ ...PLAIN_THING, kind: "crossing" }),
  },
  {
    // `a gas service going across inside the pipe`, `fiber duct, in one side and out the other`
    said: new RegExp(
      String.raw`\b(?:${UTILITY} ${LAID}|conduit|duct bank|duct)\b(?: (?!for|to|the|above|below|under|over|off)[\w']+){0,4}? ${ACROSS}\b(?! (?:above|below|under|over|us|the (?:street|road|yard|alley)))`,
      "g",
    ),
    means: () => ({ ...PLAIN_THING, kind: "crossing" }),
    covers: (thing) => thing.kind === "crossing" || thing.kind === "tie-in",
  },
  {
    // `a cable goes straight through, in the right side and out the left`
    said: /\b(?:a|an|another|some|somebody's|someone's|their)(?: [\w']+){0,3}? (?:cable|wire|rod|tube|hose|line|pipe)(?: that)? (?:goes|going|runs|running|went|comes|ran|passes) (?:right |straight |clean |clear )?(?:through|across)\b(?! (?:here|good|fine|there|the (?:wall|floor|basement|house|yard|footing|slab|foundation|street|garage)))/g,
    means: () => ({ ...PLAIN_THING, kind: "crossing" }),
    covers: (thing) => thing.kind === "crossing" || thing.kind === "tie-in",
  },
  {
    // `an abandoned line on the left`, `dead leg off to the right`
    said: /\b(?:abandoned|dead|capped|unused|blind|live|disconnected|active) (?:\w+ )?(?:line|leg|pipe|drain|run|end)\b(?: (?!of|ahead)[\w']+){0,3}? (?:on|off|to|at|from) (?:to )?(?:the|your|my|our) (?:left|right|top|side)\b/g,
    means: () => TIE_IN,
    covers: (thing) => thing.kind === "tie-in",
  },
  {
    // `this is where they hooked up the granny flat`
    said: /\b(?:this is|that's|here's) where (?:they|he|she|somebody|someone|the \w+) (?:hooked|tied|tapped|plumbed|teed|connected|wyed)(?: (?:up|in|into|on|onto))?\b(?! (?:to the (?:main|city)|(?:the|their|this|our|it) (?:new|old|pipe|line|plastic|to|on)))/g,
    means: () => TIE_IN,
    covers: (thing) => thing.kind === "tie-in",
  },
  {
    // `this is unit ten now, on the left`, `the line from the B stairwell joins`
    said: new RegExp(
      String.raw`\b(?:this is|that's|here's|there's|this'll be|that'll be) (?:the |your |their )?${WHO}(?:'s)?(?: (?:now|there|here|again|then))? (?:on|off|up|to|from|over) (?:on )?(?:the|your|my|our) (?:left|right|top)\b|\b(?:line|pipe|drain) (?:from|for|off|out of) (?:the |his |her |their |your )?(?:[\w']+ ){0,2}?${WHO}(?: (?:line|drain|side))? ${JOINS}\b`,
      "g",
    ),
    means: () => TIE_IN,
    covers: (thing) => thing.kind === "tie-in",
  },
  {
    // `another house comes in here`, `this is where unit B joins`, `that’s where the neighbors hook up`
    said: new RegExp(
      String.raw`\b${WHO}(?: (?:line|lateral|pipe|sewer|side))? ${JOINS}(?: (?:right|back))? (?:in|into|on|up|here|right here|from|at|over|through)\b|\bwhere (?:the )?${WHO} ${JOINS}(?: (?:in|up|on|into))?\b|\b(?:somebody|someone)(?: is|'s)?(?: coming| tied| tapped| hooked)? in (?:here|there|on)\b`,
      "g",
    ),
    means: () => TIE_IN,
  },
  {
    // `that’s somebody else’s sewer`
    said: /\b(?:somebody|someone) else(?:'s)? (?:line|sewer|pipe|drain|lateral|tap|connection|house)\b/g,
    means: () => TIE_IN,
  },
  {
    // `a bunch of junk in the bottom`
    said: /\b(?:junk|trash|garbage|crap|goop|mess|stuff|solids|leaves|sticks|toys?)(?: [\w']+){0,3}? (?:(?:sitting|laying|lying|piled|built up)(?: up)? |all )?(?:in|on|along) the (?:bottom|invert|flow line|floor)\b/g,
    means: () => ({ ...PLAIN_THING, kind: "deposit" }),
    covers: (thing) => thing.kind === "deposit",
  },
  {
    // `there’s your neighbor, comes in on the left`
    said: /\b(?:there's|here's|that's|this is) (?:your|the|his|her|our) (?:\w+ )?(?:neighbors?|house next door)(?:'s)?(?= (?:right|on|at|in|coming|comes|came|tied|ties|tying|joins|joining|enters|entering|hooked|tapped|there|here|over|too|off|from|again|i (?:think|bet|guess)|probably|maybe|and|\d+|one|two|three|four|five|six|seven|nine|ten|eleven|twelve|\w*(?:teen|eight|ty))\b|$)/g,
    means: ([words = ""], around) => {
      const next = around.slice(words.length).trim().split(" ")[0] ?? "";
      // `that’s the neighbor’s maple`: something else of his.
      const ends =
        next === "" || isPlain(next) || /^(?:\d|ten$|eleven$|twelve$)|teen$|ty$/.test(next);
      return ends || new RegExp(JOINS).test(next) ? { ...TIE_IN, describes: true } : null;
    },
  },
  {
    // `the connection was made by breaking into the pipe`
    said: new RegExp(
      String.raw`\b(?:breaking|cutting|chopping|hammering|knocking|punching|busting|chiseling|sawing)(?: (?:a hole|it|a pipe|their way))? (?:in|into|through)(?: ${OURS})\b`,
      "g",
    ),
    means: () => BROKEN_IN,
    covers: (thing) => thing.kind === "tie-in" || /^(hole|broken)$/.test(thing.fault ?? ""),
  },
  {
    // `busted a hole in the top and stuck a pipe in it`
    said: new RegExp(
      String.raw`\b(?:bust|knock|broke|punch|chop|cut|chisel|beat|smash|made|poke|drill|core|chip|bang|hammer)(?:ed|ted|d|ped|led)?(?: out| through| themselves| himself)? (?:(?:a|the) hole|(?:in |into )?(?:the|our) (?:pipe|clay|line|wall|tile|side))\b${ANY}{0,7}? (?:stuck|stick|shoved|shove|ran|run|put|jammed|rammed|set|slid|hooked|tied|stabbed|poked|dropped)\b`,
      "g",
    ),
    means: () => BROKEN_IN,
    covers: (thing) => thing.kind === "tie-in" || /^(hole|broken|crack)$/.test(thing.fault ?? ""),
  },
  {
    // `somebody’s pipe poked through the side of ours`, `a four inch just shoved in the top`
    said: /\b(?:pipe|line|drain|inch|piece of (?:abs|pvc|plastic|pipe))\b(?: (?:just|right|is|has|been|that|that's|somebody|they|got|abs|pvc|clay|plastic|iron)){0,3} (?:stuck|poked|poking|shoved|jammed|rammed|stabbed|run|ran|punched|coming|comes|came|pushed|glued|mortared|dumping|dumps|dumped|joins|joining|ties|tied|feeds|feeding|drops|enters|entering) (?:right |straight )?(?:in|into|through|thru|at|on|from)\b(?! (?:the |some )?(?:water|belly|sag|main|city))/g,
    means: () => TIE_IN,
    covers: (thing) => thing.kind === "tie-in" && !thing.describes,
  },
  {
    // `somebody hammered that one in`, `they ran into our pipe with a piece of ABS`
    said: /\b(?:hammered|broke|punched|chopped|knocked|busted|cut|beat|chiseled|jammed|stuck|shoved|stabbed) (?:that|this|it|them|that one|this one|one) in\b|\b(?:ran|tied|went|came|hooked|plumbed|tapped|cut|broke|busted) (?:right |straight )?into (?:our|this|the|my|your) (?:pipe|line|lateral)\b/g,
    means: ([words]) => ({
      ...TIE_IN,
      fitting: / in$/.test(words ?? "") ? "break-in" : "unknown",
      describes: true,
    }),
    covers: (thing) => thing.kind === "tie-in" || thing.fault === "broken",
  },
  {
    // `looks like somebody stuck a two inch in here on top`
    said: /\b(?:stuck|put|shoved|ran|run|jammed|rammed|poked|stabbed|brought|slid|fed) (?:a|an|their|his|her|another|some)(?: (?!hole)[\w'-]+){0,3} (?:inch|pipe|line|plastic|abs|pvc)(?: (?!hole)[\w']+)? (?:in|into|through|thru) (?:here|there|the (?:top|side|pipe|wall|bottom|crown|joint|line)|our|ours|it|on|at)\b/g,
    means: () => TIE_IN,
    covers: (thing) => thing.kind === "tie-in" && !thing.describes,
  },
  {
    // `couldn’t get the camera to go any farther`, `not getting by that`
    said: new RegExp(
      String.raw`\b(?:can't|cannot|couldn't|could not|won't|wouldn't|not|unable to|no way)${ANY}{0,2}? (?:get|go|going|getting|gonna|push|pushing|make|pass|move|fit|squeeze)${ANY}{0,5}? (?:by|past|through|farther|further|around|beyond)\b|\b(?:won't|will not|wouldn't|can't|couldn't) (?:go|budge|move|pass)$|\b(?:up against|run into|ran into|hit|hitting|bumping|against) (?:something|a wall|solid|an obstruction)\b`,
      "g",
    ),
    means: ([words]) =>
      /\b(hardly|barely|almost)\b/.test(words ?? "") ? null : { ...BLOCKAGE, halts: "could-not" },
  },
  {
    // `I’m stopped`, `that’s as far as this goes`
    said: /\b(?:(?:i'm|we're|we are|i am|she's|it's|camera(?: is|'s)?|got) (?:dead |all |just )?(?:stopped|stuck|hung up|jammed|wedged)|(?:that's|this is|that is|that was|it's) (?:about )?(?:as far as|all she|all it|the end of the road|all i can|all we can|where (?:i|we|it|she) (?:stops?|quits?|ends?)))\b/g,
    means: () => ({ ...BLOCKAGE, halts: "ended" }),
  },
  {
    // `something’s blocking the pipe`, `there’s a rock in the way`
    said: new RegExp(
      String.raw`\b(?:something|object|stuff|rock|brick|wad|chunk|plug)\b${ANY}{0,4}? (?:(?:blocking|obstructing|plugging|choking)(?: (?:us|me|it|off|everything)| ${OURS}|$)|in the way|in our way)`,
      "g",
    ),
    means: () => BLOCKAGE,
    covers: (thing) => /^(blockage|deposit)$/.test(thing.kind),
  },
  {
    // `the camera could not be advanced`, `unable to pass`, `survey abandoned`
    said: /\b(?:unable to|could not|couldn't|cannot|can't) (?:be )?(?:pass|continue|advance|proceed|advanced|pushed|continued|passed)(?: (?:any )?(?:farther|further|beyond|past))?\b|\b(?:survey|inspection|run|push)(?: was| is| has been)? (?:abandoned|terminated|cut short)\b/g,
    means: () => ({ ...BLOCKAGE, halts: "could-not" }),
  },
];
