import { useCallback, useEffect, useMemo, useState } from "react";
import type { FileDrawing, StripTopic } from "#lib/domain/strip/drawing.ts";
import type { StripChosen } from "#lib/domain/strip/gist.ts";
import { drawingsIn, type StripAnswer, type StripSent } from "./strip-sent.ts";

interface Known {
  readonly key: string;
  readonly drawing: FileDrawing;
}

export interface WholeStrip {
  /** As much of the drawing as is here. */
  readonly drawing: FileDrawing;
  /** What is chosen, where the drawing that is here does not tell it. */
  readonly chosen: StripChosen | null;
  /** Asks for all of it: somebody looks closer. */
  readonly want: () => void;
}

/**
 * The drawing that came with the page; of a long line, what was left out comes when it is wanted, and
 * what is chosen by itself. An older drawing is never shown once the page has a newer one.
 */
export function useWholeStrip(
  sent: StripSent,
  { topic, selected }: { topic: StripTopic; selected: string | null },
): WholeStrip {
  const { lineId, version, whole } = sent;
  const drawings = useMemo(() => drawingsIn(sent.drawings), [sent.drawings]);
  const [known, setKnown] = useState<Known | null>(null);
  const [wanted, setWanted] = useState(false);
  const own = drawings[topic];
  const key = `${version} ${topic}`;
  const here = known?.key === key ? known.drawing : null;
  const ask = (wanted && !whole) || own === undefined;
  const address = `/lines/${encodeURIComponent(lineId)}/strip?topic=${topic}`;

  useEffect(() => {
    if (!ask || here !== null) return;
    return asked(address, (answer) => {
      if (answer.drawing !== null) setKnown({ key, drawing: answer.drawing });
    });
  }, [ask, here, address, key]);

  const chosen = useChosen({ address, key, selected: whole || here !== null ? null : selected });
  const drawing = here ?? own ?? Object.values(drawings)[0];
  if (drawing === undefined) throw new Error("a page of a line came without its strip");
  return { drawing, chosen, want: useCallback(() => setWanted(true), []) };
}

function useChosen({
  address,
  key,
  selected,
}: {
  address: string;
  key: string;
  selected: string | null;
}): StripChosen | null {
  const [found, setFound] = useState<{ key: string; chosen: StripChosen } | null>(null);
  const mine = found?.chosen.id === selected ? found : null;
  const current = mine?.key === key;
  useEffect(() => {
    if (selected === null || current) return;
    return asked(`${address}&one=${encodeURIComponent(selected)}`, ({ chosen }) => {
      if (chosen !== null) setFound({ key, chosen });
    });
  }, [address, key, selected, current]);
  return mine?.chosen ?? null;
}

/** Without an answer the strip stays as it is: it is there, only not closer. */
function asked(address: string, hear: (answer: StripAnswer) => void): () => void {
  const stop = new AbortController();
  fetch(address, { signal: stop.signal, cache: "no-store" })
    .then((response) => (response.ok ? response.json() : Promise.reject(response.status)))
    // Our own route answers it, and nothing else.
    .then((answer: StripAnswer) => hear(answer))
    .catch(() => undefined);
  return () => stop.abort();
}
