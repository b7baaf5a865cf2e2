"use client";

import { useSearchParams, useSelectedLayoutSegments } from "next/navigation";
import { useEffect, useRef, useState } from "react";
import type { StripSize } from "#lib/domain/strip/measures.ts";
import styles from "./line-strip.module.css";
import { useSelection } from "./selection.client.tsx";
import { Strip } from "./strip.client.tsx";
import { stripPage } from "./strip-pages.ts";
import type { StripSent } from "./strip-sent.ts";
import { useNarrow } from "./use-narrow.ts";
import { useWholeStrip } from "./use-whole-strip.ts";

/** The strip over every page of a line: it shows that page's question on the pipe; slim at first on a phone. */
export function LineStrip({ sent }: { readonly sent: StripSent }) {
  const folders = useSelectedLayoutSegments();
  const [segment = null, part = ""] = folders;
  const page = stripPage(folders);
  const [asked, setAsked] = useState<StripSize | null>(null);
  const narrow = useNarrow();
  const place = useRef<HTMLDivElement>(null);
  const { stuck, height } = useStuck(place);
  const { selected } = useSelection();
  const { drawing, chosen, want } = useWholeStrip(sent, { topic: page.topic, selected });
  const asking = useSearchParams().get("look");
  const look = segment === "reconcile" ? asking : null;
  const choice = drawing.choices.find((one) => one.key === look);
  const size = asked ?? (narrow ? "slim" : page.size);

  // biome-ignore lint/correctness/useExhaustiveDependencies: another page starts with its own size
  useEffect(() => setAsked(null), [segment, part]);
  useEffect(() => {
    if (look !== null) want();
  }, [look, want]);

  return (
    <div ref={place} style={stuck ? { height } : undefined}>
      <div className={styles["frame"]} data-stuck={stuck}>
        <Strip
          drawing={drawing}
          size={stuck ? "slim" : size}
          choice={choice ?? null}
          told={chosen}
          onLook={want}
          onResize={stuck ? undefined : setAsked}
          onFold={narrow && asked !== null ? () => setAsked(null) : undefined}
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
