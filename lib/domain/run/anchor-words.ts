import type { Anchor, Run } from "../facts/run.ts";
import { formatFeet } from "../length/station.ts";
import type { AnchorProblem, AnchorProblemReason } from "./convert.ts";
import { otherWayWords } from "./footage.ts";

interface Named {
  readonly run: string;
  /** The other way to say what the run is, asked. */
  readonly ask: string;
  /** The anchor in question, and the one before it along the counter. */
  readonly one: string;
  readonly other: string;
  /** Of the one in question. */
  readonly counter: string;
  readonly station: string;
  /** Feet gone by the counter and along the line between the two. */
  readonly counted: string;
  readonly gone: string;
  readonly slack: string;
}

const WORDS: Record<AnchorProblemReason, (named: Named) => string> = {
  "not-a-length": ({ run }) =>
    `A known point of ${run} is not a length in feet; until that is fixed the run has no stations.`,
  "below-main": ({ run, one }) =>
    `${one} of ${run} is below the main connection (station 0); until that is fixed the run has no stations.`,
  "anchors-disagree": ({ run, one, other }) =>
    `${other} and ${one} of ${run} give one counter reading two stations more than 1.0 ft apart; until one is removed the run has no stations.`,
  "anchors-out-of-order": ({ run, one, other, ask }) =>
    `${other} and ${lower(one)} of ${run} run opposite to the way its footage increases. ${ask} Until that or one of the two is fixed the run has no stations.`,
  "anchors-against-way": ({ run, one, other, ask }) =>
    `${other} and ${lower(one)} of ${run} run opposite to the way its footage is said to increase. ${ask} Stations follow the known points meanwhile; left and right can’t be determined until it is settled.`,
  "off-zero": ({ run, one, counter, station }) =>
    `${one} of ${run} does not fit a zero at the main: ${counter} from the main would be station ${counter}, not ${station}. Measured from where the camera went in? Set that on the run, or fix the point; until then the run is relative only.`,
  "anchors-stretched": ({ run, one, other, counted, gone, slack }) =>
    `Between ${lower(other)} and ${lower(one)} of ${run} the counter went ${counted} and the line is ${gone} long: a bigger difference than the 2.0 ft or 10% that a counter may slip. One of the two is probably wrong; until then stations of this run are uncertain by ${slack}.`,
};

/** What is wrong with a run's anchors, named by their readings, with the range that was left. */
export function anchorWords(
  { reason, anchorId, otherId }: AnchorProblem,
  {
    anchors,
    run,
    name,
  }: { readonly anchors: readonly Anchor[]; readonly run: Run; readonly name: string },
): string {
  const anchor = anchors.find(({ id }) => id === anchorId);
  const before = anchors.find(({ id }) => id === otherId);
  const counted = Math.abs((anchor?.counter ?? 0) - (before?.counter ?? 0));
  const gone = Math.abs((anchor?.station ?? 0) - (before?.station ?? 0));
  return WORDS[reason]({
    run: name,
    ask: otherWayWords(run),
    counter: formatFeet(anchor?.counter ?? 0),
    station: formatFeet(anchor?.station ?? 0),
    one: pointWords(anchor),
    other: before ? pointWords(before) : "The zero at the main",
    counted: formatFeet(counted),
    gone: formatFeet(gone),
    slack: `at least ${formatFeet(Math.round(Math.abs(counted - gone) / 20) * 10)}`,
  });
}

/** `The point at 40.0 ft on the counter (station 12.0 ft)`. */
function pointWords(anchor: Anchor | undefined): string {
  if (!anchor) return "A known point";
  return `The point at ${formatFeet(anchor.counter)} on the counter (station ${formatFeet(anchor.station)})`;
}

function lower(text: string): string {
  return text.charAt(0).toLowerCase() + text.slice(1);
}
