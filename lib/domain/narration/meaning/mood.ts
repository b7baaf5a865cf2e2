import type { Word } from "../transcript/word.ts";
import { inClause, inSentence, labelOf, type Of, type Said, type Talk, wordsOf } from "./said.ts";
import { partsOf } from "./sentences.ts";

/**
 * Phrases that only lead to what is seen: perception, naming, the speaker’s own next move, and `might be`, `that’ll be`,
 * by which people say what they take a thing for.
 */
const SEEING = new RegExp(
  [
    String.raw`\b(?:can|could|will|'ll|might|should|may|\w+'ll|\w+'d|gotta|have to|has to|need to|want to|going to|gonna|let me|let us|let's|lets|as|till|until)(?: (?:you|we|i|they|one|just|really|kind of|sort of|still|also|always|usually|definitely|almost|probably|actually|even|barely|hardly|easily|be able to|like to|have to|go ahead and|can|could|try to|kind|of)){0,3} (?:see|seeing|tell|notice|look|looking|looks|watch|make out|hear|read|say|call|calling|spot|show|point|note|mark|log|put down|write|guess|reckon|figure|describe|zoom|back|pull|turn|spin|pan|tilt|hold (?:here|it|up|on|still|right|a)|stop|pause|rinse|wipe|keep going|keep pushing|go (?:past|by|back|on|up|down|through|over|around|slow|ahead)|get (?:past|by|closer|a (?:picture|still|shot|look|better|good)|around|through|back|up|over|the light|rid)|come (?:around|back|up)|move|pass|push|take a (?:picture|look|still|shot))\b`,
    String.raw`\b(?:if|when) (?:you|we|i)(?: just| really| can| ever)? (?:look|watch|notice|zoom|squint|pause|turn|freeze|slow|ask|remember|recall|seen|saw)\b|\bif i(?:'m| am|'d| had to (?:say|guess|call|pick))\b|\b(?:that's|this is) what [\w']+(?: [\w']+)? looks? like\b|\b(?:not|ain't|isn't) supposed to be\b`,
    String.raw`\b(?:that|this|these|those|which)(?:'ll| will|'d| would| has to| gotta| must| might| may| could| is going to| is gonna)?(?: have)?(?: (?:to|gonna|going to|got to|gotta))? be(?:en)?\b`,
    String.raw`\b(?:that's|this is|here's)(?: probably| likely| just)? (?:going to|gonna|got to|gotta) be\b`,
    String.raw`\b(?:might|may|could|must)(?: very well| also| even| just| actually)? (?:have been|be)\b(?! (?:worse|able))`,
    String.raw`\b(?:i'd|we'd|i would|we would) (?:have to )?(?:say|call|guess|note|put (?:it|that|this|him|her|them|those)|describe|rate|reckon|figure)\b`,
  ].join("|"),
  "g",
);

/** Nobody digs up, cuts or lines what only now is seen. */
const REPAIR = String.raw`\b(?:dig|digging|fix|fixing|repair|repairing|cut|cutting|lining|reline|relining|replace|replacing|jetting|patching|treat|(?<=\b(?:to|would|could|should|can|gonna|i'd|we'd|you|we|i|and|or|just) )(?:line|jet|snake|rod|patch))(?: (?:up|out|through))? (?:the|those|these|them|your|both|all)\b`;

