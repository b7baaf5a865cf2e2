"use client";

import type { ReactNode } from "react";
import styles from "./grid.module.css";

/**
 * Around a table that is typed in: what is too wide scrolls inside it. Before the page's scripts are
 * there its cells take no focus, so the frame itself takes it and says what it is; after that the
 * cells do, and the frame is no stop of its own.
 */
export function Frame({
  label,
  live,
  children,
}: {
  readonly label: string;
  readonly live: boolean;
  readonly children: ReactNode;
}) {
  return (
    // biome-ignore lint/a11y/useSemanticElements: no fieldset, which would frame and name fields
    <div className={styles["frame"]} role="group" aria-label={label} tabIndex={live ? -1 : 0}>
      {children}
    </div>
  );
}
