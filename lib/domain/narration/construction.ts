import type { Fault } from "../facts/run.ts";
import type { Mark } from "./mark.ts";
import { PLAIN_THING, type Thing } from "./things.ts";
import type { Word } from "./word.ts";

/** So many words of the sentence behind belong to what is said of its subject. */
const BEHIND = 14;

/** A stretch of talk by its letters, and the word at each letter. */
interface Stretch {
  readonly text: string;
  /** Index of the word that begins at this letter. */
  readonly starts: ReadonlyMap<number, number>;
  /** Its own words end here; what follows is the sentence behind. */
  readonly own: number;
}

/** A way in which people tell one thing with a subject and what they say of it, in any words between. */
interface Construction {
  readonly said: RegExp;
  readonly means: (found: RegExpMatchArray, around: string) => Thing | null;
  /** Things named within it that are this one in other words. */
  readonly covers: (thing: Thing) => boolean;
}

function fault(name: Fault): Thing {
  return { ...PLAIN_THING, kind: "fault", fault: name };
}

const ANY = String.raw`(?: [\w']+)`;
const NOT = "(?:not|isn't|ain't|wasn't|never|didn't|don't|doesn't)";
const PIECE = "pieces?|chunks?|hunks?|slabs?|sections?|parts?|bits?|corner|side|half|wall";
const OF_PIPE =
  "(?: (?:of|the|a|an|that|this|its|your|our|whole|clay|tile|iron|concrete|pipe|line|bell|hub|wall|joint|collar|top|bottom|side|right|here|there|is|are|has|have|been|just|completely|totally|all|on|in|at|or|two))*";
const GONE =
  "missing|gone|(?:broke|broken|busted|fell|fallen|chipped|knocked|come|came|popped|rotted|rusted) (?:off|out|away)|out of (?:it|the|this|that|your|our)";

const WHO =
  "(?:houses?|neighbors?|units?(?: \\w+)?|duplex|building|apartments?|garage|shop|kitchen|laundry|bathroom|addition|guest house|back house|next door)";

