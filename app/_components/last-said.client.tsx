"use client";

import { usePathname } from "next/navigation";
import { useEffect, useRef, useSyncExternalStore } from "react";
import styles from "./last-said.module.css";
import { forgetSaid, lastSaid, onLastSaid } from "./last-said.ts";

const NOTHING = () => null;
const TYPED: Readonly<Record<string, string>> = { en: "You typed:", es: "Usted escribió:" };
const CLOSE: Readonly<Record<string, string>> = { en: "Close", es: "Cerrar" };

/** The answer of a form that is gone from the page, at the window's foot until it is closed. */
export function LastSaid() {
  const said = useSyncExternalStore(onLastSaid, lastSaid, NOTHING);
  const pathname = usePathname();
  const from = useRef(pathname);
  useEffect(() => {
    if (from.current !== pathname) forgetSaid();
    from.current = pathname;
  }, [pathname]);
  return (
    <div role="status" aria-live="polite" className="screen-only">
      {said === null ? null : (
        <div className={styles["said"]} lang={said.language}>
          <p>
            {said.words}{" "}
            <button type="button" className="link-button" onClick={forgetSaid}>
              {CLOSE[said.language] ?? CLOSE["en"]}
            </button>
          </p>
          {said.typed.length === 0 ? null : (
            <>
              <p>{TYPED[said.language] ?? TYPED["en"]}</p>
              <ul className={styles["typed"]}>
                {said.typed.map((each) => (
                  <li key={each} className="prewrap">
                    {each}
                  </li>
                ))}
              </ul>
            </>
          )}
        </div>
      )}
    </div>
  );
}
