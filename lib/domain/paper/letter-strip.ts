import type { TieInFinding } from "../findings/report.ts";
import type { Cft } from "../length/station.ts";
import { landOf } from "../line/whose-land.ts";
import { faultsSeen } from "../run/faults.ts";
import { mergeStretches } from "../say/merge.ts";
import { scopeInForce } from "../sharing/scope-in-force.ts";
import type { StripBand, StripDrawing, StripMark, StripPipe } from "../strip/drawing.ts";
import { plainMark } from "../strip/plain-mark.ts";
import { workTitle } from "./common.ts";
import { knownOwner, type LetterFacts, whoOf } from "./facts.ts";
import type { LetterBlock } from "./letter.ts";

/** What the strip in a letter is to show. */
export type LetterStrip = "finding" | "one" | "yours" | "work" | "lot" | "done";

/**
 * The strip for one reader, in the reader's language: the pipe, the connections by their marks, the
 * reader's own by name, and the band that this letter is about. Its words are short, so that they
 * stand level; whose each mark is stands in the letter's table. No amount of anybody is on it.
 */
export function letterStrip(facts: LetterFacts, shows: LetterStrip): LetterBlock {
  const drawing: StripDrawing = {
    extent: facts.report.extent,
    ticks: ticksTo(facts.report.extent),
    above:
      shows === "finding" ? [...entryMarks(facts), ...boundaryMarks(facts)] : boundaryMarks(facts),
    below: tieInMarks(facts, shows),
    onPipe: [...endMarks(facts), ...marksOnPipe(facts, shows)],
    joins: shows === "finding" ? joinsOf(facts) : [],
    pipes: pipesOf(facts),
    bands: bandsOf(facts, shows),
    title: facts.words.strip.title,
  };
  return { kind: "strip", drawing, caption: facts.words.strip[shows] };
}

/** Ticks every 10 ft, or every 20 or 50 on a long line. */
function ticksTo(extent: Cft): Cft[] {
  const step = [1_000, 2_000, 5_000].find((each) => extent / each <= 12) ?? 10_000;
  return Array.from({ length: Math.floor(extent / step) + 1 }, (_, index) => index * step);
}

function endMarks({ words, report }: LetterFacts): StripMark[] {
  const main = plainMark("main", "main", 0, words.strip.main);
  const end = plainMark("upper-end", "upper-end", report.extent, words.strip.upperEnd);
  return [
    { ...main, sentence: words.strip.at(main.label, 0) },
    { ...end, sentence: words.strip.at(end.label, report.extent) },
  ];
}

function boundaryMarks({ file, words }: LetterFacts): StripMark[] {
  return file.points.map((point) => {
    const label = words.strip.boundary[point.kind];
    return {
      ...plainMark(point.id, "point", point.station, label),
      sentence: words.strip.at(label, point.station),
    };
  });
}

function entryMarks({ file, report, words }: LetterFacts): StripMark[] {
  return report.entries.flatMap((finding) => {
    const entry = file.entries.find((each) => each.id === finding.entryId);
    const station = finding.station ?? finding.recordStation;
    if (!entry || station === null) return [];
    const sentence = words.strip.at(words.strip.onRecord(entry.label), station);
    return [{ ...plainMark(entry.id, "entry", station, entry.label), sentence }];
  });
}

function tieInMarks(facts: LetterFacts, shows: LetterStrip): StripMark[] {
  return facts.report.tieIns.flatMap((finding) => {
    if (finding.station === null || finding.tieIn.parentId !== null) return [];
    if (shows === "one" && finding !== facts.asked && knownOwner(finding) === null) return [];
    const asked = shows === "one" && finding === facts.asked;
    return [tieInMark(facts, finding, { station: finding.station, asked })];
  });
}

function tieInMark(
  facts: LetterFacts,
  finding: TieInFinding,
  { station, asked }: { readonly station: Cft; readonly asked: boolean },
): StripMark {
  const { words, property } = facts;
  const mine = property !== null && knownOwner(finding) === property.id;
  const who = mine ? words.strip.you : whoOf(facts, finding);
  const { label } = finding.tieIn;
  return {
    ...plainMark(finding.tieIn.id, "tie-in", station, mine ? `${label}  ${who}` : label),
    whisker: finding.uncertainty ?? 0,
    side: finding.side,
    detail: asked ? words.strip.asked : "",
    loud: asked || (finding.standing === "undocumented" && knownOwner(finding) === null),
    sentence: words.strip.tieIn(finding.tieIn.label, station, asked ? words.strip.asked : who),
  };
}

