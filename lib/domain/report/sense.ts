import type { LineFacts, TieIn } from "../facts/line.ts";
import type { LineFile } from "../facts/line-file.ts";
import { LIST_NAMES } from "../facts/list-name.ts";
import { LISTS } from "../facts/lists.ts";
import { tooManyRows } from "../facts/most-rows.ts";
import type { Nonsense } from "../facts/nonsense.ts";
import { danglingReferences } from "../facts/references.ts";
import { ledgerProblems } from "../ledger/problems.ts";
import { formatFeet } from "../length/station.ts";
import { type TreeProblem, treeProblems } from "../line/tree.ts";
import { pictureProblem } from "../plan/picture.ts";
import { itemAmount } from "../sharing/item-amount.ts";
import { brokenChain, mergedInCircle, saidTwice } from "./one-of-each.ts";

export type { Nonsense } from "../facts/nonsense.ts";

/**
 * Everything in a file's rows that can't be so: ids twice, names of rows that are not there, ends
 * before beginnings, places that were left out, tie-ins that hang on one another in a ring, a money
 * book that does not balance. What merely contradicts (two runs that disagree) is the report's
 * business.
 */
export function nonsenseIn(file: LineFile): Nonsense[] {
  return [
    ...tooManyRows(file),
    ...twiceIn(file),
    ...saidTwice(file),
    ...brokenChain(file),
    ...mergedInCircle(file),
    ...danglingReferences(file).map((each) => ({
      list: each.from,
      row: each.row,
      path: each.path,
      message: `There is no ${LISTS[each.to].one} with the id "${each.id}" in the file; choose one that is there`,
    })),
    ...stretchesIn(file),
    ...scopeIn(file),
    ...tiesIn(file),
    ...repliesIn(file),
    ...picturesIn(file),
    ...unitsIn(file),
    ...correctionsIn(file),
    ...treeIn(file.tieIns, file.line),
    ...ledgerProblems(file.ledger).map((problem) => ({ list: "ledger" as const, ...problem })),
  ];
}

function twiceIn(file: LineFile): Nonsense[] {
  return LIST_NAMES.flatMap((list) => {
    const seen = new Set<string>();
    return (file[list] as readonly { readonly id: string }[]).flatMap((one, row) => {
      if (!seen.has(one.id)) {
        seen.add(one.id);
        return [];
      }
      const message = `Another ${LISTS[list].one} has the id "${one.id}" already; give this one its own`;
      return [{ list, row, path: "id", message }];
    });
  });
}

/** Lists of stretches, with the fields where each begins and ends. */
const STRETCHES = [
  ["crossings", "from", "to"],
  ["land", "from", "to"],
  ["runs", "fromCounter", "toCounter"],
  ["gaps", "fromCounter", "toCounter"],
  ["observations", "counter", "toCounter"],
  ["agreements", "fromStation", "toStation"],
  ["scope", "from", "to"],
] as const;

function stretchesIn(file: LineFile): Nonsense[] {
  return STRETCHES.flatMap(([list, begins, ends]) =>
    (file[list] as readonly object[]).flatMap((one, row) => {
      const stretch = one as Readonly<Record<string, unknown>>;
      const from = stretch[begins];
      const to = stretch[ends];
      if (typeof from !== "number" || typeof to !== "number" || from <= to) return [];
      const message = `Ends at ${formatFeet(to)}, before it begins at ${formatFeet(from)}; write the smaller reading first`;
      return [{ list, row, path: ends, message }];
    }),
  );
}

/** Nothing that is done to a private line costs as much, in cents. */
const DEAREST_ITEM = 10_000_000_000;

function scopeIn(file: LineFile): Nonsense[] {
  return file.scope.flatMap((item, row) => {
    const missing = (path: string, message: string) => ({
      list: "scope" as const,
      row,
      path,
      message,
    });
    if (itemAmount(item) > DEAREST_ITEM)
      return [missing("rate", "It costs more than $100,000,000.00; correct quantity and rate")];
    if (item.place === "branch" && item.tieInId === null)
      return [missing("tieInId", "Choose the tie-in whose branch this is")];
    if (item.place !== "point" && item.place !== "stretch") return [];
    const found = item.from === null ? [missing("from", "Enter the station where it begins")] : [];
    if (item.place === "stretch" && item.to === null)
      found.push(missing("to", "Enter the station where it ends"));
    return found;
  });
}

