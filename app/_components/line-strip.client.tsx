"use client";

import { useSearchParams, useSelectedLayoutSegment } from "next/navigation";
import { useEffect, useRef, useState } from "react";
import type { FileDrawing, StripTopic } from "#lib/domain/strip/drawing.ts";
import type { StripSize } from "#lib/domain/strip/measures.ts";
import styles from "./line-strip.module.css";
import { Strip } from "./strip.client.tsx";
import { useNarrow } from "./use-narrow.ts";

/** What the strip tells on each page, and how large it is there. */
const PAGES: Readonly<Record<string, { readonly topic: StripTopic; readonly size: StripSize }>> = {
  who: { topic: "who", size: "small" },
  record: { topic: "record", size: "small" },
  camera: { topic: "camera", size: "small" },
  reconcile: { topic: "reconcile", size: "large" },
  responsibility: { topic: "responsibility", size: "large" },
  cost: { topic: "cost", size: "small" },
};

const OTHERWISE = { topic: "all", size: "small" } as const;
const OVERVIEW = { topic: "all", size: "large" } as const;

/** The strip over every page of a line: it shows that page's question on the pipe. */
export function LineStrip({
  drawings,
}: {
  readonly drawings: Readonly<Record<StripTopic, FileDrawing>>;
}) {
  const segment = useSelectedLayoutSegment();
  const page = segment === null ? OVERVIEW : (PAGES[segment] ?? OTHERWISE);
  const [asked, setAsked] = useState<StripSize | null>(null);
  const narrow = useNarrow();
  const frame = useRef<HTMLDivElement>(null);
  useStickyHeight(frame);
  const look = useSearchParams().get("look");
  const drawing = drawings[page.topic];
  const choice =
    segment === "reconcile" ? drawing.choices.find((one) => one.key === look) : undefined;
  const size = asked ?? (narrow ? "small" : page.size);

  // biome-ignore lint/correctness/useExhaustiveDependencies: another page starts with its own size
  useEffect(() => setAsked(null), [segment]);

  return (
    <div ref={frame} className={styles["frame"]} data-size={size}>
      <Strip drawing={drawing} size={size} choice={choice ?? null} onResize={setAsked} />
    </div>
  );
}

/** Tells the page how much of its top the strip covers, so that nothing chosen hides behind it. */
function useStickyHeight(frame: { readonly current: HTMLElement | null }) {
  useEffect(() => {
    const { current } = frame;
    if (current === null) return;
    const root = document.documentElement;
    const tell = () => {
      const sticks = getComputedStyle(current).position === "sticky";
      root.style.setProperty("--covered", `${sticks ? current.offsetHeight : 0}px`);
    };
    const watcher = new ResizeObserver(tell);
    watcher.observe(current);
    return () => {
      watcher.disconnect();
      root.style.removeProperty("--covered");
    };
  }, [frame]);
}
