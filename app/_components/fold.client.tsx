"use client";

import { type ReactNode, useEffect, useRef, useState } from "react";

/** Details that open by themselves when the address names what they hold. */
export function Fold({
  id,
  summary,
  opened = false,
  children,
}: {
  readonly id?: string | undefined;
  /** Open at first. */
  readonly opened?: boolean | undefined;
  readonly summary: ReactNode;
  readonly children: ReactNode;
}) {
  const details = useRef<HTMLDetailsElement>(null);
  // Only at first: what a person opens or closes later stays as they left it.
  const [first] = useState(opened);
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
    <details ref={details} className="section-fold" open={first}>
      <summary>{summary}</summary>
      {children}
    </details>
  );
}
