import type { KeyboardEvent } from "react";
import type { StripStop } from "./strip-part.ts";

/** What a key does on the drawing. */
interface StripDeed {
  readonly zoom?: number;
  readonly stop?: StripStop;
  readonly enter?: string;
  readonly leave?: true;
}

/** Plus, minus and 0 zoom, arrows go from stop to stop, enter goes to the row, escape lets go. */
export function deedOf(
  event: Pick<KeyboardEvent, "key" | "ctrlKey" | "metaKey" | "altKey">,
  { here, stops, zoom }: { here: string | null; stops: readonly StripStop[]; zoom: number },
): StripDeed | null {
  if (event.ctrlKey || event.metaKey || event.altKey) return null;
  const { key } = event;
  const closer = zoomAfter(key, zoom);
  if (closer !== undefined) return { zoom: closer };
  if (key === "Escape") return { leave: true };
  if (here === null) return null;
  if (key === "Enter") return { enter: here };
  const stop = stopAfter(key, { stops, here });
  return stop === undefined ? null : { stop };
}

/** The stop that a key leads to from another; undefined: the key means nothing here. */
function stopAfter(
  key: string,
  { stops, here }: { stops: readonly StripStop[]; here: string },
): StripStop | undefined {
  const at = stops.findIndex((stop) => stop.key === here);
  const steps: Record<string, number> = {
    ArrowRight: at + 1,
    ArrowDown: at + 1,
    ArrowLeft: at - 1,
    ArrowUp: at - 1,
    Home: 0,
    End: stops.length - 1,
  };
  const next = steps[key];
  if (next === undefined) return undefined;
  return stops[Math.min(Math.max(next, 0), stops.length - 1)];
}

/** The zoom that a key asks for; undefined: none. */
function zoomAfter(key: string, zoom: number): number | undefined {
  const zooms: Record<string, number> = {
    "+": zoom * 1.6,
    "=": zoom * 1.6,
    "-": zoom / 1.6,
    "0": 1,
  };
  return zooms[key];
}
