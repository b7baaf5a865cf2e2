import { useMemo } from "react";
import { crowded, leastApart } from "#lib/domain/strip/crowds.ts";
import type { FileDrawing, StripChoice } from "#lib/domain/strip/drawing.ts";
import { layStrip, type StripLayout } from "#lib/domain/strip/layout.ts";
import type { StripSize } from "#lib/domain/strip/measures.ts";
import { remembered } from "#lib/remembered.ts";
import type { StripView } from "./use-strip-view.ts";

interface StripSheet {
  readonly title: string;
  readonly drawing: FileDrawing;
  readonly layout: StripLayout;
}

/**
 * The drawing as it is. Remembered, so that a server that draws it for one page after the other lays
 * it out once.
 */
const asDrawn = remembered(
  (drawing: FileDrawing, width: number, size: StripSize, zoom: number): StripSheet[] => {
    const drawn = crowded(drawing, leastApart(drawing, width * zoom));
    return [
      {
        title: drawing.title,
        drawing: drawn,
        layout: layStrip(drawn, { width, size, zoom, bare: false }),
      },
    ];
  },
);

/** One sheet; or two over each other on the same axis, as proposed and as the alternative has it. */
export function useStripSheets({
  drawing,
  choice,
  apart,
  size,
  view,
}: {
  drawing: FileDrawing;
  choice: StripChoice | null;
  apart: boolean;
  size: StripSize;
  view: StripView;
}): StripSheet[] {
  const { width, zoom } = view;
  return useMemo(() => {
    const frame = { width, size, zoom };
    const least = leastApart(drawing, width * zoom);
    const sheet = (title: string, whole: FileDrawing, bare: boolean) => {
      const drawn = crowded(whole, least);
      return { title, drawing: drawn, layout: layStrip(drawn, { ...frame, bare }) };
    };
    if (choice === null) return asDrawn(drawing, width, size, zoom);
    if (!apart) {
      const differing = choice.joins.filter((join) => join.differs === true);
      const joins = [...drawing.joins.filter((join) => join.state !== "alternative"), ...differing];
      return [sheet(drawing.title, { ...drawing, joins }, false)];
    }
    const changed = new Set(
      choice.joins.filter((join) => join.differs === true).map((join) => join.entryId),
    );
    const now = drawing.joins
      .filter((join) => join.state !== "alternative")
      .map((join) => ({
        ...join,
        differs: changed.has(join.entryId) || !choice.joins.some((one) => sameJoin(one, join)),
      }));
    return [
      sheet("Proposed", { ...drawing, joins: now }, true),
      sheet("Alternative", { ...drawing, joins: choice.joins }, true),
    ];
  }, [drawing, choice, apart, size, width, zoom]);
}

function sameJoin(
  one: { entryId: string; tieInId: string },
  other: { entryId: string; tieInId: string },
): boolean {
  return one.entryId === other.entryId && one.tieInId === other.tieInId;
}