/** From here on it is told what would, could, should or always does happen, or why. */
const MOOD = new RegExp(
  [
    // what is so in general
    String.raw`(?<=^(?:(?:so|well|and|but|yeah|no|because|see) ){0,2}an? [a-z]+ )(?:never|don't|doesn't|can't|won't)\b|\b(?:always|usually|sometimes|typically|typical|generally|normally|often|in general|as a rule|times out of|scale of|whenever|every time|any time|tends? to|most (?:of )?(?:the |these |those )?(?:houses|people|lines|pipes|laterals|joints|places|folks)|every (?:second|third|other|house|single)|(?:is|are) good for|what happens|any [\w']+ is|a place (?:for|where)|you never|never want)\b`,
    String.raw`^(?:(?:so|well|and|but|yeah|no|because|see) )*(?!(?:this|us|yes|guys|boss)\b)[a-z]+s (?:don't|do not|never|won't|can't|aren't|do|will)\b|\b(?:you|they) (?:can't|cannot|don't|won't|never)(?! (?:even |hardly |really )*(?:see|tell|make|get|know)\b)|\bthe thing (?:about|with)\b|\b(?:two|three|all) kinds of\b|\b(?:a|the|that) saying\b|\ba (?:robot|machine|cutter|guy|crew|plumber|contractor) (?:goes|comes|gets|cuts|runs)\b|\b(?:we|i|they|you) only (?:do|go|look|run|clean|cut|work|take|come)\b`,
    // why, and what of it
    String.raw`\b(?:that's|that is|which is|this is|it's) (?:what|how|why|because|from|due|caused|where (?:the|all the|all your|your|those|these))\b(?! (?:i|we) (?:see|saw|got|have|found|was|were|am|are|call|called|mean|meant)\b)(?! (?:here|there|about|\d|one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|\w+teen|\w+ty)\b)`,
    // what could, would, should or must happen
    String.raw`\b(?:will|won't|would|wouldn't|would've|should|should've|shouldn't|could|could've|might|may|must|ought|gonna|going to|gotta|[\w']+'ll|(?:it|they|he|she|we|you|i|that|who|there)'d|needs?(?: to| a| some| that| it)?|needed|ha(?:ve|s) to|had to|wants? (?:to|a|some|it)|let's|hope|hopefully|recommend\w*|quoted?|bids?|estimates?|supposed to|suggest\w*|better (?:off|to)|prefer|can (?:cause|get|get in|put|run|go|happen|turn|lead|end))\b`,
    // on what condition, and when
    String.raw`\b(?:if|unless|in case|as long as|wait (?:till|until)|otherwise|or else|imagine|(?:so |and |but )?when (?:you|you've|a|it|they|the|your|their|there's)|eventually|sooner or later|(?:one|some) day|someday|down the road|over time|in the long run|next thing you know|before long|give (?:it|that|them)|leave (?:it|that|this)|left (?:alone|like that)|you (?:leave|let|put|throw|flush|wait|keep|end up|wind up)|a matter of)\b`,
    // what is asked
    String.raw`\b(?:you|y'all|you guys|they|we|anybody) (?:got|have|see|seen|seeing|find|get|getting) any\b`,
    // what somebody is told to do
    String.raw`^(?:(?:okay|hey|alright|and|so|now) )*(?:put|hand|grab|bring|throw|pass|fetch|tell|ask)\b(?! (?:it|that|this|them) (?:down|in))`,
    String.raw`^(?:(?:okay|hey|alright|and|so|now|please) )*(?:don't|do not|never) (?:anybody|anyone|nobody|you|let|touch|run|flush|use|open|go|put|jam|dig|ever)\b`,
    // what an opening does, and what is thought of
    String.raw`\blets (?:[\w']+ ){1,3}(?:in|out|by|through|down)\b|\b(?:think|thinks|thinking|thought|talk|talks|talking|talked|ask|asked|asking|dream|dreaming) (?:to (?:him|her|them|you|us|me|the [a-z]+) )?(?:about|of) (?:an?|some|that|doing|getting|putting|lining)\b|\btell an? [\w' ]{1,20} from\b`,
    // what is to be mended
    REPAIR,
    String.raw`\bto be (?!able|honest|fair|sure|clear|safe|seen)\w+(?:ed|ut|ug|ne)\b`,
    // what is sought
    String.raw`\b(?:look(?:ing|s)? for|watch(?:ing)? (?:out )?for|keep an eye|eyes? (?:open|out|peeled)|on the lookout|hunting for|trying to|try to|ready for|wondering|wonder|search(?:ing)? for|remember)\b`,
    // what solids do
    String.raw`\b(?:paper|toilet paper|wipes|grease|sludge|anything|everything|solids|debris|waste|rags|stuff|turds?)(?: [a-z]+)? (?:gets?|hangs?|catch(?:es)?|collects?|settles?|builds?|snags?|piles?|backs?|sticks?|stops?|goes|can't|don't|won't)\b`,
    String.raw`(?:^|(?<=^(?:so|well|and|but|yeah) ))(?:roots|cracks|bellies|people|trees|joints|taps|pipes|offsets|grease|clay) (?:come|go|get|gets|grow|like|likes|love|loves|want|wants|happen|happens|form|do|does|build|builds|look for|find|follow|follows)\b`,
    // what is not there
    String.raw`(?<!point )\b(?:zero|not one|not a single)(?= (?:roots?|cracks?|offsets?|bell(?:y|ies)|breaks?|holes?|taps?|wyes?|tees?|laterals?|connections?|grease|water|scale)\b)|\btoo [\w']+ (?:to|for)\b|\b(?:do not|don't|doesn't|didn't|wouldn't|would not|not|never|nobody|without)(?: (?:really|even|actually|necessarily|gonna|going to|exactly|quite|ever))? (?:think|thinking|believe|consider|calling|saying|hold|holding|show|showing|notice|noticing|seem|spot|count|counting|use|used|using|bother|bothered|put|putting|install|installed)\b`,
    // how it was made
    String.raw`\b(?:was|were) used\b|\bused to\b|\bpaid\b|\b(?:was|were) (?:about|ready|fixing|tempted) to\b|\balmost (?:called|thought)\b|\bthe right way\b|\bthe way the\b`,
  ].join("|"),
  "g",
);

