"use client";

import { type KeyboardEvent, useEffect, useId, useMemo, useRef, useState } from "react";
import { crowded, leastApart } from "#lib/domain/strip/crowds.ts";
import type { FileDrawing, StripChoice, StripMark } from "#lib/domain/strip/drawing.ts";
import { isHeavy, type StripChosen } from "#lib/domain/strip/gist.ts";
import { layStrip, type StripLayout } from "#lib/domain/strip/layout.ts";
import type { StripSize } from "#lib/domain/strip/measures.ts";
import { xOn } from "#lib/domain/strip/places.ts";
import { remembered } from "#lib/remembered.ts";
import { goToRow } from "./go-to-row.ts";
import { useSelection } from "./selection.client.tsx";
import styles from "./strip.module.css";
import { StripCaption } from "./strip-caption.tsx";
import { StripFigure } from "./strip-figure.tsx";
import { deedOf } from "./strip-keys.ts";
import { StripOverview } from "./strip-overview.client.tsx";
import { type StripPick, type StripStop, stopsOf } from "./strip-part.ts";
import { StripTable } from "./strip-table.tsx";
import { Titles } from "./strip-titles.tsx";
import { StripTools } from "./strip-tools.tsx";
import { useStripSheets } from "./use-strip-sheets.ts";
import { type StripTip, useStripTip } from "./use-strip-tip.ts";
import { type StripView, useStripGestures, useStripView } from "./use-strip-view.ts";

/**
 * The strip drawing of a line: the record above the pipe, the camera below. Marks are chosen by
 * mouse, or by the arrow keys once the drawing has the focus; tables show the same choice.
 */