/** Faults where the letter tells what was seen; places of work where it tells what is done. */
function marksOnPipe(facts: LetterFacts, shows: LetterStrip): StripMark[] {
  if (shows === "finding") return faultMarks(facts);
  return shows === "one" ? [] : workMarks(facts);
}

function workMarks(facts: LetterFacts): StripMark[] {
  const { file, words } = facts;
  return scopeInForce(file).flatMap((item) => {
    if (item.place !== "point" || item.from === null) return [];
    const title = workTitle(item, facts);
    const sentence = words.strip.at(title, item.from);
    return [{ ...plainMark(item.id, "fault", item.from, title), sentence }];
  });
}

function faultMarks({ file, report, words }: LetterFacts): StripMark[] {
  return faultsSeen(file, report).flatMap(({ observationId, fault, from, to }) => {
    if (fault === null || from === null) return [];
    const label = words.fault[fault];
    const sentence = to === null ? words.strip.at(label, from) : words.strip.over(label, from, to);
    return [{ ...plainMark(observationId, "fault", from, label), toStation: to, sentence }];
  });
}

function joinsOf({ report }: LetterFacts): StripDrawing["joins"] {
  return report.entries.flatMap(({ entryId, tieInId, decided }) =>
    tieInId === null
      ? []
      : [{ entryId, tieInId, state: decided ? ("accepted" as const) : ("proposed" as const) }],
  );
}

function pipesOf({ report, words }: LetterFacts): StripPipe[] {
  const pipes = report.reaches.map(({ from, to, material, diameter }) => {
    const size = diameter === null ? "" : `, ${words.inches(diameter)}`;
    return { from, to, material, words: `${words.material[material]}${size}` };
  });
  return mergeStretches(pipes, (one, next) => one.words === next.words);
}

function bandsOf(facts: LetterFacts, shows: LetterStrip): StripBand[] {
  const { words, report } = facts;
  const pipe: StripBand = {
    title: words.strip.pipe,
    cells: pipesOf(facts).map(({ from, to, words: text }) => cell(from, to, text, "none")),
  };
  const extra: Record<LetterStrip, () => StripBand[]> = {
    finding: () => [
      {
        title: words.strip.seen,
        cells: report.coverage.map(({ from, to, state }) =>
          state === "seen"
            ? cell(from, to, words.strip.seenYes, "none")
            : cell(from, to, words.coverage[state], "sparse"),
        ),
      },
    ],
    one: () => [],
    yours: () => [passesBand(facts), ...workBands(facts)],
    work: () => workBands(facts),
    lot: () => [crossingBand(facts), ...workBands(facts)],
    done: () => workBands(facts),
  };
  const all = shows === "yours" ? extra.yours() : [pipe, ...extra[shows]()];
  return all.filter((band) => band.cells.length > 0);
}

function passesBand({ report, property, words }: LetterFacts): StripBand {
  const cells = report.reaches.map((reach) => {
    const passes = property !== null && reach.servedBy.includes(property.id);
    const text = passes ? words.strip.passesYes : words.strip.passesNo;
    return cell(reach.from, reach.to, text, passes ? "dense" : "none");
  });
  const merged = mergeStretches(cells, (one, next) => one.words === next.words);
  return { title: words.strip.passes, cells: merged };
}

/** Stretches of work, on as many rows as they overlap. */
function workBands(facts: LetterFacts): StripBand[] {
  const { file, words } = facts;
  const rows: StripBand["cells"][number][][] = [];
  for (const item of scopeInForce(file)) {
    if (item.place !== "stretch" || item.from === null || item.to === null) continue;
    const piece = cell(item.from, item.to, workTitle(item, facts), "sparse");
    const row = rows.find((cells) =>
      cells.every((each) => each.to <= piece.from || each.from >= piece.to),
    );
    if (row) row.push(piece);
    else rows.push([piece]);
  }
  return rows.map((cells) => ({ title: words.strip.work_, cells }));
}

function crossingBand({ file, property, words }: LetterFacts): StripBand {
  const cells = (property === null ? [] : landOf(file, property.id)).map(({ from, to }) =>
    cell(from, to, words.strip.crossed, "dense"),
  );
  return { title: words.strip.crossing, cells };
}

function cell(
  from: Cft,
  to: Cft,
  words: string,
  hatch: StripBand["cells"][number]["hatch"],
): StripBand["cells"][number] {
  return { from, to, words, loud: false, hatch };
}
