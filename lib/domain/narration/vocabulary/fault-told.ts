import { anyFormOf } from "./forms.ts";
import { ANY, type Construction, fault, JOINT, LENGTH, NOT, OURS, tells } from "./told.ts";

const PIECE =
  "(?<!\\band a )(?:pieces?|chunks?|hunks?|slabs?|sections?|parts?|bits?|corner|side|half|wall|spot)";
const OF_PIPE =
  "(?: (?:of|the|a|an|that|this|its|your|our|whole|clay|tile|iron|concrete|pipe|line|bell|hub|wall|joint|collar|top|bottom|side|right|left|here|there|is|are|has|have|been|just|completely|totally|all|on|in|at|or|two))*";
const GONE =
  "missing|gone(?! (?:from|to|into|over to|egg|flat|oval|out of round|bad|soft|rough|crooked)\\b)|(?:broke|broken|busted|fell|fallen|chipped|knocked|come|came|popped|rotted|rusted) (?:off|out|away)|out of (?:it|the|this|that|your|our)";

/** The ground around a pipe. */
const GROUND = "(?:dirt|rocks?|soil|bedding|gravel|ground|earth|backfill|sand|clay bank|mud)";
/** Ground that shows: the wall is through. */
const SOIL = new RegExp(
  [
    String.raw`\b(?:running|flowing|down|sitting|laying|lying) (?:right )?on (?:the |bare )?${GROUND}\b`,
    String.raw`\b(?:see|seeing|looking|exposed|bare|into|nothing but|showing|down to|on to|onto|pure|just|only|that's|it's|all) (?:[\w']+ ){0,3}?${GROUND}\b`,
    String.raw`\b${GROUND}(?: is|'s| are)? (?:coming|falling|pouring|washing|showing|sitting|lying|laying|behind|under|underneath|back there|back|exposed|visible|out there)\b`,
  ].join("|"),
);

/** `no dirt showing`: the wall still holds. */
const NO_SOIL = new RegExp(
  String.raw`\b(?:no|not any|don't see(?: any| the)?|can't see(?: any| the)?|not seeing(?: any)?|ain't no|without) (?:[\w']+ )?${GROUND}\b.*`,
  "g",
);

/** `steps down to six inch`, `drops into the main`: where the pipe goes. */
const NO_WAY_DOWN =
  "(?! (?:down |up |on )?(?:to|into|toward)(?! (?:the )?(?:right|left|one|my|your)))";
const OFF_LINE = `(?:proud|off center|crooked|misaligned|displaced|offset|out of (?:line|alignment|level)|${anyFormOf("slide move cock tilt twist kick shift slip settle sink shear drop step jog")})${NO_WAY_DOWN}`;
/** How far something is off, or that it is. */
const OFF =
  "(?:is|are|that's|it's|pretty|way|little|bit|hair|slightly|inch|looks|all|kind of) off(?! (?:the|of|to|from))";
const TWO_PIPES = `(?:${JOINT}|${LENGTH}|fitting)`;

const APART = `(?:gap(?:ed|ing|ped|ping)|apart|unseated|parted|spread|let(?:ting)? go|(?:back|pull)(?:ed|ing) (?:out|off|back|away|loose)|${anyFormOf("separate")}|${NOT}${ANY}{0,2}? (?:meet|meeting|touching)(?! (?:up|right|even|straight))|${NOT}${ANY}{0,2}? (?:home|seated|closed|tight|together|butted(?: up)?))`;
/** Said of a joint; a pipe that is open is clear. */
const LOOSE = `(?:(?:wide )?open(?:ed)?(?: up)?|${APART})`;

/** In what a spigot sits. */
const SOCKET = "(?:\\w+ )?(?:bell|hub|coupling|socket|fitting|sleeve|joint|fernco|collar)";

const WATER_IN =
  "(?: right| straight| its way)?(?: in (?:right )?(?:here|there))? (?:from|through|in through|thru|in at|in around|in from|in)";

