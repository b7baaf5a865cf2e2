"use client";

import { type ReactNode, useEffect, useRef } from "react";
import { useSelection } from "./selection.client.tsx";

/** A row of a reading table that is selected together with its mark on the strip. */
export function SelectableRow({
  id,
  also = [],
  children,
}: {
  readonly id: string;
  /** Further marks that the row stands for. */
  readonly also?: readonly string[];
  readonly children: ReactNode;
}) {
  const { selected, select } = useSelection();
  const row = useRef<HTMLTableRowElement>(null);
  const isMine = selected === id || (selected !== null && also.includes(selected));
  useEffect(() => {
    const { current } = row;
    if (!isMine || current === null || current.contains(document.activeElement)) return;
    current.scrollIntoView({ block: "nearest" });
  }, [isMine]);
  return (
    <tr
      ref={row}
      data-row-id={id}
      data-selected={isMine}
      onClick={() => select(id)}
      onFocus={() => select(id)}
    >
      {children}
    </tr>
  );
}

/** A name that selects its mark on the strip: for lists, and for tables where the row has no other control. */
export function SelectOnStrip({
  id,
  children,
}: {
  readonly id: string;
  readonly children: ReactNode;
}) {
  const { selected, select } = useSelection();
  return (
    <button
      type="button"
      className="link-button"
      data-row-id={id}
      aria-pressed={selected === id}
      onClick={() => select(selected === id ? null : id)}
    >
      {children}
    </button>
  );
}
