import type { LineFile } from "../facts/line-file.ts";
import { sayProperty } from "../party/say.ts";
import { sayList } from "../say/say-list.ts";
import { isOpenPaper, type PaperDue, papersOn } from "../statutory/papers.ts";
import type { DueThing } from "./answer.ts";

/**
 * Statutory papers that cannot be counted, since the fact they are counted from is not on file: due
 * now, with what to enter. Those that can be counted are clocks.
 */
export function paperThings(file: LineFile): Omit<DueThing, "lineId">[] {
  if (file.line.closedOn !== null) return [];
  const groups = new Map<string, PaperDue[]>();
  // The last day of work is not known while the work goes on: nothing is missing before.
  const open = papersOn(file).filter(
    (due) => isOpenPaper(due) && due.by === null && due.paper.event !== "work-ends",
  );
  for (const due of open) groups.set(due.paper.id, [...(groups.get(due.paper.id) ?? []), due]);
  return [...groups.values()].flatMap((group) =>
    group.slice(0, 1).map(({ paper, enter }) => {
      const places = group.map(({ propertyId }) => sayProperty(file, propertyId));
      const what = paper.event === "contract" ? "Enter the day of each contract" : enter;
      return {
        sentence: `${paper.title} for ${sayList([...new Set(places)], 4)} can’t be dated: ${lowered(what).replace(/\.$/, "")}`,
        on: null,
        kind: "due" as const,
        waitsOn: "office" as const,
        question: "notices" as const,
        where: "notices/statutory",
      };
    }),
  );
}

function lowered(text: string): string {
  return `${text.slice(0, 1).toLowerCase()}${text.slice(1)}`;
}
