"use client";

import { usePathname } from "next/navigation";
import {
  createContext,
  type ReactNode,
  useCallback,
  useContext,
  useEffect,
  useMemo,
  useState,
} from "react";

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
  const page = usePathname();
  // biome-ignore lint/correctness/useExhaustiveDependencies: what was chosen on a page ends with it
  useEffect(() => setSelected(null), [page]);
  useEffect(() => {
    const letGo = (event: PointerEvent) => {
      if (event.target instanceof Element && isBare(event.target)) setSelected(null);
    };
    document.addEventListener("pointerdown", letGo);
    return () => document.removeEventListener("pointerdown", letGo);
  }, []);
  const selection = useMemo(() => ({ selected, select }), [selected, select]);
  return <SelectionContext value={selection}>{children}</SelectionContext>;
}

/** What a press has something to do with; a press on bare paper lets go of what was chosen. */
const CONTROLS =
  "[data-row-id], [data-mark], [data-zoomed=true], a, button, input, select, textarea, label, summary, video, dialog, [role=dialog]";

function isBare(target: Element): boolean {
  return target.closest(CONTROLS) === null;
}
