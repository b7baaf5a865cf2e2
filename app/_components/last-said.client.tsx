"use client";

import { usePathname } from "next/navigation";
import { useEffect, useRef, useSyncExternalStore } from "react";
import styles from "./last-said.module.css";
import { forgetSaid, lastSaid, onLastSaid } from "./last-said.ts";

const NOTHING = () => "";

/** The answer of a form that is gone from the page, at the window's foot until it is closed. */
export function LastSaid() {
  const words = useSyncExternalStore(onLastSaid, lastSaid, NOTHING);
  const pathname = usePathname();
  const from = useRef(pathname);
  useEffect(() => {
    if (from.current !== pathname) forgetSaid();
    from.current = pathname;
  }, [pathname]);
  return (
    <div role="status" aria-live="polite" className="screen-only">
      {words === "" ? null : (
        <p className={styles["said"]}>
          {words}{" "}
          <button type="button" className="link-button" onClick={forgetSaid}>
            Close
          </button>
        </p>
      )}
    </div>
  );
}
