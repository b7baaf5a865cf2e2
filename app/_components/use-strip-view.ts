import { type RefObject, useEffect, useLayoutEffect, useRef, useState } from "react";
import { flushSync } from "react-dom";

/** How far in a strip may be looked at: so that a foot is about half an inch of the screen. */
const CLOSEST = 48;

export interface StripView {
  readonly box: RefObject<HTMLDivElement | null>;
  /** Width of the paper on the screen; a sensible one until it is known, and for print. */
  readonly width: number;
  readonly zoom: number;
  readonly scrollLeft: number;
  readonly onScroll: () => void;
  /** Sets the zoom; what stands at `anchor` (a part of the line, 0 to 1) comes to `at` on the screen. */
  readonly zoomTo: (zoom: number, anchor?: { part: number; at: number }) => void;
  readonly scrollTo: (left: number, smooth?: boolean) => void;
  /** The nearest zoom that there is. */
  readonly within: (zoom: number) => number;
  /** The part of the line that stands at an x of the screen's paper. */
  readonly partAt: (at: number) => number;
}

/** Where the axis of the drawing begins, and how much wider than the axis the paper is. */
interface StripAxis {
  readonly left: number;
  readonly margins: number;
  readonly feet: number;
}

/** Zoom and scroll of one strip, with what was under the pointer kept under it. */
export function useStripView(axis: StripAxis): StripView {
  const box = useRef<HTMLDivElement>(null);
  const [width, setWidth] = useState(1080);
  const [zoom, setZoom] = useState(1);
  const [scrollLeft, setScrollLeft] = useState(0);
  const pending = useRef<number | null>(null);
  const inner = Math.max(width - axis.margins, 60);
  const most = Math.max(4, (axis.feet * CLOSEST) / inner);

  useEffect(() => {
    const { current } = box;
    if (current === null) return;
    const watcher = new ResizeObserver(([entry]) => {
      const wide = entry?.contentRect.width ?? 0;
      if (wide > 0) setWidth(Math.max(Math.floor(wide), 300));
    });
    watcher.observe(current);
    return () => watcher.disconnect();
  }, []);

  // biome-ignore lint/correctness/useExhaustiveDependencies: the paper has its new width only after the zoom
  useLayoutEffect(() => {
    if (pending.current === null || box.current === null) return;
    box.current.scrollLeft = pending.current;
    pending.current = null;
    setScrollLeft(box.current.scrollLeft);
  }, [zoom]);

  const within = (asked: number) => Math.min(Math.max(asked, 1), most);
  const partAt = (at: number) => ((box.current?.scrollLeft ?? 0) + at - axis.left) / (inner * zoom);

  return {
    box,
    width,
    zoom,
    scrollLeft,
    onScroll: () => setScrollLeft(box.current?.scrollLeft ?? 0),
    partAt,
    within,
    zoomTo: (asked, anchor) => {
      const next = within(asked);
      const at = anchor?.at ?? width / 2;
      const part = anchor?.part ?? partAt(at);
      pending.current = axis.left + part * inner * next - at;
      if (next === zoom) box.current?.scrollTo({ left: pending.current, behavior: "smooth" });
      setZoom(next);
    },
    scrollTo: (left, smooth = true) =>
      box.current?.scrollTo({ left, behavior: smooth ? "smooth" : "instant" }),
  };
}

/** How long nothing is turned before a long line is laid out anew. */
const SETTLED_MS = 120;

/** A drawing stretched by more than this is laid out anew also while it is turned. */
const MOST_STRETCHED = 3;

interface Turn {
  readonly zoom: number;
  readonly part: number;
  readonly at: number;
}

/**
 * Ctrl and the wheel, or two fingers, look closer at what is under them; dragging moves the paper.
 * At most once a frame. A drawing of very many marks (`isHeavy`) is stretched while it is turned, and
 * laid out once it is let be.
 */