/** Words by which somebody points at what is there. */
const POINTING =
  /\b(there's|there is|here's|here is|right here|right there|you got|you've got|i've got|we've got|we got|i got|we have|i have|see that|see this|i see|i'm seeing|can see|looks like|look at (?:that|this|the)|got (?:a|an|some))\b/;

/** `roots will kill`, `cracks always get worse`: what anything of its kind does. */
const OF_ITS_KIND =
  /^(?:(?:pipe|joint|line|tile|one|hub) )?(?:(?:you|we|they|i) (?:can|could|would|should|might)|always|usually|sometimes|typically|generally|normally|often|never|don't|doesn't|can't|won't|to be|gotta|got to|has to|have to|can|will|would|wouldn't|would've|could|might look|could look|tends?|loves?|likes?|gets?|goes|go|will|gonna|are (?:going to|gonna|good for)|is (?:where|when|how|good for)|do|does|follow|find|finds|happens?|come (?:in|from)|grow|want|form|build)\b/;
/** What is shown and not spoken of in general: `these cracks`, `a few roots`. */
const SHOWN =
  /\b(this|that|these|those|your|slight|little|small|bit of|minor|major|bad|heavy|light|few|couple|another|same|got|see|here|there's|here's)( [a-z]+)?$/;

/** What a fault was taken for that is none. */
const NONE =
  "(?:shadows?|stains?|scratch|scratches|scuffs?|scuff mark|scrapes?|gouge|reflection|glare|light|flash|smudge|smear|streak|leaf|leaves|bubbles?|foam|seam|mold line|cobwebs?|spider|spider ?webs?(?! crack)|strings?|hair|moth|worm|rat|mouse|print|lettering|paint|wipes?|paper|toilet paper|tissue|water line|waterline|discoloration|bug|roach|nothing|lens|camera|trick of the light|piece of (?:string|paper|tape))";
/** `looked like a hole but it’s a shadow`, `a crack. No, it’s a scratch` */
const DISMISSED = new RegExp(
  String.raw`^i don't think so\b|^(?:[\w']+ ){0,7}?(?:it's|its|that's|thats|it is|that is|it was|that was|turned out to be|turns out to be|is|just|only|or)(?: (?:just|only|really|actually|a|an|the|some|my|your|our|old|little|like|on|probably|maybe|might be|of)){0,4} ${NONE}\b|^(?:(?:okay|wait|oh|or|well) )*(?:no|nope|nah|naw)(?: no| wait)* (?:it's not|it isn't|it ain't|that's not|that isn't|that ain't)(?= (?:it's|that's|no)\b|$)`,
);

/** `no it’s not`, `and it isn’t`, said right behind it and of nothing else. */
const NOT_SO =
  /^(?:[\w']+ ){0,2}?(?:\. )?(?:(?:and|but|no|nope|nah|oh|wait) )*(?:(?:it|that) (?:isn't|ain't|wasn't|is not)|(?:it's|that's) not)(?= (?:\.|it's|it is|that's|no|just|skip|never)(?: |$))/;
