import { agreementExtent, agreementName } from "../agreement/agreement-standing.ts";
import type { SplitChoice, SplitRule } from "../facts/split.ts";
import { formatFeet, plainFeet } from "../length/station.ts";
import { formatCents } from "../money/format-cents.ts";
import { sayList } from "../say/say-list.ts";
import type { Ground } from "../sharing/ground.ts";

export const RULE_TITLES: Record<SplitRule, string> = {
  equal: "Equal shares",
  "per-unit": "By dwelling and business units",
  "portion-used": "By portion used",
  "upstream-of-fault": "Upstream of the defect",
  "reach-owner": "By owner of each section",
  weights: "By weights",
  "recorded-shares": "Recorded shares",
  "single-payer": "Single payer",
};

type Words = (ground: Ground, choice: SplitChoice) => string;

const RULE_WORDS: Record<SplitRule, Words> = {
  equal: () => "Each connected property pays the same for the shared pipe.",
  "per-unit": (ground) =>
    `Each dwelling or business unit pays the same for the shared pipe.${unitsAssumed(ground)}`,
  "portion-used": () => "Each foot is shared equally by those whose flow passes it.",
  "upstream-of-fault": (_, { faultStation }) =>
    faultStation === null
      ? "Those whose flow passes the defect share equally; those who connect below it pay nothing."
      : `Those who connect at or above the defect at ${formatFeet(faultStation)} share equally; those who connect below it pay nothing.`,
  "reach-owner": () =>
    "Each pays for the pipe from its own tie-in down to the next one; the lowest pays down to the main.",
  weights: () => "Each pays in proportion to the weight entered for it.",
  "recorded-shares": (ground) => `Each pays the shares the agreement states.${agreements(ground)}`,
  "single-payer": (ground, { payerId }) => {
    const index = ground.indexOf.get(payerId ?? "");
    const payer = index === undefined ? undefined : ground.people[index];
    return `${payer?.label ?? "One property"} pays for everything without its own rule or payer.`;
  },
};

/** The rule in one sentence, and what must be known with it on this line. */
export function ruleSentence(ground: Ground, choice: SplitChoice): string {
  const notes = [leaving(ground), unknownOwners(ground, choice), authorityPart(ground)];
  return [RULE_WORDS[choice.rule](ground, choice), ...notes]
    .filter((note) => note !== "")
    .join(" ");
}

function unitsAssumed(ground: Ground): string {
  const assumed = ground.connected
    .flatMap((index) => ground.people[index] ?? [])
    .filter((person) => person.unitsAssumed);
  if (assumed.length === 0) return "";
  const counts =
    assumed.length === 1 ? "has no units entered and counts" : "have no units entered and count";
  return ` ${sayList(assumed.map((person) => person.label))} ${counts} as one${assumed.length === 1 ? "" : " each"}.`;
}

function agreements(ground: Ground): string {
  const used = ground.agreements.map(
    (ranked) => `${agreementName(ranked)}, covers ${agreementExtent(ranked.agreement)}`,
  );
  const named = new Set(
    ground.agreements.flatMap(({ agreement }) => agreement.shares.map((share) => share.propertyId)),
  );
  const left = ground.connected
    .flatMap((index) => ground.people[index] ?? [])
    .filter((person) => used.length > 0 && !named.has(person.key))
    .map((person) => person.label);
  const leftOut =
    left.length === 0
      ? ""
      : ` ${sayList(left)} ${left.length === 1 ? "is connected but not named in it and pays" : "are connected but not named in it and pay"} nothing of what it covers.`;
  return used.length === 0 ? "" : ` ${used.join("; ")}.${leftOut}`;
}

/** Rules that can say what an unknown owner's share would be. */
export const COUNTS_UNKNOWN: readonly SplitRule[] = [
  "equal",
  "per-unit",
  "portion-used",
  "upstream-of-fault",
  "reach-owner",
];

/** Who has a line of their own under the option in force, and so shares nothing else. */
function leaving({ leavers, agreements: ranked }: Ground): string {
  if (leavers.length === 0) return "";
  const names = sayList(leavers.map(({ label, because }) => `${label} (${because})`));
  const one = leavers.length === 1;
  const bound = new Set(
    ranked.flatMap(({ agreement }) => agreement.shares.map((share) => share.propertyId)),
  );
  const still = leavers.filter(({ key }) => bound.has(key)).map(({ label }) => label);
  const agreed =
    still.length === 0
      ? ""
      : ` An agreement still names ${sayList(still)}: under recorded shares it counts until it is changed.`;
  return `${names} ${one ? "leaves" : "leave"} the shared line and ${one ? "shares" : "share"} none of the remaining work.${agreed}`;
}

function unknownOwners(ground: Ground, choice: SplitChoice): string {
  const held = ground.connected
    .flatMap((index) => ground.people[index] ?? [])
    .filter((person) => person.propertyId === null);
  const labels = [...held, ...ground.absent].map((person) => person.label);
  if (labels.length === 0) return "";
  const names = sayList(labels);
  const belongs = labels.length === 1 ? "its share" : "their shares";
  if (!COUNTS_UNKNOWN.includes(choice.rule)) {
    return `${names}: this rule gives an unknown owner no share.`;
  }
  return held.length > 0
    ? `${names}: ${belongs} ${labels.length === 1 ? "is" : "are"} set aside until the owner is known.`
    : `${names}: the others cover ${belongs}, recoverable once the owner is known.`;
}

/** Work that lies where the authority answers is shared all the same; that must be seen. */
function authorityPart(ground: Ground): string {
  const theirs = ground.reaches.filter((reach) => reach.authorityCost !== 0);
  if (theirs.length === 0) return "";
  const cost = theirs.reduce((sum, reach) => sum + reach.authorityCost, 0);
  const from = Math.min(...theirs.map((reach) => reach.from));
  const to = Math.max(...theirs.map((reach) => reach.to));
  return `${formatCents(cost)} of the work lies between ${plainFeet(from)} and ${formatFeet(to)}, where this type of work is the authority’s responsibility; it is shared here until the authority accepts it.`;
}
