"use client";

import { GridBox, type GridProps } from "#app/_components/grid/grid-box.client.tsx";
import type { AuthorityPart } from "#lib/domain/facts/authority.ts";
import { savePartAction } from "./actions.ts";

/** One table of an authority, to type in. */
export function PartsGrid({
  authorityId,
  part,
  ...props
}: GridProps & { readonly authorityId: string; readonly part: AuthorityPart }) {
  return (
    <GridBox
      {...props}
      blank={{ authorityId, ...props.blank }}
      draftName={`wyebook:authority:${authorityId}:${part}`}
      saveRows={(base, rows) => savePartAction(authorityId, part, base, rows)}
    />
  );
}
