import type { LineFile } from "../facts/line-file.ts";
import type { Clock, Told } from "../findings/clock.ts";
import { isOpenPaper, type PaperDue, papersOn, whenWords } from "../statutory/papers.ts";

const KEY = "statutory:";

/**
 * The last days of the statutory papers, those of one paper that are counted from the same day as one
 * clock, with whom it waits for. What was given up by name waits for nobody; what cannot be counted
 * yet has no clock.
 */
export function statutoryClocks(file: LineFile): Clock[] {
  const groups = new Map<string, PaperDue[]>();
  for (const due of papersOn(file)) {
    if (due.by === null) continue;
    const key = `${KEY}${due.paper.id}:${due.from}:${due.by}`;
    groups.set(key, [...(groups.get(key) ?? []), due]);
  }
  return [...groups].flatMap(([key, group]): Clock[] => {
    const [first] = group;
    if (first === undefined || first.by === null || first.from === null) return [];
    const { paper, from, by, counted } = first;
    return [
      {
        key,
        title: paper.title,
        meaning: "due-by",
        startedOn: from,
        on: by,
        at: "",
        sentence: `Asked for ${whenWords(paper)}. ${counted}`,
        citation: paper.citation,
        asOf: paper.asOf,
        subjectId: paper.id,
        settled: file.line.closedOn !== null || !group.some(isOpenPaper),
        telling: {
          known: true,
          recipients: group.filter(({ state }) => state !== "given-up").map(toldBy),
        },
      },
    ];
  });
}

/** Whether a clock is of a statutory paper. */
export function isStatutory({ key }: Pick<Clock, "key">): boolean {
  return key.startsWith(KEY);
}

function toldBy({ partyId, propertyId, givenOn, mailed, late, confirmedOn }: PaperDue): Told {
  return { partyId, propertyId, on: givenOn, mailed, late, confirmedOn };
}