/** Faults that people tell by a subject and what they say of it. */
export const FAULTS_TOLD: readonly Construction[] = [
  // `clear water coming through the wall`, `a stream running in at that joint`
  tells(
    "infiltration",
    String.raw`\b(?:water|groundwater|stream|trickle|spring)\b${ANY}{0,3}? ${anyFormOf("come run get pour squirt leak drip trickle push work enter seep spray")}${WATER_IN}(?: (?:the|that|this|a|your|our))? (?:walls?|joints?|cracks?|sides?|top|crown|roof|pipe|bottom|gap|hole|ceiling|bell|hub)\b`,
    "water infiltration",
  ),
  // `the tree’s found its way in`, `that’s the tree getting in`
  tells(
    "roots",
    String.raw`\b(?:tree|oak|maple|willow|ficus|sycamore|elm|ivy|bush|hedge)\b${ANY}{0,3}? (?:found|made|${anyFormOf("work get grow come poke push find")})(?: (?:its|his|her|their) way)? (?:in|into|through|inside)\b`,
  ),
  // `the tree’s in here`
  tells(
    "roots",
    String.raw`\b(?:tree|willow|oak|maple|elm)(?: is)?(?: all)? in (?:here|there|the pipe|your pipe|our pipe)\b`,
  ),
  // `lost our fall`, `not enough grade`
  tells(
    "belly",
    String.raw`\b(?:${anyFormOf("lose")}|no|without|not (?:much|enough|any)|hardly any)(?: (?:our|its|the|any|all|of|a lot)){0,3} (?:fall|grade|pitch|slope)\b(?! (?:stake|rod))`,
    "water",
  ),
  // `pieces of pipe laying in the bottom`: where from, if not from the pipe
  tells(
    "broken",
    String.raw`\b(?:pieces?|chunks?|shards?|bits|pcs) of (?:(?:the|that|broken|this|old|clay|tile) )*(?:pipe|clay|bell|tile|hub|crown|terracotta|wall)\b${ANY}{0,3}? (?:in|on|along|down)(?: (?:in|on))?(?: (?:the|our))? (?:bottom|invert|flow line|floor|pipe|line|here|there)\b`,
    "deposit blockage broken",
  ),
  // `a shard of clay hanging down`, `a piece of the bell sticking in`
  tells(
    "broken",
    String.raw`\b(?:pieces?|chunks?|shards?|hunks?|slivers?)\b(?: of (?:the |that |your |our )?[\w']+)${ANY}{0,2}? (?:hanging|sticking|poking|dangling|laying over|folded) (?:down|out|in|over|loose)\b`,
  ),
  // `it’s snapped clean in two`, `the pipe’s in pieces`
  tells(
    "broken",
    String.raw`\b(?:snapped|broke|broken)(?: (?:clean|right|all))* (?:in two|in half|through|off at)\b|\b(?:in|to|into) pieces\b|\b(?:pipe|line|bell|hub|clay|tile|it's|it is|she's)\b${ANY}{0,2}? (?:falling|fell|coming) (?:apart|to bits)\b`,
  ),
  // `the rubber gasket’s hanging out`
  tells(
    "open-joint",
    String.raw`\b(?:gasket|o ring|seal)\b${ANY}{0,3}? (?:hanging|sticking|out|rolled|displaced|blown|loose|dangling)\b`,
  ),
  // `pulled out of the bell`, `it’s slid out of the coupling`
  tells(
    "open-joint",
    String.raw`\b${anyFormOf("pull come slide slip back pop work creep move")}(?: back| right| clean| all the way| halfway)? out of (?:the|its|that|this|our) ${SOCKET}\b`,
    "offset-joint",
  ),
  // `a half inch space at the joint`, `a gap between the pipes`
  tells(
    "open-joint",
    String.raw`\b(?:gaps?|space|separation)\b${ANY}{0,3}? (?:in|at|between|of) (?:the|this|that|these|those|our|two)(?: \w+)? (?:joints?|pipes?|bells?|sections?|pieces?|hubs?|tiles?|couplings?)\b`,
  ),
  // `joint here, it’s wide open`, `that joint’s not pushed home`, `the two pieces have come apart`
  {
    ...tells(
      "open-joint",
      String.raw`\b(?:${JOINT}|(?:these|those|the) two)\b${ANY}{0,10}? ${LOOSE}\b|\b${LENGTH}\b${ANY}{0,10}? ${APART}\b`,
    ),
    means: ([words]) => ({ ...fault("open-joint"), many: /^joints/.test(words ?? "") }),
  },
  // `joint’s dropped on us`
  tells(
    "offset-joint",
    String.raw`\b${TWO_PIPES}\b${ANY}{0,6}? (?<!\b${NOT} )(?:${OFF_LINE}|${OFF})\b|\b${JOINT} off\b`,
  ),
  // `the pipes don’t line up at this joint`, `bell and spigot aren’t even`
  tells(
    "offset-joint",
    String.raw`\b${NOT}${ANY}{0,2}? (?:(?:line|lined|lining) up|aligned|(?<!\b(?:don't|didn't|doesn't|never|to) )flush|(?:meet|match|sit)(?:ing)? (?:up|right|even|straight|square|flush))\b(?! (?:with )?(?:my|what)| (?:with )?the (?!spigot|other|next|pipe|bell|hub|last))|\b${TWO_PIPES}\b${ANY}{0,6}? ${NOT}${ANY}{0,2}? (?:straight|even|level|centered|square)\b`,
    "offset-joint open-joint",
  ),
  // `one pipe sits higher than the other`, `off by half a pipe`
  tells(
    "offset-joint",
    String.raw`\b${TWO_PIPES}\b${ANY}{0,6}? (?:higher|lower|above|below)(?: than)?(?: the| this| that)? (?:other|next|last|one|rest|upstream|downstream)\b|\b(?:it's|it is|joint|that's) off by\b`,
  ),
  // `it’s jogged over at the joint`, `drops off at the bell`
  tells(
    "offset-joint",
    String.raw`\b${anyFormOf("jog drop step kick bump shift slip push")} (?:over|down|up|out|off|sideways|left|right)(?: (?:at|on|in)(?: (?:the|this|that))? ${JOINT}| (?:a|that|the)(?: little| small| big)? (?:shelf|ledge|step|lip))\b`,
  ),
  // `it has lost its shape`, `squeezed in on both sides`, `a dent in it`
  tells(
    "deformed",
    String.raw`\b${anyFormOf("lose")} (?:its|the|his|all|any)(?: \w+)? shape\b|\b${anyFormOf("squeeze press bow push bend cave")} in (?:on|from|at) (?:the|both|one|each|its)(?: \w+)? (?:sides?|top)\b|\b(?:dent|kink|bulge|dimple) in (?:it|the|this|that|here|there)\b|\bflat (?:on|across|along) (?:the )?(?:top|bottom|crown)\b`,
    "deformed collapsed",
  ),
  // `you can see the aggregate`, `exposed aggregate`
  tells(
    "worn-surface",
    String.raw`\b(?:see|seeing|exposed|showing|down to)(?: (?:the|some|all))* (?:aggregate|rebar)\b|\b(?:aggregate|rebar)(?: is)? (?:showing|exposed|visible|coming through)\b|\b(?:worn|eaten|rusted|rotted|wore) (?:thin|away|down)\b|\b(?:bottom|invert|floor|flow line|pipe|iron|it's|she's|is|all|been)\b${ANY}{0,1} (?:eat|ate|eaten|et|worn) (?:up|out|away|through)\b|\bsurface(?: is| has)? (?:flaking|peeling|rough|gone|damaged)\b`,
  ),
  // `the surface is coming off`, `coming apart in layers`
  tells(
    "worn-surface",
    String.raw`\b(?:surface|inside|skin|inner layer|layers|face|glaze)(?:'s| is| are)?(?: (?:all|just|kind of|starting to|started))* ${anyFormOf("come peel flake fall slough scale")} (?:off|away|loose)(?: in (?:layers|sheets|flakes|chunks|strips))?\b|\b${anyFormOf("come peel flake fall slough scale")} (?:apart|off|away|loose) in (?:layers|sheets|flakes|strips)\b|\bdelaminat\w+\b`,
    "broken",
  ),
  // `somebody’s put a shovel through it`
  tells(
    "broken",
    String.raw`\b(?:put|stuck|ran|drove|run|shoved|rammed) (?:a|the|his|their) (?:shovel|backhoe|bucket|pick|bar|digging bar|jackhammer|blade|trencher)\b${ANY}{0,2}? (?:through|into|in) (?:it|this|the|that|our|here)\b`,
    "hole crack",
  ),
  // `dirt’s washing in`
  tells(
    "hole",
    String.raw`\b(?:dirt|soil|sand|ground|mud|gravel|bedding|earth)(?: is|'s)?(?: just| actually| been| being)? (?:falling|coming|washing|pouring|spilling|sifting|dropping|leaking) (?:in|through|out)\b`,
    "deposit broken open-joint collapsed",
  ),
  {
    // `a piece of the pipe is missing on the bottom`, `see how the bottom’s gone, you can see rock`
    said: new RegExp(
      String.raw`\b(?:${PIECE}|bottom|floor|invert|top|crown|pipe)\b${OF_PIPE} (?:${GONE})\b|\b(?:missing|lost|losing)(?: (?:a|the|some|its|big|whole|good|little|small)){0,3} (?:${PIECE}|pipe|bottom|floor|invert)\b`,
      "g",
    ),
    means: ([words], around) => {
      if (SOIL.test(around.replace(NO_SOIL, "")) && !/\b(?:broke|broken|busted)\b/.test(around))
        return fault("hole");
      return /^(bottom|floor|invert)\b/.test(words ?? "") ? fault("worn-surface") : fault("broken");
    },
    covers: (thing) => /^(broken|hole|worn-surface)$/.test(thing.fault ?? ""),
  },
  // `chewed up, you can see gravel`: ground where there should be pipe
  tells(
    "hole",
    String.raw`\b(?:see|seeing|looking (?:right )?(?:at|into|out at)|down to|exposed|bare)(?: (?:the|some|bare|just|right|actual|nothing but)){0,2} ${GROUND}\b(?! (?:in|on|along|laying|lying|sitting|at) (?:the )?(?:bottom|pipe|invert|line|here))|\b(?:soil|bedding|dirt|ground)(?: is| was)? (?:visible|exposed|showing)\b`,
    "deposit broken worn-surface collapsed open-joint",
  ),
  // `it sticks into the pipe`, `poking out into our line`
  tells(
    "protruding-tie-in",
    String.raw`\b${anyFormOf("stick poke jut project protrude intrude hang extend stab")}${ANY}{0,3}? (?:into|in to|out in|through)(?: ${OURS})\b|\b(?:it|that|tap|one|pipe|lateral|connection)(?: \w+)? (?:sticks|pokes|hangs|juts|protrudes|intrudes) (?:in|out|down)\b|\b(?:sticks|pokes|juts) (?:down |out |way |up )?in(?:to)? (?:there|here)\b`,
  ),
];
