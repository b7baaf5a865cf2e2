import type { ReachFinding } from "../findings/reach-finding.ts";

type Pipe = Pick<ReachFinding, "material" | "diameter">;

/** Neighboring reaches that read the same, told as one. */
export interface Section
  extends Pick<
    ReachFinding,
    | "from"
    | "to"
    | "servedBy"
    | "unknownTieIns"
    | "holder"
    | "mender"
    | "menders"
    | "answerable"
    | "citation"
  > {
  /** Ids of what it is made of on the drawing: where each reach begins. */
  readonly starts: readonly ReachFinding["from"][];
  /** Each pipe in it once, from the main up. */
  readonly pipes: readonly Pipe[];
  /** What is said of it beyond what is said of all; empty where nothing is. */
  readonly own: string;
}

interface Sections {
  readonly sections: readonly Section[];
  /** The sentences that are said of every section. */
  readonly common: string;
  /** The source that all rest on; empty where they differ. */
  readonly citation: string;
}

/**
 * The reaches with neighbors joined that agree in owner, in who repairs, in whose flow passes, in who is
 * responsible and in the source; and what is said of all of them, so that it is told once.
 */
export function sectionsOf(reaches: readonly ReachFinding[]): Sections {
  const groups: (readonly ReachFinding[])[] = [];
  for (const reach of reaches) {
    const group = groups.at(-1);
    const last = group?.at(-1);
    if (group !== undefined && last !== undefined && readsLike(last, reach))
      groups[groups.length - 1] = [...group, reach];
    else groups.push([reach]);
  }
  const said = groups.map((group) => [
    ...new Set(group.flatMap(({ reason }) => sentencesOf(reason))),
  ]);
  // Where no one's flow passes, nothing is said of who shares: that unsays nothing of the others.
  const peopled = said.filter((_, at) => isPeopled(groups[at]?.[0]));
  const compared = peopled.length === 0 ? said : peopled;
  const common = (compared[0] ?? []).filter((sentence) =>
    compared.every((all) => all.includes(sentence)),
  );
  const citations = new Set(reaches.map(({ citation }) => citation));
  const [only = ""] = citations;
  return {
    sections: groups.flatMap((group, at) => sectionOf(group, said[at] ?? [], common)),
    common: common.join(" "),
    citation: citations.size === 1 ? only : "",
  };
}

function sectionOf(
  group: readonly ReachFinding[],
  said: readonly string[],
  common: readonly string[],
): Section[] {
  const [first] = group;
  const last = group.at(-1);
  if (first === undefined || last === undefined) return [];
  return [
    {
      ...first,
      to: last.to,
      starts: group.map(({ from }) => from),
      pipes: group.filter((reach, at) => !isSamePipe(group[at - 1], reach)),
      own: said.filter((sentence) => !common.includes(sentence)).join(" "),
    },
  ];
}

function isPeopled(reach: ReachFinding | undefined): boolean {
  return reach !== undefined && reach.servedBy.length + reach.unknownTieIns.length > 0;
}

function readsLike(one: ReachFinding, next: ReachFinding): boolean {
  return one.to === next.from && readingOf(one) === readingOf(next);
}

function readingOf(reach: ReachFinding): string {
  const { holder, mender, menders, servedBy, unknownTieIns, answerable, citation } = reach;
  return JSON.stringify([holder, mender, menders, servedBy, unknownTieIns, answerable, citation]);
}

function isSamePipe(one: Pipe | undefined, other: Pipe): boolean {
  return one?.material === other.material && one.diameter === other.diameter;
}

/** A period ends a sentence where a space and a capital or a quotation mark follow. */
function sentencesOf(reason: string): string[] {
  return reason.split(/(?<=\.) (?=[A-Z“])/).filter((sentence) => sentence !== "");
}
