"use client";

import { useSearchParams, useSelectedLayoutSegments } from "next/navigation";
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
  "reconcile/": { topic: "reconcile", size: "small" },
  "reconcile/undocumented": { topic: "reconcile", size: "small" },
  "reconcile/test-day": { topic: "reconcile", size: "small" },
  responsibility: { topic: "responsibility", size: "large" },
  cost: { topic: "cost", size: "small" },
};

const OTHERWISE = { topic: "all", size: "small" } as const;

/** The strip over every page of a line: it shows that page's question on the pipe. */
export function LineStrip({
  drawings,
}: {
  readonly drawings: Readonly<Record<StripTopic, FileDrawing>>;
}) {
  const [segment = null, part = ""] = useSelectedLayoutSegments();
  const page = PAGES[`${segment}/${part}`] ?? PAGES[segment ?? ""] ?? OTHERWISE;
  const [asked, setAsked] = useState<StripSize | null>(null);
  const narrow = useNarrow();
  const place = useRef<HTMLDivElement>(null);
  const { stuck, height } = useStuck(place);
  const look = useSearchParams().get("look");
  const drawing = drawings[page.topic];
  const choice =
    segment === "reconcile" ? drawing.choices.find((one) => one.key === look) : undefined;
  const size = asked ?? (narrow ? "small" : page.size);

  // biome-ignore lint/correctness/useExhaustiveDependencies: another page starts with its own size
  useEffect(() => setAsked(null), [segment, part]);

  return (
    <div ref={place} style={stuck ? { height } : undefined}>
      <div className={styles["frame"]} data-stuck={stuck}>
        <Strip
          drawing={drawing}
          size={stuck ? "slim" : size}
          choice={choice ?? null}
          onResize={setAsked}
        />
      </div>
    </div>
  );
}

/** Where the page is wide and high enough that a slim strip may stay over it. */
const ROOM = "(min-width: 48rem) and (min-height: 40rem)";

/** The most that the slim strip takes of the screen; the same as in the style sheet. */
const SLIM = 150;

/**
 * Whether the strip has been scrolled away, so that the slim one takes its place at the top; and the
 * height that it leaves behind, so that the page does not jump. Tells the page how much of its top
 * may be covered, so that nothing chosen hides there.
 */
function useStuck(place: { readonly current: HTMLElement | null }) {
  const [state, setState] = useState({ stuck: false, height: 0 });
  useEffect(() => {
    const { current } = place;
    if (current === null) return;
    const room = window.matchMedia(ROOM);
    const root = document.documentElement;
    const look = () => {
      root.style.setProperty("--covered", `${room.matches ? SLIM : 0}px`);
      const { bottom, height } = current.getBoundingClientRect();
      const stuck = room.matches && bottom < SLIM;
      setState((now) => (now.stuck === stuck ? now : { stuck, height }));
    };
    look();
    window.addEventListener("scroll", look, { passive: true });
    window.addEventListener("resize", look);
    room.addEventListener("change", look);
    return () => {
      window.removeEventListener("scroll", look);
      window.removeEventListener("resize", look);
      room.removeEventListener("change", look);
      root.style.removeProperty("--covered");
    };
  }, [place]);
  return state;
}