export function Strip({
  drawing,
  size = "large",
  choice = null,
  told = null,
  onLook,
  onResize,
  onFold,
}: {
  readonly drawing: FileDrawing;
  readonly size?: StripSize;
  /** Another way to pair that is to be seen beside the proposed one. */
  readonly choice?: StripChoice | null;
  /** What is chosen, where the drawing does not tell it. */
  readonly told?: StripChosen | null;
  /** Somebody looks closer: the drawing may be a gist, and more of it is wanted. */
  readonly onLook?: () => void;
  readonly onResize?: ((size: StripSize) => void) | undefined;
  /** Makes it slim again, where the page opens with that. */
  readonly onFold?: (() => void) | undefined;
}) {
  const id = useId().replace(/[^\w-]/g, "");
  const [apart, setApart] = useState(false);
  const [active, setActive] = useState<string | null>(null);
  const { selected, select } = useSelection();
  const slim = size === "slim";
  const sheet = useRef<HTMLDivElement>(null);
  const { tip, hide, handlers } = useStripTip(sheet);
  const fitted = fittedOn(drawing, size);
  const view = useStripView({
    left: fitted.left,
    margins: fitted.left + (fitted.width - fitted.right),
    feet: drawing.extent / 100,
  });
  const sheets = useStripSheets({
    drawing,
    choice,
    apart: apart && choice !== null && !slim,
    size,
    view,
  });
  const main = sheets.at(-1) ?? { drawing, layout: fitted, title: drawing.title };
  const { layout } = main;
  const stops = useMemo(() => stopsOf(main.drawing, layout), [main.drawing, layout]);
  const { spot, chosen } = useChosenPlace(drawing, told);
  useStripGestures(view, isHeavy(drawing));
  useRevealed({ selected, spot, stops, layout, view });
  const zoomed = view.zoom > 1;
  useEffect(() => {
    if (zoomed) onLook?.();
  }, [zoomed, onLook]);

  const open = (marks: readonly StripMark[]) => {
    const last = Math.max(...marks.map((mark) => mark.toStation ?? mark.station));
    const first = Math.min(...marks.map((mark) => mark.station));
    const span = Math.max((last - first) / drawing.extent, 0.001);
    view.zoomTo(Math.max(0.5 / span, view.zoom * 1.6), {
      part: (first + last) / 2 / drawing.extent,
      at: view.width / 2,
    });
  };
  const tab = stops.find((stop) => stop.members.some((one) => chosen.has(one)));
  /** Closer to what is chosen, where that is in view; otherwise to the middle. */
  const zoomOn = (zoom: number) => {
    const at = (tab?.x ?? 0) - view.scrollLeft;
    const inView = tab !== undefined && at > 0 && at < view.width;
    const part = ((tab?.x ?? 0) - layout.left) / (layout.right - layout.left);
    view.zoomTo(zoom, inView ? { part, at } : undefined);
  };
  const focusOn = (stop: StripStop) => {
    setActive(stop.key);
    if (stop.id !== null) select(stop.id);
    const mark = view.box.current?.querySelector<SVGElement>(
      `[data-mark="${CSS.escape(stop.key)}"]`,
    );
    mark?.focus({ preventScroll: true });
    reveal(view, stop.x);
  };
  const tabKey = tab?.key ?? (stops.some((stop) => stop.key === active) ? (active ?? "") : "main");
  const pick = usePick({ chosen, tabKey, open });

  function press(event: KeyboardEvent) {
    if (event.key === "Escape") hide();
    else onLook?.();
    const here = event.target instanceof Element ? markAt(event.target) : null;
    const deed = deedOf(event, { here, stops, zoom: view.zoom });
    if (deed === null) return;
    event.preventDefault();
    if (deed.zoom !== undefined) zoomOn(deed.zoom);
    if (deed.stop !== undefined) focusOn(deed.stop);
    if (deed.enter !== undefined) enter(deed.enter);
    if (deed.leave === true) select(null);
  }

  function enter(key: string) {
    const stop = stops.find((one) => one.key === key);
    if (stop === undefined) return;
    if (stop.id === null) return open(stop.marks);
    select(stop.id);
    goToRow(stop.id);
  }

  return (
    <figure className={styles["strip"]} data-size={size}>
      <div ref={sheet} className={styles["sheet"]}>
        {/* biome-ignore lint/a11y/noStaticElementInteractions: the keys move between the marks inside, which are buttons */}
        <div
          ref={view.box}
          className={styles["paper"]}
          onKeyDown={press}
          onScroll={view.onScroll}
          {...handlers}
          data-zoomed={view.zoom > 1}
        >
          {sheets.map((sheet, at) => (
            <div key={sheet.title}>
              {sheets.length === 1 ? null : <p className={styles["sheetTitle"]}>{sheet.title}</p>}
              <StripFigure
                drawing={sheet.drawing}
                layout={sheet.layout}
                id={`${id}${at}`}
                title={sheet.title}
                pick={pick}
                spot={spot}
              />
            </div>
          ))}
        </div>
        {view.scrollLeft > 2 && sheets.length === 1 ? (
          <svg
            className={styles["margin"]}
            width={layout.gutter}
            height={layout.height}
            aria-hidden="true"
          >
            <Titles layout={layout} />
          </svg>
        ) : null}
        {tip === null ? null : <Tip {...tip} />}
      </div>
      {view.zoom > 1 && !slim ? (
        <StripOverview
          drawing={drawing}
          from={view.partAt(layout.gutter)}
          to={view.partAt(view.width)}
          onGo={(part) =>
            view.scrollTo(layout.left + part * (layout.right - layout.left) - view.width / 2, false)
          }
        />
      ) : null}
      {slim && onResize !== undefined ? <Unfold onResize={onResize} /> : null}
      {slim ? null : (
        <figcaption className={styles["caption"]}>
          <StripCaption
            drawing={drawing}
            layout={layout}
            selected={selected}
            told={told}
            choice={choice}
            apart={apart}
            onApart={setApart}
          />
          <StripTools
            size={size}
            zoom={view.zoom}
            onZoom={zoomOn}
            onResize={onResize}
            onFold={onFold}
          />
          <InWords drawing={drawing} onOpen={onLook} />
        </figcaption>
      )}
    </figure>
  );
}