/** Ground that shows: the wall is through. */
const SOIL =
  /\b(?:running|flowing|down|sitting|laying|lying) (?:right )?on (?:the |bare )?(?:dirt|soil|rocks?|gravel|ground)\b|\b(see|seeing|looking|exposed|bare|into|nothing but|showing|down to|on to|onto)( [\w']+){0,3}? (dirt|rocks?|soil|bedding|gravel|ground|earth|backfill|sand)\b|\b(dirt|soil|gravel|bedding|sand|rocks?|mud)( is|'s)? (coming|falling|pouring|washing|showing|sitting|lying|laying|behind|under|underneath)\b/;

const CONSTRUCTIONS: readonly Construction[] = [
  {
    // `clear water coming through the wall`, `a stream running in at that joint`
    said: /\b(?:water|groundwater|stream|trickle)\b(?: [\w']+){0,3}? (?:coming|comes|running|runs|getting|gets|pouring|squirting|leaking|dripping|trickling|pushing|working|entering)(?: right| straight| its way)? (?:through|in through|thru|in at|in around|in from) (?:the |that |this |a |your |our )?(?:walls?|joints?|cracks?|side|sides|top|crown|roof|pipe|bottom|gap|hole|ceiling|bell|hub)\b/g,
    means: () => fault("infiltration"),
    covers: (thing) => thing.kind === "water" || thing.fault === "infiltration",
  },
  {
    // `the tree’s found its way in`
    said: /\b(?:tree|oak|maple|willow|ficus|sycamore|elm|ivy|bush|hedge)\b(?: [\w']+){0,3}? (?:found|made|making|worked|working|gotten|got|growing|grown|come|coming|poking|pushed)(?: (?:its|his|her|their) way)? (?:in|into|through|inside)\b/g,
    means: () => fault("roots"),
    covers: (thing) => thing.fault === "roots",
  },
  {
    // `a chunk of concrete sitting in the invert`
    said: /\b(?:chunks?|hunks?|lumps?|blocks?|blobs?|globs?|stones?|bricks?|slabs?)\b(?: of [\w']+)?(?: [\w']+){0,2}? (?:sitting|laying|lying|stuck|wedged|lodged|resting) (?:in|on|along|at) (?:the|our|your|here|there)\b/g,
    means: () => ({ ...PLAIN_THING, kind: "deposit" }),
    covers: (thing) => thing.kind === "deposit" || thing.kind === "blockage",
  },
  {
    // `a shard of clay hanging down`, `a piece of the bell sticking in`
    said: /\b(?:pieces?|chunks?|shards?|hunks?|slivers?)\b(?: of (?:the |that |your |our )?[\w']+)(?: [\w']+){0,2}? (?:hanging|sticking|poking|dangling|laying over|folded) (?:down|out|in|over|loose)\b/g,
    means: () => fault("broken"),
    covers: (thing) => thing.fault === "broken",
  },
  {
    // `the rubber gasket’s hanging out`
    said: /\b(?:gasket|o ring|seal)\b(?: [\w']+){0,3}? (?:hanging|sticking|out|rolled|displaced|blown|loose|dangling)\b/g,
    means: () => fault("open-joint"),
    covers: (thing) => thing.fault === "open-joint",
  },
  {
    // `a nail through the pipe`, `their cable goes right through our line`
    said: /\b(?:nail|screw|rebar|stake|fence post|post|bolt|cable|wire|conduit|spike|anchor|gas line|water line|auger)\b(?: [\w']+){0,5}? (?:through|thru) (?:the|our|this|your|my) (?:pipe|line|lateral|sewer)\b/g,
    means: () => ({ ...PLAIN_THING, kind: "crossing" }),
    covers: (thing) => thing.kind === "crossing",
  },
  {
    // `somebody’s put a shovel through it`
    said: /\b(?:put|stuck|ran|drove|run|shoved|rammed) (?:a|the|his|their) (?:shovel|backhoe|bucket|pick|bar|digging bar|jackhammer|blade|trencher)\b(?: [\w']+){0,2}? (?:through|into|in) (?:it|this|the|that|our|here)\b/g,
    means: () => fault("broken"),
    covers: (thing) => /^(broken|hole|crack)$/.test(thing.fault ?? ""),
  },
  {
    // `dirt’s washing in`
    said: /\b(?:dirt|soil|sand|ground|mud|gravel|bedding|earth)(?: is|'s)?(?: just| actually| been| been)? (?:falling|coming|washing|pouring|spilling|sifting|dropping|leaking) (?:in|through|out)\b/g,
    means: () => fault("hole"),
    covers: (thing) =>
      thing.kind === "deposit" || /^(hole|broken|open-joint|collapsed)$/.test(thing.fault ?? ""),
  },
  {
    // `another house comes in here`, `this is where unit B joins`
    said: new RegExp(
      String.raw`\b${WHO}(?: (?:line|lateral|pipe|sewer|side))? (?:comes?|coming|came|joins?|joining|ties|tied|connects?|connected|enters?|drops?|feeds?|dumps?) (?:in|into|on|here|right here|from|at|over|through)\b|\bwhere (?:the )?${WHO} (?:comes in|joins|ties in|connects|enters)\b`,
      "g",
    ),
    means: () => ({ ...PLAIN_THING, kind: "tie-in", describes: false }),
    covers: (thing) => thing.kind === "tie-in",
  },
  {
    // `joint here, it’s wide open`, `that joint’s not pushed home`
    said: new RegExp(
      String.raw`\b(?:joints?|bell|hub|seam)\b${ANY}{0,10}? (?:(?:wide )?open|opened|gap(?:ed|ing|ped|ping)|apart|separat(?:ed|ing)|unseated|spread|parted|let go|letting go|${NOT}${ANY}{0,2}? (?:meet|meeting|touching)|${NOT}${ANY}{0,2}? (?:home|seated|closed|tight|together))\b`,
      "g",
    ),
    means: ([words]) => ({ ...fault("open-joint"), many: /^joints/.test(words ?? "") }),
    covers: (thing) => thing.fault === "open-joint",
  },
  {
    // `joint’s dropped on us`, `the pipes don’t line up at this joint`
    said: new RegExp(
      String.raw`\b(?:joints?|pipes?|bell|hub|coupling|fitting|sleeve)\b${ANY}{0,6}? (?:proud|slid|off center|not straight|moved|cocked|crooked|tilted|twisted|kicked|shifted|slipped|settled|sunk|sank|sheared|dropped|stepped|misaligned|(?:is|are|that's|it's|pretty|way|little|bit|hair|slightly|inch|looks) off|out of (?:line|alignment|level)|${NOT}${ANY}{0,2}? (?:line|lined|lining) up)\b`,
      "g",
    ),
    means: () => fault("offset-joint"),
    covers: (thing) => thing.fault === "offset-joint",
  },
  {
    // `a piece of the pipe is missing on the bottom`, `see how the bottom’s gone, you can see rock`
    said: new RegExp(
      String.raw`\b(?:${PIECE}|bottom|floor|invert|top|crown)\b${OF_PIPE} (?:${GONE})\b|\b(?:missing|lost|losing)(?: (?:a|the|some|its|big|whole|good|little|small)){0,3} (?:${PIECE})\b`,
      "g",
    ),
    means: ([words], around) => {
      if (SOIL.test(around)) return fault("hole");
      return /^(bottom|floor|invert)\b/.test(words ?? "") ? fault("worn-surface") : fault("broken");
    },
    covers: (thing) => /^(broken|hole|worn-surface)$/.test(thing.fault ?? ""),
  },
  {
    // `chewed up, you can see gravel`: ground where there should be pipe
    said: /\b(?:see|seeing|looking (?:right )?(?:at|into|out at)|down to|exposed)(?: (?:the|some|bare|just|right|actual|nothing but)){0,2} (?:dirt|rocks?|soil|bedding|gravel|ground|earth|backfill)\b(?! (?:in|on|along|laying|lying|sitting|at) (?:the )?(?:bottom|pipe|invert|line|here))/g,
    means: () => fault("hole"),
    covers: (thing) =>
      thing.kind === "deposit" || /^(broken|hole|worn-surface|collapsed)$/.test(thing.fault ?? ""),
  },
  {
    // `busted a hole in the top and stuck a pipe in it`
    said: new RegExp(
      String.raw`\b(?:bust|knock|broke|punch|chop|cut|chisel|beat|smash|made|poke|drill|core|chip|bang|hammer)(?:ed|ted|d|ped|led)?(?: out| through| themselves| himself)? (?:a|the) hole\b${ANY}{0,7}? (?:stuck|shoved|ran|run|put|jammed|rammed|set|slid|hooked|tied|stabbed|poked|dropped)\b`,
      "g",
    ),
    means: () => ({ ...PLAIN_THING, kind: "tie-in", fitting: "break-in", describes: true }),
    covers: (thing) => thing.kind === "tie-in" || /^(hole|broken|crack)$/.test(thing.fault ?? ""),
  },
  {
    // `somebody’s pipe poked through the side of ours`, `a four inch just shoved in the top`
    said: /\b(?:pipe|line|inch|piece of (?:abs|pvc|plastic|pipe))\b(?: (?:just|right|is|has|been|that|that's|somebody|they|got|abs|pvc|clay|plastic|iron)){0,3} (?:stuck|poked|poking|shoved|jammed|rammed|stabbed|run|ran|punched|coming|comes|pushed|glued|mortared) (?:right |straight )?(?:in|into|through|thru)\b/g,
    means: () => ({ ...PLAIN_THING, kind: "tie-in" }),
    covers: (thing) => thing.kind === "tie-in" && !thing.describes,
  },
  {
    // `somebody hammered that one in`, `they ran into our pipe with a piece of ABS`
    said: /\b(?:hammered|broke|punched|chopped|knocked|busted|cut|beat|chiseled|jammed|stuck|shoved|stabbed) (?:that|this|it|them|that one|this one|one) in\b|\b(?:ran|tied|went|came|hooked|plumbed|tapped|cut|broke|busted) (?:right |straight )?into (?:our|this|the|my|your) (?:pipe|line|lateral)\b/g,
    means: ([words]) => ({
      ...PLAIN_THING,
      kind: "tie-in",
      fitting: / in$/.test(words ?? "") ? "break-in" : "unknown",
      describes: true,
    }),
    covers: (thing) => thing.kind === "tie-in" || thing.fault === "broken",
  },
  {
    // `looks like somebody stuck a two inch in here on top`
    said: /\b(?:stuck|put|shoved|ran|run|jammed|rammed|poked|stabbed|brought|slid|fed) (?:a|an|their|his|her|another|some)(?: (?!hole)[\w'-]+){0,3} (?:inch|pipe|line|plastic|abs|pvc)(?: (?!hole)[\w']+)? (?:in|into|through|thru) (?:here|there|the (?:top|side|pipe|wall|bottom|crown|joint|line)|our|ours|it|on|at)\b/g,
    means: () => ({ ...PLAIN_THING, kind: "tie-in" }),
    covers: (thing) => thing.kind === "tie-in" && !thing.describes,
  },
  {
    // `couldn’t get the camera to go any farther`, `not getting by that`
    said: new RegExp(
      String.raw`\b(?:can't|cannot|couldn't|could not|won't|wouldn't|not|unable to|no way)${ANY}{0,2}? (?:get|go|going|getting|gonna|push|pushing|make|pass|move|fit|squeeze)${ANY}{0,5}? (?:by|past|through|farther|further|around|beyond)\b|\b(?:won't|will not|wouldn't|can't|couldn't) (?:go|budge|move|pass)$|\b(?:up against|run into|ran into|hit|hitting|bumping|against) (?:something|a wall|solid|an obstruction)\b`,
      "g",
    ),
    means: ([words]) =>
      /\b(hardly|barely|almost)\b/.test(words ?? "")
        ? null
        : { ...PLAIN_THING, kind: "blockage", halts: "could-not" },
    covers: (thing) => thing.kind === "blockage",
  },
  {
    // `I’m stopped`, `that’s as far as this goes`
    said: /\b(?:(?:i'm|we're|we are|i am|she's|it's|camera(?: is|'s)?|got) (?:dead |all |just )?(?:stopped|stuck|hung up|jammed|wedged)|(?:that's|this is|that is|that was|it's) (?:about )?(?:as far as|all she|all it|the end of the road|all i can|all we can|where (?:i|we|it|she) (?:stops?|quits?|ends?)))\b/g,
    means: () => ({ ...PLAIN_THING, kind: "blockage", halts: "ended" }),
    covers: (thing) => thing.kind === "blockage",
  },
];

/**
 * The marks with what is told by constructions: a subject, and what is said of it. A mark stands at
 * its subject; what names the same within its words is dropped.
 */
export function withConstructions(marks: readonly Mark[], words: readonly Word[]): Mark[] {
  let whole = [...marks];
  for (const stretch of stretchesOf(words))
    for (const one of CONSTRUCTIONS)
      for (const found of stretch.text.matchAll(one.said))
        whole = withFound(whole, words, { stretch, one, found });
  return whole;
}

function withFound(
  marks: Mark[],
  words: readonly Word[],
  {
    stretch,
    one,
    found,
  }: {
    readonly stretch: Stretch;
    readonly one: Construction;
    readonly found: RegExpMatchArray;
  },
): Mark[] {
  const start = found.index ?? 0;
  const head = stretch.starts.get(start);
  const from = head === undefined ? undefined : pastMeasures(marks, head);
  const last = stretch.starts.get(found[0].lastIndexOf(" ") + 1 + start);
  if (from === undefined || last === undefined || start >= stretch.own) return marks;
  const thing = one.means(found, stretch.text.slice(start, start + found[0].length + 60));
  const inside = (mark: Mark) => mark.to > from && mark.from <= last;
  const named = marks.filter((mark) => inside(mark) && mark.what === "thing");
  const other = named.some((mark) => mark.what === "thing" && !one.covers(mark.thing));
  if (thing === null || other) return marks;
  const same = named.some((mark) => mark.what === "thing" && isAlike(mark.thing, thing));
  if (same) return marks;
  const again = isTold(marks, words, { from, one });
  const mark: Mark[] = again ? [] : [{ what: "thing", thing, from, to: from + 1 }];
  const left = marks.filter(
    (old) =>
      !(
        inside(old) &&
        (old.what === "thing" ||
          (old.what === "turn" && (thing.kind === "blockage" || old.turn === "change")))
      ) && !(old.from <= from && old.to > from),
  );
  return [...left, ...mark].sort((a, b) => a.from - b.from);
}

/** The word at which a mark can stand without covering a size or a distance. */
function pastMeasures(marks: readonly Mark[], head: number): number {
  const over = marks.find(
    (mark) => mark.from <= head && mark.to > head && mark.what !== "thing" && mark.what !== "turn",
  );
  return over?.to ?? head;
}

/** `there’s a break in the pipe, a piece is missing, you can see dirt`: the same, told closely. */
function isTold(
  marks: readonly Mark[],
  words: readonly Word[],
  { from, one }: { readonly from: number; readonly one: Construction },
): boolean {
  const before = marks.findLast(
    (mark) => mark.to <= from && (mark.what === "thing" || mark.what === "distance"),
  );
  if (before?.what !== "thing" || before.thing.kind !== "fault" || !one.covers(before.thing))
    return false;
  const [a, b] = [words[before.from], words[from]];
  return a?.breath === b?.breath && (b?.sentence ?? 0) - (a?.sentence ?? 0) <= 1;
}

function isAlike(a: Thing, b: Thing): boolean {
  return a.kind === b.kind && a.fault === b.fault;
}

/** Every sentence with the beginning of the one behind it in the same breath. */
function stretchesOf(words: readonly Word[]): Stretch[] {
  const stretches: Stretch[] = [];
  for (let from = 0; from < words.length; ) {
    const { sentence, breath } = words[from] ?? { sentence: -1, breath: -1 };
    let to = from;
    while (words[to]?.sentence === sentence) to += 1;
    let end = to;
    while (
      end < to + BEHIND &&
      words[end]?.breath === breath &&
      (words[end]?.sentence ?? 0) <= sentence + 1
    )
      end += 1;
    stretches.push(stretchOf(words, from, { to, end }));
    from = to;
  }
  return stretches;
}

function stretchOf(
  words: readonly Word[],
  from: number,
  { to, end }: { readonly to: number; readonly end: number },
): Stretch {
  const starts = new Map<number, number>();
  let text = "";
  let own = 0;
  for (let at = from; at < end; at += 1) {
    if (text !== "") text += " ";
    starts.set(text.length, at);
    text += words[at]?.text ?? "";
    if (at === to - 1) own = text.length;
  }
  return { text, starts, own };
}
