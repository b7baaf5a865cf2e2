import { clauseWords, spanAt, type Talk } from "./said.ts";

/** Who may have said so before; what the speaker himself says is seen. */
const OTHERS =
  "(?:they|he|she|people|folks|neighbors?|owners?|homeowners?|customers?|tenants?|landlord|guys?|crew|company|outfit|plumbers?|contractors?|reports?|seller|buyer|realtor|agent|lady|man|woman|couple|somebody|someone|everybody|inspector)";
const SAID =
  "(?:said|says|say|saying|claims?|claimed|claiming|swears?|swore|thinks?|thought|figured|suspected|reported|reports|mentioned|complained|insists?|insisted|(?:ask(?:s|ed|ing)?|wants? to know|wonder(?:s|ed|ing)?) (?:me|us|him|her|if|whether|is|about|for)|told (?:me|us|them|him|her|you|these|those)|call(?:s|ed) (?:it|this|that|one|these))";
/** `the neighbor said there were roots`, `the last guy called this a belly`. */
const REPORTED = new RegExp(
  String.raw`\b${OTHERS}(?: (?:had|have|has|just|always|also|all|both|next door|before|down there)){0,2} ${SAID}\b|\b(?:supposedly|allegedly|rumor is|word is)\b`,
);
/** `I could have sworn there was a tap`, `I figured we’d see the tap here`. */
const IMAGINED =
  /\b(?:could|would|could've|would've)(?: have)? (?:sworn|bet)\b|\bi(?: (?:had|was|really|honestly|half|kind of|just)){0,2} (?:thought(?! i (?:saw|see))|expected|expecting|figured|assumed|assuming|hoped|hoping|wondered)\b|\b(?:afraid|worried|scared|nervous|hate to|i'd hate|i hope|let's hope|god forbid|lucky|better not)\b/;

/**
 * The word of a clause from which it tells what others said, or what the speaker had thought to see;
 * null where it tells what is there.
 */
export function hearsayFrom(talk: Talk, clause: number): number | null {
  const words = clauseWords(talk, clause);
  const found = REPORTED.exec(words) ?? IMAGINED.exec(words);
  if (!found) return null;
  const before = words.slice(0, found.index + found[0].length).split(" ").length;
  return spanAt(talk, clause).from + before;
}
