import { type RefObject, useEffect, useLayoutEffect, useRef, useState } from "react";

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

  const partAt = (at: number) => ((box.current?.scrollLeft ?? 0) + at - axis.left) / (inner * zoom);

  return {
    box,
    width,
    zoom,
    scrollLeft,
    onScroll: () => setScrollLeft(box.current?.scrollLeft ?? 0),
    partAt,
    zoomTo: (asked, anchor) => {
      const next = Math.min(Math.max(asked, 1), most);
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

/** Ctrl and the wheel, or two fingers, look closer at what is under them; dragging moves the paper. */
export function useStripGestures({ box, zoom, zoomTo, partAt }: StripView): void {
  const live = useRef({ zoom, zoomTo, partAt });
  live.current = { zoom, zoomTo, partAt };
  useEffect(() => {
    const { current: paper } = box;
    if (paper === null) return;
    const turn = (event: WheelEvent) => {
      if (!event.ctrlKey && !event.metaKey) return;
      event.preventDefault();
      const at = event.clientX - paper.getBoundingClientRect().left;
      const { zoom: now, zoomTo: go, partAt: part } = live.current;
      go(now * Math.exp(-event.deltaY / 240), { part: part(at), at });
    };
    paper.addEventListener("wheel", turn, { passive: false });
    const drop = [dragging(paper), pinching(paper, live)];
    return () => {
      paper.removeEventListener("wheel", turn);
      for (const each of drop) each();
    };
  }, [box]);
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

type Live = RefObject<Pick<StripView, "zoom" | "zoomTo" | "partAt">>;

function pinching(paper: HTMLElement, live: Live): () => void {
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
    live.current.zoomTo((start.zoom * fingers.apart) / start.apart, {
      part: start.part,
      at: fingers.at,
    });
  };
  paper.addEventListener("touchmove", move, { passive: false });
  return () => paper.removeEventListener("touchmove", move);
}
