import { useCallback, useEffect, useRef, useState } from "react";
import type { RowsAnswer } from "./grid/answer.ts";
import { type PackedRows, unpackRows } from "./sent-rows.ts";

interface Table {
  readonly base: number;
  readonly rows: readonly object[];
}

/** Is told what saving came to, so that what was saved from here is not asked for again. */
export type HearSaved = (answer: RowsAnswer) => RowsAnswer;

interface Sent extends Table {
  /** So many of the rows that are shown are not here yet. */
  readonly unsent: number;
  readonly whole: boolean;
  readonly hear: HearSaved;
}

/** Where the rows of a table are asked for. */
interface Asked extends Table {
  readonly lineId: string;
  /** A table of the line, or its people. */
  readonly of: string;
  readonly unsent?: number | undefined;
  readonly whole?: boolean | undefined;
}

const AGAIN_MS = 3_000;

/**
 * The rows that came with the page, or of a long table all of them once they are here; rows and
 * revision always belong together. They are asked for again when the page knows a later revision
 * that was not saved from here.
 */
export function useSentRows({ lineId, of, base, rows, unsent = 0, whole = true }: Asked): Sent {
  const [got, setGot] = useState<Table | null>(null);
  const own = useRef(base);
  const last = useRef<Table | null>(null);
  if (whole) last.current = { base, rows };
  else if (got !== null && got.base > (last.current?.base ?? -1)) last.current = got;
  const table = last.current;
  const wanted = !whole && (table === null || base > Math.max(table.base, own.current));

  useEffect(() => {
    if (!wanted) return;
    const stop = new AbortController();
    let timer: ReturnType<typeof setTimeout> | undefined;
    const ask = () =>
      rowsOf(lineId, { of, base }, stop.signal)
        .then(setGot)
        .catch(() => {
          if (!stop.signal.aborted) timer = setTimeout(ask, AGAIN_MS);
        });
    void ask();
    return () => {
      stop.abort();
      clearTimeout(timer);
    };
  }, [wanted, lineId, of, base]);

  const hear = useCallback((answer: RowsAnswer) => {
    if (answer.status === "saved") own.current = Math.max(own.current, answer.revision);
    return answer;
  }, []);
  return table === null
    ? { base, rows, unsent, whole, hear }
    : { ...table, unsent: 0, whole: true, hear };
}

async function rowsOf(
  lineId: string,
  { of, base }: { of: string; base: number },
  signal: AbortSignal,
): Promise<Table> {
  const address = `/lines/${encodeURIComponent(lineId)}/rows?of=${of}&base=${base}`;
  const response = await fetch(address, { cache: "no-store", signal });
  if (!response.ok) throw new Error(`rows: ${response.status}`);
  // Our own route answers it, and nothing else.
  const pack = (await response.json()) as PackedRows;
  return { base: pack.base, rows: unpackRows(pack) };
}
