import { plainFeet } from "#lib/domain/length/station.ts";
import type { SpokenReading } from "#lib/domain/narration/footage/run-told.ts";
import { movedAround } from "#lib/domain/narration/log/moved.ts";
import { type DraftView, SEEN_COLUMNS } from "./draft-columns.ts";
import { type Edits, readDraft } from "./mended.ts";

/** The rows with those moved that lie next to a distance that a person typed over, and which they are. */
export function movedViews(
  views: readonly DraftView[],
  readings: readonly SpokenReading[],
  edits: Edits,
): { readonly views: readonly DraftView[]; readonly moved: ReadonlySet<string> } {
  const mended = new Map(
    views.flatMap((view): [string, number][] => {
      if (view.decided !== null || edits[view.key]?.["counter"] === undefined) return [];
      const { counter } = readDraft(view, SEEN_COLUMNS, edits).fields;
      return typeof counter === "number" && counter !== view.place.counter
        ? [[view.key, counter]]
        : [];
    }),
  );
  const open = views.filter(({ decided }) => decided === null);
  const rows = open.map(({ key, place }) => ({ key, ...place }));
  const places = movedAround(rows, readings, mended);
  return {
    moved: new Set(places.keys()),
    views: views.map((view) => {
      const counter = places.get(view.key);
      if (counter === undefined) return view;
      const texts = { ...view.texts, counter: plainFeet(counter) };
      return { ...view, texts, marks: [...view.marks, "moved with the distance you typed"] };
    }),
  };
}
