"use client";

import { GridBox, type GridProps } from "#app/_components/grid/grid-box.client.tsx";
import { savePeopleAction } from "./actions.ts";

/** The list of people: one table to type in, kept in three. */
export function PeopleGrid({ lineId, ...props }: GridProps & { readonly lineId: string }) {
  return (
    <GridBox
      {...props}
      draftName={`wyebook:people:${lineId}`}
      saveRows={(base, rows) => savePeopleAction(lineId, base, rows)}
    />
  );
}
