import { useEffect, useRef, useState } from "react";
import type { GridColumn } from "#app/_components/grid/column.ts";
import type { TableFile } from "#lib/exchange/table-file/sheet.ts";
import { keepWork, keptWork, type Work } from "./_kept.ts";
import { workOn } from "./_work.ts";

const MOST_STEPS = 200;

/** The work on a file, kept in the browser until all of it is in; every change can be undone. */
export function useWork(name: string) {
  const [work, setWork] = useState<Work | null>(null);
  const past = useRef<Work[]>([]);
  const typing = useRef<string | null>(null);
  const read = useRef(false);

  useEffect(() => {
    setWork(keptWork(name));
    read.current = true;
  }, [name]);

  useEffect(() => {
    if (read.current && work !== null) keepWork(name, work);
  }, [name, work]);

  return {
    work,
    start: (file: TableFile, fileName: string, columns: readonly GridColumn[]) => {
      past.current = [];
      setWork(workOn(file, fileName, columns));
    },
    /** `typingIn` names a cell: letters typed on in it are one step. */
    change: (next: (work: Work) => Work, typingIn: string | null = null) => {
      const goesOn = typingIn !== null && typing.current === typingIn;
      typing.current = typingIn;
      if (!goesOn && work !== null) past.current = [...past.current.slice(1 - MOST_STEPS), work];
      setWork((now) => (now === null ? null : next(now)));
    },
    undo: () => {
      const before = past.current.at(-1);
      if (before === undefined) return;
      past.current = past.current.slice(0, -1);
      typing.current = null;
      // What came in meanwhile stays in.
      setWork((now) => (now === null ? null : { ...before, gone: now.gone }));
    },
  };
}