export function useStripGestures(view: StripView, isHeavy: boolean): void {
  const live = useRef({ ...view, isHeavy });
  live.current = { ...view, isHeavy };
  const { box } = view;
  useEffect(() => {
    const { current: paper } = box;
    if (paper === null) return;
    const turning = turner(paper, live);
    const turn = (event: WheelEvent) => {
      if (!event.ctrlKey && !event.metaKey) return;
      event.preventDefault();
      const at = event.clientX - paper.getBoundingClientRect().left;
      const now = turning.now() ?? { zoom: live.current.zoom, part: live.current.partAt(at), at };
      turning.to({ ...now, zoom: now.zoom * Math.exp(-event.deltaY / 240) });
    };
    paper.addEventListener("wheel", turn, { passive: false });
    const drop = [dragging(paper), pinching(paper, live, turning.to), turning.stop];
    return () => {
      paper.removeEventListener("wheel", turn);
      for (const each of drop) each();
    };
  }, [box]);
}

/** Takes every wish to zoom, and sees to the last one before each frame. */
function turner(paper: HTMLElement, live: Live) {
  let wish: Turn | null = null;
  let frame = 0;
  let timer: ReturnType<typeof setTimeout> | undefined;
  const settle = () => {
    const last = wish;
    wish = null;
    if (last === null) return;
    // In one go: else the old layout would show for a frame where the new one belongs.
    flushSync(() => live.current.zoomTo(last.zoom, last));
    stretch(paper, null);
  };
  const draw = () => {
    frame = 0;
    if (wish === null) return;
    const { zoom, isHeavy, within } = live.current;
    wish = { ...wish, zoom: within(wish.zoom) };
    const scale = wish.zoom / zoom;
    clearTimeout(timer);
    if (!isHeavy || scale > MOST_STRETCHED || scale < 1 / MOST_STRETCHED) return settle();
    stretch(paper, { scale, at: wish.at });
    timer = setTimeout(settle, SETTLED_MS);
  };
  return {
    now: () => wish,
    to: (next: Turn) => {
      wish = next;
      if (frame === 0) frame = requestAnimationFrame(draw);
    },
    stop: () => {
      cancelAnimationFrame(frame);
      clearTimeout(timer);
      stretch(paper, null);
    },
  };
}

/** Stretches what is drawn as a picture, so that what stands at `at` stays there; null: as it is. */
function stretch(paper: HTMLElement, by: { scale: number; at: number } | null): void {
  for (const sheet of paper.children) {
    if (!(sheet instanceof HTMLElement)) continue;
    const { style } = sheet;
    style.transformOrigin = by === null ? "" : `${by.at + paper.scrollLeft}px 0`;
    style.transform = by === null ? "" : `scaleX(${by.scale})`;
    style.willChange = by === null ? "" : "transform";
  }
}

function dragging(paper: HTMLElement): () => void {
  let from: { x: number; left: number } | null = null;
  const down = (event: PointerEvent) => {
    const onMark = event.target instanceof Element && event.target.closest("[data-mark]") !== null;
    if (event.pointerType !== "mouse" || event.button !== 0 || onMark) return;
    from = { x: event.clientX, left: paper.scrollLeft };
  };
  const move = (event: PointerEvent) => {
    if (from === null) return;
    paper.scrollLeft = from.left - (event.clientX - from.x);
  };
  const up = () => {
    from = null;
  };
  paper.addEventListener("pointerdown", down);
  window.addEventListener("pointermove", move);
  window.addEventListener("pointerup", up);
  return () => {
    paper.removeEventListener("pointerdown", down);
    window.removeEventListener("pointermove", move);
    window.removeEventListener("pointerup", up);
  };
}

type Live = RefObject<StripView & { readonly isHeavy: boolean }>;

function pinching(paper: HTMLElement, live: Live, turn: (to: Turn) => void): () => void {
  let start: { apart: number; zoom: number; part: number } | null = null;
  const spread = ([one, other]: TouchList | readonly Touch[]) =>
    one === undefined || other === undefined
      ? null
      : {
          apart: Math.hypot(one.clientX - other.clientX, one.clientY - other.clientY),
          at: (one.clientX + other.clientX) / 2 - paper.getBoundingClientRect().left,
        };
  const move = (event: TouchEvent) => {
    const fingers = event.touches.length === 2 ? spread([...event.touches]) : null;
    if (fingers === null) {
      start = null;
      return;
    }
    event.preventDefault();
    start ??= {
      apart: fingers.apart,
      zoom: live.current.zoom,
      part: live.current.partAt(fingers.at),
    };
    const zoom = (start.zoom * fingers.apart) / start.apart;
    turn({ zoom, part: start.part, at: fingers.at });
  };
  paper.addEventListener("touchmove", move, { passive: false });
  return () => paper.removeEventListener("touchmove", move);
}
