import { anyFormOf } from "./forms.ts";
import { PLAIN_THING } from "./things.ts";
import { ANY, type Construction, JOINT, LENGTH, tells } from "./told.ts";

/** Whose hair is no root, and how little `a hair` is. */
const NO_ROOT =
  "a|an|my|his|her|your|their|our|dog|dog's|cat|pet|horse|blond|gray|red|no|bad|baby|good|there was|[\\w']*ly|long|short";
/** What a tree sends into a pipe, by what it looks like. */
const STRANDS =
  "(?:strings?|tendrils?|feelers?|threads?|fingers|vines?|spaghetti|noodles|straw|moss|mops?|brooms?|tails?|ponytails?|horsetails?|foxtails?|wigs?|dreadlocks|mustache|fur|grass|curtains?|veil|wreath|bush|shag|fringe|strands?|fibers)";
const HANGS = anyFormOf("come grow hang poke stick reach dangle wave creep push dance");
/** Where roots come in. */
const SEAM = "(?:joints?|bells?|hubs?|tops?|crown|seams?|roof|walls?|sides?|collar|gasket)";
const TREE =
  "(?:tree|oak|maple|willow|ficus|sycamore|elm|ivy|bush|hedge|cottonwood|mulberry|poplar)";

/** The pipe behind the joint. */
const NEXT = `\\b(?:next|far|other|downstream|upstream|incoming|following) (?:one|${LENGTH}|${JOINT})`;
const SITS = `(?:is|was|has|just|kind of|about|maybe|really|way|too|pretty|a|an|half|quarter|inch|little|bit|hair|tad|up and|${anyFormOf("sit stand ride set lay kick jump push drop slide shove cock tip come settle sink stick")})`;
const OFF_HEIGHT =
  "(?:high|higher|low|lower|proud|sideways|crooked|cocked|kicked|settled|sunk|up|down|over)\\b(?! (?:the|there|here|at|by|on|in|ahead|yonder|from))";

/** What stands up before the lens where the next pipe is higher. */
const STEP = "(?:step|curb|ledge|lip|shelf|ridge|threshold|stair step)";
const SIZE =
  "(?:big|little|small|slight|tiny|old|good|inch|half inch|real|nasty|hard|pretty|bit of a)";

/** Where a lens swims. */
const POND =
  "(?:pond|lake|bathtub|tub|pool|swimming pool|bird bath|fish tank|fishbowl|aquarium|swamp|bayou|soup)";

