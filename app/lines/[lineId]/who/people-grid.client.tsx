"use client";

import { GridBox, type GridProps } from "#app/_components/grid/grid-box.client.tsx";
import { useSentRows } from "#app/_components/use-sent-rows.ts";
import { savePeopleAction } from "./actions.ts";

/** The list of people: one table to type in, kept in three. */
export function PeopleGrid({ lineId, ...props }: GridProps & { readonly lineId: string }) {
  const { hear, ...sent } = useSentRows({ lineId, of: "people", ...props });
  return (
    <GridBox
      {...props}
      {...sent}
      draftName={`wyebook:people:${lineId}`}
      saveRows={(base, rows) => savePeopleAction(lineId, base, rows).then(hear)}
    />
  );
}
