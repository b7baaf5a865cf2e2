import { useEffect, useRef, useState } from "react";
import type { GridColumn } from "#app/_components/grid/column.ts";
import { NO_STEPS, type Steps, stepBack, stepForth, stepFrom } from "#app/_components/steps.ts";
import type { TableFile } from "#lib/exchange/table-file/sheet.ts";
import { keepWork, keptWork, type Work } from "./kept.ts";
import { workOn } from "./work.ts";

/** The work on a file, kept in the browser until all of it is in; every change can be undone. */
export function useWork(name: string) {
  const [work, setWork] = useState<Work | null>(null);
  const steps = useRef<Steps<Work>>(NO_STEPS);
  const read = useRef(false);

  useEffect(() => {
    setWork(keptWork(name));
    read.current = true;
  }, [name]);

  useEffect(() => {
    if (read.current && work !== null) keepWork(name, work);
  }, [name, work]);

  /** What came in meanwhile stays in. */
  function move(moved: ReturnType<typeof stepBack<Work>>) {
    if (moved === null) return;
    steps.current = moved.steps;
    setWork((now) => (now === null ? null : { ...moved.value, gone: now.gone }));
  }

  return {
    work,
    start: (file: TableFile, fileName: string, columns: readonly GridColumn[]) => {
      steps.current = NO_STEPS;
      setWork(workOn(file, fileName, columns));
    },
    /** `typingIn` names a cell: letters typed on in it are one step. */
    change: (next: (work: Work) => Work, typingIn: string | null = null) => {
      if (work !== null) steps.current = stepFrom(steps.current, work, typingIn);
      setWork((now) => (now === null ? null : next(now)));
    },
    undo: () => move(work === null ? null : stepBack(steps.current, work)),
    redo: () => move(work === null ? null : stepForth(steps.current, work)),
  };
}