/** Finds that people tell by what they look like. */
export const LOOKS_LIKE: readonly Construction[] = [
  // `hair in every joint`, `58 hair, top`, `at ninety the hair starts`, `here’s the beard`
  tells(
    "roots",
    String.raw`(?<!\b(?:${NO_ROOT}) )\bhair\b(?! (?:in (?:it|there)|cut|cuts|dryer|salon|nets?|dye|clip|ties?|spray|brush|day|of|off|low|high|more|less|too|clog|and (?:soap|grease)|on (?:my|the dog|him|her|it)|all over (?:my|the (?:seat|truck|van|couch)))\b)|(?<!\b(?:my|his|your|grew|growing|grow|uncle's|old|santa) )\b(?:beards?|curtains of (?:it|hair|root))\b(?! of\b)`,
  ),
  // `tendrils poking through the joint`, `a mop hanging out of the joint`
  tells(
    "roots",
    String.raw`\b${STRANDS}\b(?! of (?:water|grease|steam|mud|snot))${ANY}{0,3}? ${HANGS}${ANY}{0,5}? ${SEAM}\b`,
    "roots open-joint",
  ),
  // `those feelers in the joint`, `tree’s got its fingers in here`
  tells(
    "roots",
    String.raw`\b${TREE}(?:'s| is| has)?(?: got| has| stuck| put| reaching)+ (?:its|his|her|some) (?:\w+ )?(?:fingers?|toes?|feet|hands?|hair|nose|arms?|foot)\b`,
  ),
  // `the next one sits high`, `far pipe is down an inch`
  tells("offset-joint", `${NEXT}(?:'s)? (?:${SITS} )*${OFF_HEIGHT}`, "offset-joint deformed"),
  // `the edge of the hub standing up in front of us`
  tells(
    "offset-joint",
    String.raw`\b(?:edge|end|face|rim|shoulder|lip|front) of (?:the|that) (?:next|other|far|hub|bell|downstream|upstream|incoming)(?: (?:one|pipe|piece|tile|length))?${ANY}{0,1} (?:standing|stands|sticking|sticks|sitting|sits|staring|rising|poking|looking|right in front|in front|in my face)\b`,
  ),
  // `a half moon of the next pipe`, `got a crescent on the right side`
  tells(
    "offset-joint",
    String.raw`\b(?:half|quarter|sliver of|three quarter)(?: (?:of|a))* moon\b(?! (?:last|tonight|this|out|over|bay|street|road))|\b(?:a|little|thin|big|see the|fat) crescent\b(?! (?:shaped|wrench|street|roll|city|avenue|moon))`,
  ),
  // `a little step here`, `big old step at the joint`
  tells(
    "offset-joint",
    String.raw`\b(?:(?:a|an|another|got|some) |${SIZE} )+step\b(?! (?:ahead|away|back|stool|ladder|closer|further|farther|by|at a time|in the right|too|son|brother|outside|inside|on|forward))|(?<!\b(?:your|my|his|the|next|one|first|every|each|last|extra) )\bstep$|\b(?:a|an|${SIZE}) ${STEP} (?:at|in|on|here at|right at) (?:the|this|that) ${JOINT}\b`,
  ),
  // `the bottom’s washed out`, `the floor’s like a washboard`
  tells(
    "worn-surface",
    String.raw`\b(?:bottom|floor|invert|channel|flow line)(?:'s| is| has| was|'s been)?${ANY}{0,2}? (?:washed|scoured|scrubbed|gouged|chewed|flaked|gnawed) (?:out|away|up|off|down|thin)\b|\blike (?:a |an |driving on )?(?:washboard|cheese grater|gravel road|sandpaper|rasp|wood rasp|cobblestones?|nail file)\b`,
    "worn-surface broken",
  ),
  // `you can see the stones in it`: those of the concrete itself
  tells(
    "worn-surface",
    String.raw`\b(?:see|seeing|feel|showing|down to)(?: (?:the|some|all|little))* (?:stones?|pebbles?|rocks?|gravel|aggregate) (?:in (?:the (?:concrete|cement|mix|pipe wall|wall))|(?:of|from) the (?:concrete|cement|mix))\b`,
    "worn-surface hole deposit broken",
  ),
  // `a line all the way round the pipe`
  tells(
    "crack",
    String.raw`\b(?:a|thin|fine|dark|black|faint|long|one) line (?:(?:that|running|runs|goes|going|right|all|the|way|clear|straight) )*(?:round|around|along|down|up)(?: (?:the|this|that|whole))+ (?:pipe|top|bottom|crown|side|wall|invert|circumference|left|right|barrel|bell)\b`,
  ),
  // `cracked up, pieces are loose`
  tells(
    "broken",
    String.raw`\b(?:pieces|chunks|it|shards)(?: (?:are|is)|'re|'s)?(?: all| just| kind of)? (?:loose|rocking|wiggling|moving around|about to (?:fall|drop|go))\b`,
    "broken crack",
  ),
  {
    // `a hole off the left with a pipe on it`
    said: /\b(?:hole|opening) (?:off|in|on|to|at|over)(?: (?:to|on))?(?: (?:the|your|our|my))? (?:left|right|side|top|crown|wall)(?: side)?(?: (?:with|and|and there's|that's got|it's got))+ (?:a|an|another|some|his|their|somebody's)(?: \w+)? (?:pipe|line|inch|tee|wye)\b/g,
    means: () => ({ ...PLAIN_THING, kind: "tie-in" }),
    covers: (thing) => thing.kind === "tie-in" || /^(hole|broken)$/.test(thing.fault ?? ""),
  },
  {
    // `we’re in a pond`, `water’s coming up the glass`, `camera’s a submarine`
    said: new RegExp(
      String.raw`\b(?:we're|i'm|we are|i am|lens is|camera's|camera is|she's|head's|still|back) (?:\w+ )?(?:in|into|under) (?:a|the|another|some)(?: \w+)? ${POND}\b|\b(?:there's|got|have|here's|hit) (?:a|another)(?: (?:little|big|whole|regular|real))? ${POND} (?:in here|in the (?:pipe|line)|here)\b|\b(?:camera's|camera is|camera|we're|i'm) (?:a submarine|snorkeling|scuba diving|diving|a fish)\b|\bwater(?:'s| is)? (?:coming|climbing|creeping|rising) up (?:on |over )?(?:the|my|our) (?:glass|lens|camera|walls?|sides?|screen)\b|\b(?:lens|camera|glass|head)(?:'s| is)? getting wet\b`,
      "g",
    ),
    means: () => ({ ...PLAIN_THING, kind: "water" }),
    covers: (thing) => thing.kind === "water" || thing.fault === "belly",
  },
  {
    // `candle wax all over the floor`, `barnacles`, `a shelf of white stuff on both sides`
    said: new RegExp(
      String.raw`\b(?:lard|tallow|wax|icing|oatmeal|slop|slush|goo|goop|chalk|plaster|grout|cottage cheese|coffee grounds|litter|beach|sandbar|dune|snow|crust|white stuff|brown stuff|black stuff)\b${ANY}{0,4}? (?:on|in|along|over|around|from) (?:both|the|this|each|either) (?:bottom|floor|invert|flow line|sides?|walls?|channel|pipe|line|joint)\b|\b(?:barnacles?|crusty|crusted(?: over| up)?|scabby|scabs|caked on)\b|\b(?:shelf|ledge|bank|hump|mound|bed|layer|coat|skin|crust) of (?:(?:white|brown|black|hard|soft|old|that|some|nasty) )*(?:stuff|scale|grease|sand|mud|crud|silt|fat|rust|lime|calcium|soap|sludge)\b`,
      "g",
    ),
    means: () => ({ ...PLAIN_THING, kind: "deposit" }),
    covers: (thing) => thing.kind === "deposit" || thing.fault === "offset-joint",
  },
  // `sides are pushed in`, `shaped like a football`, `narrower than it should be`
  tells(
    "deformed",
    String.raw`\b(?:sides?|walls?)(?: are| is|'s|'re)(?: \w+)? (?:coming|pushed|sucked|squeezed|bowed|closing|pinching|pinched|mashed|bent|caving) in\b|\b(?:shaped|looks|looking|it's|gone|kind of) like an? (?:football|egg|lemon|taco|almond|cat's eye|pear|(?:stepped on|crushed|squashed|smashed|flat|beer)(?: \w+)? can)\b|\bnarrower than (?:it should|it ought|it was|it's supposed|round)\b|\b(?:top|crown|roof)(?:'s| is| has)? (?:come|coming|sagged|sagging|pushed|bowed|mashed|pressed) down\b`,
    "deformed broken",
  ),
  // `roof’s on the floor`, `no pipe left`
  tells(
    "collapsed",
    String.raw`\b(?:roof|top|crown|ceiling)(?:'s| is| of it is| of the pipe is)?(?: (?:all|laying|lying|sitting|down|fell|right|now))? (?:on|in|at) the (?:floor|bottom|invert)\b|\b(?:no pipe|nothing) left (?:here|at all|of (?:it|the pipe))\b|\b(?:just|only) (?:a|dirt|mud) (?:tunnel|cave)\b`,
    "collapsed broken deposit hole",
  ),
  // `top of the joint’s crying`, `it’s raining in here`
  tells(
    "infiltration",
    String.raw`\b(?:${JOINT}|crown|wall|roof)(?:'s| is)?(?: \w+)? (?:crying|sweating|peeing|pissing|spitting|bleeding|squirting|spraying|raining|drooling)\b|\braining in (?:here|the pipe|our pipe|on us)\b`,
  ),
  // `like a jigsaw puzzle`, `a bite out of the bell`
  tells(
    "broken",
    String.raw`\blike an? (?:jigsaw|puzzle|broken (?:plate|pot|flower ?pot|dish|eggshell)|cracked eggshell|dropped (?:plate|pot))\b|\b(?:bite|notch|wedge) (?:out of|missing (?:out of|from)) (?:the|this|that) (?:bell|hub|pipe|tile|wall|clay|lip|rim|edge|collar)\b`,
    "broken crack",
  ),
];
