"use client";

import { type ReactNode, useState } from "react";

/**
 * Details that are open at first, or not: a newer page does not fold them over what was answered, and
 * what a person opens or closes stays as they left it.
 */
export function OpenAtFirst({
  opened,
  summary,
  children,
}: {
  readonly opened: boolean;
  readonly summary: ReactNode;
  readonly children: ReactNode;
}) {
  const [first] = useState(opened);
  return (
    <details open={first} className="screen-only">
      <summary>{summary}</summary>
      {children}
    </details>
  );
}