/** A tie holds one thing: a tie-in, a point, or a station. */
function tiesIn(file: LineFile): Nonsense[] {
  return file.ties.flatMap(({ tieInId, pointId, station }, row) => {
    const named = [tieInId, pointId, station].filter((each) => each !== null).length;
    if (named === 1) return [];
    const message =
      named === 0
        ? "Say what is tied: a tie-in, a point, or a station"
        : "Say one of them only: a tie-in, a point, or a station";
    return [{ list: "ties" as const, row, path: "tieInId", message }];
  });
}

/** A reply answers one thing: a letter, or an invoice that came without one. */
function repliesIn({ replies, ledger }: LineFile): Nonsense[] {
  return replies.flatMap(({ noticeId, entryId }, row) => {
    const wrong = (path: string, message: string) => [
      { list: "replies" as const, row, path, message },
    ];
    if (noticeId === null && entryId === null)
      return wrong("noticeId", "Say what this reply answers: a letter, or an invoice");
    if (noticeId !== null && entryId !== null)
      return wrong("entryId", "Say one of them only: the letter, or the invoice");
    const entry = ledger.find(({ id }) => id === entryId);
    if (entry === undefined || entry.kind === "invoice") return [];
    return wrong("entryId", "This entry is no invoice; choose the invoice that was answered");
  });
}

/** A plan is traced over a picture that has a scale. */
function picturesIn({ planPictures, uploads }: LineFile): Nonsense[] {
  return planPictures.flatMap((picture, row) => {
    const type = uploads.find(({ id }) => id === picture.uploadId)?.type ?? "";
    const found = [
      pictureProblem(picture),
      type === "application/pdf"
        ? { path: "uploadId", message: "Choose a PNG or JPEG: a PDF can't be traced over" }
        : null,
    ];
    return found.flatMap((each) =>
      each === null ? [] : [{ list: "planPictures" as const, row, ...each }],
    );
  });
}

/** A correction belongs to a step by which corrections were asked for. */
function correctionsIn({ corrections, permitSteps }: LineFile): Nonsense[] {
  return corrections.flatMap(({ stepId }, row) => {
    const step = permitSteps.find(({ id }) => id === stepId);
    if (step === undefined || step.state === "corrections") return [];
    const message = "No corrections were asked for by this step; choose the round";
    return [{ list: "corrections" as const, row, path: "stepId", message }];
  });
}

/** A unit that is named together with a property has to be that property's. */
function unitsIn(file: LineFile): Nonsense[] {
  const home = new Map(file.units.map((unit) => [unit.id, unit.propertyId]));
  return (["roles", "tests", "fixtures"] as const).flatMap((list) =>
    (file[list] as readonly { unitId: string | null; propertyId: string | null }[]).flatMap(
      ({ unitId, propertyId }, row) => {
        const at = unitId === null ? undefined : home.get(unitId);
        if (at === undefined || propertyId === null || at === propertyId) return [];
        const message = "This unit is at another property; choose a unit of this one";
        return [{ list, row, path: "unitId", message }];
      },
    ),
  );
}

function treeIn(tieIns: readonly TieIn[], line: LineFacts): Nonsense[] {
  return treeProblems(tieIns, { upperEnd: line.upperEnd })
    .filter(({ reason }) => reason !== "duplicate-id" && reason !== "missing-parent")
    .map((problem) => ({
      list: "tieIns" as const,
      row: problem.row,
      path: problem.field,
      message: TREE_WORDS[problem.reason](problem),
    }));
}

const TREE_WORDS: Record<TreeProblem["reason"], (problem: TreeProblem) => string> = {
  "blank-id": () => "Give it an id: any short text",
  "duplicate-id": ({ id }) => `Another tie-in has the id "${id}" already`,
  "missing-parent": () => "The tie-in that it joins is not in the file",
  cycle: () =>
    "It joins a tie-in that, followed downstream, joins this one again; choose what it really joins, or the trunk",
  "not-a-length": () => "Enter a station in feet from the main connection",
  "below-main": () => "Lies below the main connection; stations begin there with 0 ft",
  "below-parent": ({ limit }) =>
    `Lies below the tie-in that it joins${at(limit)}; correct one of the two`,
  "beyond-upper-end": ({ limit }) =>
    `Lies beyond the upper end of the line${at(limit)}; correct one of the two`,
};

function at(limit: number | null): string {
  return limit === null ? "" : ` at ${formatFeet(limit)}`;
}
