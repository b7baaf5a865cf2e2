"use client";

import { type ReactNode, useEffect, useLayoutEffect, useRef, useState } from "react";

/** As narrow as the rules of app/globals.css have it for a phone. */
const PHONE = "(max-width: 42rem)";

/** Details that open by themselves when the address names what they hold. */
export function Fold({
  id,
  summary,
  opened = false,
  onPhone = false,
  bare = false,
  children,
}: {
  readonly id?: string | undefined;
  /** Open at first. */
  readonly opened?: boolean | undefined;
  /** Folded on a phone alone; elsewhere it is open and looks like any other part. */
  readonly onPhone?: boolean | undefined;
  /** Of a part that is folded on a phone alone: elsewhere its summary is not shown. */
  readonly bare?: boolean | undefined;
  readonly summary: ReactNode;
  readonly children: ReactNode;
}) {
  const details = useRef<HTMLDetailsElement>(null);
  // Only at first: what a person opens or closes later stays as they left it.
  const [first] = useState({ wide: opened || onPhone, phone: opened });
  useLayoutEffect(() => {
    if (onPhone && details.current !== null && window.matchMedia(PHONE).matches)
      details.current.open = first.phone;
  }, [onPhone, first]);
  // Paper has no fold: what is folded on a phone alone is printed whole.
  useEffect(() => {
    if (!onPhone) return;
    let wasOpen = true;
    const unfold = () => {
      wasOpen = details.current?.open ?? true;
      if (details.current !== null) details.current.open = true;
    };
    const foldAgain = () => {
      if (details.current !== null) details.current.open = wasOpen;
    };
    window.addEventListener("beforeprint", unfold);
    window.addEventListener("afterprint", foldAgain);
    return () => {
      window.removeEventListener("beforeprint", unfold);
      window.removeEventListener("afterprint", foldAgain);
    };
  }, [onPhone]);
  useEffect(() => {
    const openIfNamed = () => {
      const name = decodeURIComponent(window.location.hash.slice(1));
      const named = name === "" ? null : document.getElementById(name);
      const it = details.current;
      if (it === null || named === null) return;
      if (name !== id && !it.contains(named)) return;
      it.open = true;
      named.scrollIntoView();
    };
    openIfNamed();
    window.addEventListener("hashchange", openIfNamed);
    return () => window.removeEventListener("hashchange", openIfNamed);
  }, [id]);
  return (
    <details
      ref={details}
      className={`section-fold ${onPhone ? "section-fold-phone" : ""} ${bare ? "section-fold-bare" : ""}`}
      open={first.wide}
    >
      <summary>{summary}</summary>
      {children}
    </details>
  );
}
