import type { LineFile } from "../facts/line-file.ts";
import type { CoverageSpan, Report } from "../findings/report.ts";
import { saySpan } from "../length/span.ts";
import { unseenStretches } from "../run/coverage.ts";
import { forCount, sayCount, sayParts } from "../say/count.ts";
import { sayList } from "../say/say-list.ts";
import { type Opening, PRESSING, type Reply, replyWith } from "./reply.ts";

type Unseen = Exclude<CoverageSpan["state"], "seen">;

const UNSEEN_WORDS: Record<Unseen, string> = {
  "under-water": "under water",
  blocked: "blocked",
  "not-in-view": "not in view",
  "not-recorded": "not recorded",
  "not-inspected": "not inspected",
};

/** What it takes to see a stretch after all. */
const REMEDY_WORDS: Record<Unseen, string> = {
  "under-water": "once the water is out",
  blocked: "once it is cleared",
  "not-in-view": "with another camera or from the other end",
  "not-recorded": "and record it",
  "not-inspected": "with another run",
};

const MOST_GAPS = 3;

/** `2 runs, 0 to 88 ft; 41 to 47 ft under water`. */
export function cameraAnswer(file: LineFile, report: Report): Reply {
  if (file.runs.length === 0)
    return replyWith("No camera run yet", [
      {
        closes: "Run the camera through the line and enter what it saw",
        pressing: PRESSING.stalls,
      },
    ]);
  const gaps = unseenStretches(report.coverage).filter(isUnseen);
  const adrift = runsAdrift(file, report);
  const sentence = sayParts([
    [sayCount(file.runs.length, "run"), reachedWords(report)]
      .filter((part) => part !== "")
      .join(", "),
    ...gapWords(gaps),
    adrift.length === 0 ? "" : `${sayList(adrift)} not tied to the main`,
  ]);
  return replyWith(sentence, [...openings(gaps, adrift), ...emptyLog(file)]);
}

interface UnseenSpan extends CoverageSpan {
  readonly state: Unseen;
}

function isUnseen(span: CoverageSpan): span is UnseenSpan {
  return span.state !== "seen";
}

/** From where to where some run was, whether it could see there or not. */
function reachedWords({ coverage }: Report): string {
  const reached = coverage.filter(({ state }) => state !== "not-inspected");
  const [first] = reached;
  const last = reached.at(-1);
  return first === undefined || last === undefined ? "" : saySpan(first.from, last.to);
}

function gapWords(gaps: readonly UnseenSpan[]): string[] {
  const told = gaps.slice(0, gaps.length > MOST_GAPS ? MOST_GAPS - 1 : MOST_GAPS);
  const words = told.map(({ from, to, state }) => `${saySpan(from, to)} ${UNSEEN_WORDS[state]}`);
  const more = gaps.length - told.length;
  return more === 0 ? words : [...words, `${more} more sections not seen`];
}

/** Runs that no reading ties to the main: what they saw has no station. */
function runsAdrift(file: LineFile, report: Report): string[] {
  return file.runs
    .filter(({ id }) => {
      const ran = report.runCoverage.find(({ runId }) => runId === id);
      const own = report.stations.filter(({ runId }) => runId === id);
      return ran?.from == null && own.every(({ station }) => station === null);
    })
    .map(({ name }) => name);
}

/** Nothing that any run saw is on file. */
function emptyLog({ runs, observations }: LineFile): Opening[] {
  if (observations.length > 0) return [];
  const name = runs[0]?.name || "the run";
  return [{ closes: `Enter what ${name} saw`, where: "camera/log", pressing: PRESSING.ordinary }];
}

function openings(gaps: readonly UnseenSpan[], adrift: readonly string[]): Opening[] {
  const open: Opening[] = [];
  if (adrift.length > 0) {
    const [first = "", ...others] = adrift;
    const rest = others.length === 0 ? "" : `, then ${sayList(others)}`;
    const it = forCount(adrift.length, "it has", "they have");
    open.push({
      closes: `Tie ${first} to the main with a reading at a point of known station${rest}; until then ${it} no stations`,
      pressing: PRESSING.stalls,
    });
  }
  const [gap] = gaps;
  // What a run saw that is not tied yet may be just what seems unseen.
  if (gap !== undefined && adrift.length === 0)
    open.push({
      closes: `Inspect ${saySpan(gap.from, gap.to)} again ${REMEDY_WORDS[gap.state]}`,
      pressing: PRESSING.ordinary,
    });
  return open;
}
