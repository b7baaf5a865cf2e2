import type { SpokenNumber } from "./spoken-number.ts";

/** A number with the words around it. */
export interface NumberAt {
  readonly number: SpokenNumber;
  /** Small letters, one space between: what was said before it in the same breath, at most ten words. */
  readonly lead: string;
  /** What was said behind it in the same sentence, at most eight words. */
  readonly follow: string;
  /** `nine ten’s tap`. */
  readonly possessive: boolean;
  /** The next word begins with a capital, which the first of a sentence would anyway. */
  readonly beforeName: boolean;
  /** The number is the first thing said in its clause. */
  readonly first: boolean;
  /** Feet go with it. */
  readonly unit: boolean;
  /** Its first word as it stands. */
  readonly text: string;
}

const STREET =
  "street|st|st\\.|avenue|ave|ave\\.|lane|ln|row|road|rd|drive|dr|dr\\.|court|ct|alley|way|place|pl|walk|terrace|circle|boulevard|blvd|loop|trail|house|houses|block|building|folks|people|family|lady|guy|place|residence|property|side of";
const BRANCH =
  "wye|wyes|tee|tap|taps|lateral|connection|branch|tie in|line|saddle|y|service|stub|kitchen|house";
/** What a branch is said to belong to: `that’s`, `goes to`, `must be`. */
const BELONGS =
  "that's|that is|that one|that one's|that one is|it's|that'd be|that'll be|would be|should be|must be|gotta be|got to be|has to be|be|to|for|from|feeds|serves|belongs to|goes to|going to|is|was|says|say|said|call|called|or|and";

/** House, lot and unit numbers by the words beside them. */
export function isAddress(n: NumberAt): boolean {
  if (n.unit || n.number.parts || n.number.value === 0) return false;
  if (
    n.possessive ||
    SOMEBODY_AT.test(n.lead) ||
    isSubject(n) ||
    HOUSE_NUMBER.test(n.lead) ||
    isBeforeStreet(n.follow)
  )
    return true;
  const large = n.number.value >= 10_000;
  const leads = LEADS_TO.exec(n.lead);
  // `there’s sand, and that runs back to fifty-three`: no branch goes there.
  if (leads && (/ one$/.test(leads[1] ?? "") || OF_BRANCH.test(n.lead))) return true;
  if (n.beforeName && (large || n.number.style !== "plain")) return true;
  if (!large) return false;
  if (/^(through|thru) \d|^(all|both) share\b/.test(n.follow)) return true;
  return !isReadOut(n) && (AT_HOUSE.test(n.lead) || OWNED.test(n.lead));
}

const OF_BRANCH = new RegExp(String.raw`\b(${BRANCH})\b`);
/** `that one goes to thirty-six`: whose branch it is. */
const LEADS_TO =
  /\b(that one|this one|that|it|tap|wye|tee|lateral|branch|connection|service) (goes|runs|leads|heads|ties|comes)( on| back| over| up| out)? (to|for|from)( number)?$/;
const HOUSE_NUMBER =
  /\b(number|no\.|house|houses|units?|apartments?|apt|lots?|suite|space|buildings?|doors?|address|addresses|#|numbers|residence)( (\w+ )*(and|through|thru|to|or))?$|\b(belongs to|feeds|serves)$/;
/** `the neighbor at 24 wants a copy`. */
const SOMEBODY_AT =
  /\b(neighbors?|folks|lady|guy|man|woman|customer|tenants?|owners?|people|family|couple|kids|renters?|fella|gal|mrs\.?( \w+)?|mr\.?( \w+)?|who) (over )?(at|in|from|of|next door at)$/;
/** `Twenty-six is the red house`, `22 called us`, `24 shares it`: what people do, no footage does. */
const DOES =
  /^(over (there|here)|(is|was|'s) (the|a|that) (\w+ )?(house|place|building|duplex|one with|unit)|wants?|called|calls|lives?|owns?|gets?|shares?|pays?|paid|complain(s|ed)|agreed|refused|signed|won't|hasn't|says (he|she|they|it|that)|flush(es|ed)|moved|backed up|backs up)\b/;

function isSubject({ follow, number }: NumberAt): boolean {
  return number.value > 100 && DOES.test(follow);
}

/** `the cleanout at 211`, `we’re at two oh one`. */
const AT_HOUSE =
  /\b(we're|we are|i'm|here|out|cleanout|neighbors?|folks|house|over|for|garage|yard|duplex|place|customer|mr|mister|mrs|garden|front|back|at the|says|say|said|planter)( (\w+ )?at|)$/;
/** `wye on the right. That’s two oh three.`: whose it is. */
const OWNED = new RegExp(`\\b(${BRANCH})\\b.*\\b(${BELONGS})( probably| maybe| likely)?$`);

function isBeforeStreet(follow: string): boolean {
  return (
    new RegExp(`^(\\w+ )?(${STREET})\\b`).test(follow) &&
    !/^(on|at|in|there's|is|and|with|of|for|to) /.test(follow)
  );
}

/** `on the counter`, `feet`, `from the main`: spoken as a distance whatever its size. */
function isReadOut({ follow, lead }: NumberAt): boolean {
  return (
    /^(on the counter|on the footage|from|off|feet|foot|on it)\b/.test(follow) ||
    /\b(counter|footage|reads|reading|reel|mark|shows)( (is|at|says|reads|shows))?( about| around)?$/.test(
      lead,
    )
  );
}
