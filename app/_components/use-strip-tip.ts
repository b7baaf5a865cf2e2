import { type FocusEvent, type PointerEvent, type RefObject, useState } from "react";

/** What the mark under the pointer or the focus is, and where to say it. */
export interface StripTip {
  readonly words: string;
  /** From the left of the sheet, 0 to 1, so that the words stay on it; and pixels from its top. */
  readonly part: number;
  readonly top: number;
}

/** Says what a mark is while the pointer is on it or the keyboard has come to it. */
export function useStripTip(sheet: RefObject<HTMLElement | null>) {
  const [tip, setTip] = useState<StripTip | null>(null);
  const show = (target: EventTarget, pointerX?: number) => {
    const found = tipOf(target, sheet.current, pointerX);
    setTip((now) => (sameTip(now, found) ? now : found));
  };
  return {
    tip,
    hide: () => setTip(null),
    handlers: {
      onPointerMove: (event: PointerEvent) => {
        if (event.pointerType !== "touch" && event.buttons === 0) show(event.target, event.clientX);
      },
      onPointerLeave: () => setTip(null),
      onPointerDown: () => setTip(null),
      onFocus: (event: FocusEvent) => {
        if (event.target.matches(":focus-visible")) show(event.target);
      },
      onBlur: () => setTip(null),
    },
  };
}

function tipOf(
  target: EventTarget,
  sheet: HTMLElement | null,
  pointerX: number | undefined,
): StripTip | null {
  const mark = target instanceof Element ? target.closest("[data-mark], [data-tip]") : null;
  const words = mark?.getAttribute("data-tip") ?? mark?.getAttribute("aria-label") ?? "";
  if (mark === null || sheet === null || words === "") return null;
  const at = mark.getBoundingClientRect();
  const on = sheet.getBoundingClientRect();
  const middle = pointerX ?? (at.left + at.right) / 2;
  const part = Math.min(Math.max((middle - on.left) / on.width, 0), 1);
  return { words, part: Math.round(part * 200) / 200, top: at.bottom - on.top + 6 };
}

function sameTip(one: StripTip | null, other: StripTip | null): boolean {
  return one?.words === other?.words && one?.part === other?.part && one?.top === other?.top;
}