/** `already, hang on, no, that’s just slush` */
const IS_OTHER =
  /^(?:[\w']+ ){0,2}?(?:\. )?(?:(?:hang on|hold on|wait|oh|okay) )*(?:no|nope|nah) (?:\. )?(?:that's|it's|that was|it was)(?! (?:on |at |about |like |still |not |all |good|a good|\d|the (?:left|right|top|bottom)))/;
/** What a speaker does not write down, he has judged. */
const KEPT_OUT =
  /\b(?:i|we|i'm|i'd|we're|they)(?: really| usually| normally| just)? (?:don't|do not|won't|wouldn't|not|ain't)(?: even| usually| really)? (?:log|logging|write|writing|count|counting|report|reporting|noting|marking|flagging|list|listing|recording)(?: up| down)? (?:it|that|those|them|these|this|fins)\b|\bnot (?:enough|worth|even enough) (?:to )?(?:count|note|log|call|write|mark|report|mention)\w*|\b(?:skip|forget|scratch|strike|never mind|ignore|disregard) (?:it|that|this|those)\b(?! (?:number|footage|one|last))|\bleave (?:it|that|this|those) (?:out|off)\b|\b(?:don't|do not) (?:write|log|count|mark|note) (?:it|that|this|those)\b/;

/** Not sure of it, and it is written down as that. */
const AS_MAYBE =
  /\b(put|mark|write|note|log|call|list|record)(ing|s)? (it|that|this|that one)( (down|up|in))?( as)? (a |an )?(big )?(maybe|possible|possibly|question|questionable|probable|suspect|suspected|potential)\b/;

/** Taken for something and found to be nothing; `isFault` only: a branch is not made of light. */
export function isDismissed(talk: Talk, mark: Said): boolean {
  if (mark.what !== "thing") return false;
  if (mark.thing.kind !== "fault")
    return /^(?:water|deposit)$/.test(mark.thing.kind) && isKeptOut(talk, mark);
  const { words } = talk.speech;
  const behind = words
    .slice(mark.to, mark.to + 16)
    .filter(({ sentence }) => sentence - mark.sentence <= 2)
    .map(({ text }) => text);
  const named = wordsOf(talk, mark.from, mark.to);
  const text = behind.join(" ");
  if (AS_MAYBE.test(wordsOf(talk, mark.to, mark.to + 30))) return false;
  return (
    DISMISSED.test(text) ||
    isKeptOut(talk, mark) ||
    new RegExp(`\\b(?:not|isn't|ain't) (?:really )?(?:a|an) ${named}\\b`).test(text)
  );
}

/** Taken back, or left out of the log, before anything else is told. */
function isKeptOut(talk: Talk, mark: Of<"thing">): boolean {
  const next = talk.said.find(
    (other) =>
      other.from >= mark.to &&
      ((other.what === "thing" && labelOf(other) !== labelOf(mark)) ||
        (other.what === "distance" && other.distance.kind === "at")),
  );
  const end = Math.min(next?.from ?? mark.to + 24, mark.to + 24);
  let text = "";
  for (let at = mark.to; at < end; at += 1) {
    const [last, word] = [talk.speech.words[at - 1], talk.speech.words[at]];
    if (!word || word.sentence - mark.sentence > 3) break;
    text += `${last?.sentence === word.sentence ? "" : ". "}${word.text} `;
  }
  // `No, that’s a hole`: what it is instead takes its place.
  const instead = next?.what === "thing" && next.from < mark.to + 12;
  return NOT_SO.test(`${text}.`) || (!instead && IS_OTHER.test(text)) || KEPT_OUT.test(text);
}

/** Things and materials that are told of, and not as seen here: what would happen, always does, or is to be done. */
export function toldNotSeen(talk: Talk): Set<number> {
  const found = new Set<number>();
  for (const part of partsOf(talk.speech.words)) {
    const first = talk.speech.words.indexOf(part[0] as Word);
    const moods = moodsIn(part.map(({ text }) => text));
    for (const mark of talk.said) {
      if (mark.from < first || mark.from >= first + part.length) continue;
      if (!/^(thing|material)$/.test(mark.what)) continue;
      const at = { from: mark.from - first, to: mark.to - first };
      if (isAhead(talk, mark) || moods.some((mood) => governs(talk, { mark, mood, at, first })))
        found.add(mark.at);
    }
  }
  return found;
}

/** So many things on, what was seen ahead is read off. */
const SOON = 2;

/** `coming up on a crack`, and the crack is read off next: told when the camera is there. */
function isAhead(talk: Talk, mark: Said): boolean {
  if (mark.what !== "thing" || isReadOff(talk, mark, 0)) return false;
  const ahead =
    /\b(coming up (on|to)|comin' up on|getting (close|up) to|approaching)( (a|an|the|some|your|that|another))?( [\w']+)?$/.test(
      wordsOf(talk, mark.from - 6, mark.from),
    ) ||
    /^((way|just|right|up|a little|a ways) )*(ahead|coming up)\b/.test(
      wordsOf(talk, mark.to, mark.to + 4),
    );
  if (!ahead) return false;
  const next = talk.said
    .filter((other) => other.at > mark.at && other.what === "thing")
    .slice(0, SOON);
  return next.some(
    (other) =>
      other.what === "thing" &&
      other.thing.kind === mark.thing.kind &&
      other.thing.fault === mark.thing.fault &&
      inSentence(talk, other.sentence).some(({ what }) => what === "distance"),
  );
}

interface Reach {
  readonly from: number;
  readonly to: number;
  /** `that’s where the`: a branch or another pipe is shown so, what happens there is not. */
  readonly where: boolean;
  /** Told of a repair, footage or not. */
  readonly mends: boolean;
  /** `if`, `leave that alone and`: what then is there is not there now. */
  readonly depends: boolean;
}

const DEPENDS =
  /^(if|unless|in case|(so |and |but )?when|give|leave|left|you (leave|let|put|throw|flush|wait|keep)|next thing|eventually|sooner|before long|someday|down the road|over time)\b/;
/** What the speaker sees himself, whatever he said it depends on. */
const SELF = /\b(i see|i've got|i got|we've got|right here|here's|you can see|looks like)\b/;
const MENDS = new RegExp(`${REPAIR}|^(?:recommend|quote|bid|estimate)`);
const HAPPENS = /^(fault|water|deposit|blockage)$/;

/** Where a sentence leaves what is seen, by its words. */
function moodsIn(words: readonly string[]): Reach[] {
  const text = words.join(" ").replace(SEEING, (seen) => seen.replace(/[^ ]/g, "·"));
  return [...text.matchAll(MOOD)].map((found) => {
    const from = text.slice(0, found.index).split(" ").length - 1;
    return {
      from,
      to: from + found[0].split(" ").length,
      where: / where /.test(found[0]),
      mends: MENDS.test(found[0]),
      depends: DEPENDS.test(found[0]),
    };
  });
}

function governs(
  talk: Talk,
  {
    mark,
    mood,
    at,
    first,
  }: {
    readonly mark: Said;
    readonly mood: Reach;
    readonly at: { readonly from: number; readonly to: number };
    readonly first: number;
  },
): boolean {
  if (at.from >= mood.from) {
    if (mood.where && !HAPPENS.test(kindOf(mark))) return false;
    const between = wordsOf(talk, first + mood.to, mark.from);
    if ((mood.depends ? SELF : POINTING).test(between)) return false;
    return mood.mends || !isReadOff(talk, mark, first + mood.to);
  }
  const behind = wordsOf(talk, mark.to, mark.to + 3);
  if (!OF_ITS_KIND.test(behind)) return false;
  if (!/^(\w+ )?would/.test(behind) && isReadOff(talk, mark, first)) return false;
  if (talk.speech.words[first + mood.from]?.clause !== mark.clause) return false;
  return mood.from - at.to <= 1 && !SHOWN.test(wordsOf(talk, mark.from - 3, mark.from));
}

function kindOf(mark: Said): string {
  return mark.what === "thing" ? mark.thing.kind : mark.what;
}

/** Read off in its clause: whoever gives a footage sees it there. */
function isReadOff(talk: Talk, mark: Said, from: number): boolean {
  return inClause(talk, mark.clause).some(
    (other) => other.what === "distance" && other.distance.kind === "at" && other.from >= from,
  );
}
