"use client";

import { createContext, type ReactNode, useCallback, useContext, useMemo, useState } from "react";

export interface Selection {
  /** The id of what is selected on the strip and in the tables. */
  readonly selected: string | null;
  readonly select: (id: string | null) => void;
}

const SelectionContext = createContext<Selection>({ selected: null, select: () => undefined });

/** What is selected, shared by the strip and the tables of one line. */
export function useSelection(): Selection {
  return useContext(SelectionContext);
}

export function SelectionProvider({ children }: { readonly children: ReactNode }) {
  const [selected, setSelected] = useState<string | null>(null);
  const select = useCallback((id: string | null) => setSelected(id), []);
  const selection = useMemo(() => ({ selected, select }), [selected, select]);
  return <SelectionContext value={selection}>{children}</SelectionContext>;
}
