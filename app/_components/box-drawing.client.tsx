"use client";

import { type KeyboardEvent, type PointerEvent, useRef, useState } from "react";
import type { FormPage, FormPlace } from "#lib/domain/facts/form.ts";
import { drawnBox, movedBox, type PagePoint, resizedBox } from "#lib/domain/form/drawn-box.ts";
import { inches } from "#lib/domain/form/field-title.ts";
import styles from "./form-page.module.css";

type Box = Omit<FormPlace, "page">;

/** What an arrow key moves: a sixteenth of an inch. */
const STEP = 4.5;
/** A box that the keyboard begins with: two inches by a quarter. */
const FIRST = { width: 144, height: 18 };
/** What moves less, in points, is a press and no drawing. */
const STILL = 4;

const ARROWS: Readonly<Record<string, PagePoint>> = {
  ArrowLeft: { left: -STEP, top: 0 },
  ArrowRight: { left: STEP, top: 0 },
  ArrowUp: { left: 0, top: -STEP },
  ArrowDown: { left: 0, top: STEP },
};

/**
 * A box that is drawn on the picture of a page, moved by dragging or arrow keys; its numbers go into the
 * form that places boxes.
 */
export function useBoxDrawing(size: FormPage, page: number) {
  const [box, setBox] = useState<Box | null>(null);
  const drag = useRef<{ readonly from: PagePoint; readonly moved: Box | null } | null>(null);

  /** As it was drawn last, which may not be painted yet. */
  const latest = useRef<Box | null>(null);

  function draw(next: Box | null) {
    latest.current = next;
    setBox(next);
  }

  function show(next: Box) {
    draw(next);
    enter(next, page);
  }

  function pointOf(event: PointerEvent<HTMLElement>): PagePoint {
    const frame = event.currentTarget.getBoundingClientRect();
    return {
      left: ((event.clientX - frame.left) / frame.width) * size.width,
      top: ((event.clientY - frame.top) / frame.height) * size.height,
    };
  }

  return {
    box,
    clear: () => draw(null),
    begin: () => {
      const [left, top] = [(size.width - FIRST.width) / 2, (size.height - FIRST.height) / 2];
      show(movedBox({ left, top, ...FIRST }, { left: 0, top: 0 }, size));
    },
    press: (event: PointerEvent<HTMLElement>) => {
      const onBox = event.target instanceof Element && event.target.closest("[data-drawn]");
      // A finger on the page scrolls it; on the box it moves the box.
      if (event.button !== 0 || (event.pointerType === "touch" && !onBox)) return;
      drag.current = { from: pointOf(event), moved: onBox ? latest.current : null };
      event.currentTarget.setPointerCapture(event.pointerId);
    },
    move: (event: PointerEvent<HTMLElement>) => {
      const held = drag.current;
      if (held === null) return;
      const at = pointOf(event);
      const by = { left: at.left - held.from.left, top: at.top - held.from.top };
      if (held.moved !== null) draw(movedBox(held.moved, by, size));
      else if (Math.hypot(by.left, by.top) > STILL) draw(drawnBox(held.from, at, size));
    },
    release: () => {
      if (drag.current !== null && latest.current !== null) enter(latest.current, page);
      drag.current = null;
    },
    keys: (event: KeyboardEvent<HTMLElement>) => {
      const by = ARROWS[event.key];
      const now = latest.current;
      if (by === undefined || now === null) return;
      event.preventDefault();
      show(event.shiftKey ? resizedBox(now, by, size) : movedBox(now, by, size));
    },
  };
}

/** The box on the picture, with what it does said to whoever hears it. */
export function DrawnBox({
  box,
  size,
  onKeyDown,
}: {
  readonly box: Box;
  readonly size: FormPage;
  readonly onKeyDown: (event: KeyboardEvent<HTMLElement>) => void;
}) {
  const part = (points: number, whole: number) => `${(points / whole) * 100}%`;
  return (
    <button
      type="button"
      data-drawn
      className={styles["drawn"]}
      aria-label={`New box, ${inches(box.width)} by ${inches(box.height)} in. Arrow keys move it; with Shift they change its size.`}
      onKeyDown={onKeyDown}
      style={{
        left: part(box.left, size.width),
        top: part(box.top, size.height),
        width: part(box.width, size.width),
        height: part(box.height, size.height),
      }}
    />
  );
}

const placing = () => document.querySelector<HTMLFormElement>('form[aria-label="Place a box"]');

/** The numbers of the box as the form takes them. */
function enter(box: Box, page: number): void {
  const form = placing();
  if (form === null) return;
  const set = (name: string, value: string) => {
    const input = form.elements.namedItem(name);
    if (input instanceof HTMLInputElement) input.value = value;
  };
  set("page", String(page));
  for (const side of ["left", "top", "width", "height"] as const) set(side, inches(box[side]));
}

/** Opens the form that places boxes at the name of the box. */
export function nameTheBox(): void {
  const form = placing();
  const fold = form?.closest("details");
  if (fold) fold.open = true;
  const name = form?.elements.namedItem("name");
  if (name instanceof HTMLInputElement) name.focus();
}