/** Under a slim strip that a page opens with: its words, its key and closer looks. */
function Unfold({ onResize }: { readonly onResize: (size: StripSize) => void }) {
  return (
    <p className={styles["unfold"]}>
      <button type="button" className="link-button" onClick={() => onResize("small")}>
        Larger drawing
      </button>
    </p>
  );
}

/** The whole drawing on a sheet of one width: where its axis begins. */
const fittedOn = remembered((drawing: FileDrawing, size: StripSize) => {
  const width = 1000;
  return layStrip(crowded(drawing, leastApart(drawing, width)), { width, size, zoom: 1 });
});

/** The strip as tables, made when they are opened. */
function InWords({
  drawing,
  onOpen,
}: {
  readonly drawing: FileDrawing;
  readonly onOpen: (() => void) | undefined;
}) {
  const [open, setOpen] = useState(false);
  return (
    <details
      className={styles["text"]}
      onToggle={({ currentTarget }) => {
        setOpen(currentTarget.open);
        if (currentTarget.open) onOpen?.();
      }}
    >
      <summary>Show as a table</summary>
      {open ? <StripTable drawing={drawing} /> : null}
    </details>
  );
}

/** The same for as long as the same is chosen, so that scrolling draws nothing anew. */
function usePick({
  chosen,
  tabKey,
  open,
}: Pick<StripPick, "chosen" | "tabKey"> & { readonly open: StripPick["onOpen"] }): StripPick {
  const { selected, select } = useSelection();
  const now = useRef({ open, selected, select });
  now.current = { open, selected, select };
  return useMemo(
    () => ({
      chosen,
      tabKey,
      onSelect: (mark) => now.current.select(mark === now.current.selected ? null : mark),
      onOpen: (marks) => now.current.open(marks),
    }),
    [chosen, tabKey],
  );
}

/** What is chosen, and the mark that stands for it. */
function useChosenPlace(drawing: FileDrawing, told: StripChosen | null) {
  const { selected } = useSelection();
  const known = drawing.spots.find((one) => one.id === selected);
  const spot = known ?? (told?.id === selected ? (told?.spot ?? null) : null);
  const markId = spot?.markId ?? null;
  const chosen = useMemo(() => chosenIds(selected, markId), [selected, markId]);
  return { spot, chosen };
}

/** What a mark is, beside it; the same words are the mark's own name for whoever does not see it. */
function Tip({ words, part, top }: StripTip) {
  return (
    <div
      className={styles["tip"]}
      style={{ left: `${part * 100}%`, top, transform: `translateX(${-part * 100}%)` }}
      aria-hidden="true"
    >
      {words}
    </div>
  );
}

function markAt(target: Element): string | null {
  return target.closest("[data-mark]")?.getAttribute("data-mark") ?? null;
}

function chosenIds(selected: string | null, markId: string | null): ReadonlySet<string> {
  return new Set([selected, markId].filter((id) => id !== null));
}

/** Scrolls a zoomed strip to what was chosen in a table. */
function useRevealed({
  selected,
  spot,
  stops,
  layout,
  view,
}: {
  selected: string | null;
  spot: FileDrawing["spots"][number] | null;
  stops: readonly StripStop[];
  layout: StripLayout;
  view: StripView;
}) {
  const stop = stops.find((one) => selected !== null && one.members.includes(selected));
  const x = stop?.x ?? (spot === null ? null : xOn(layout, (spot.from + spot.to) / 2));
  // biome-ignore lint/correctness/useExhaustiveDependencies: only another choice moves the paper, not another zoom
  useEffect(() => {
    if (x !== null) reveal(view, x);
  }, [selected]);
}

function reveal(view: StripView, x: number): void {
  const paper = view.box.current;
  if (paper === null) return;
  const at = x - paper.scrollLeft;
  if (at > 90 && at < view.width - 60) return;
  view.scrollTo(x - view.width / 2);
}
