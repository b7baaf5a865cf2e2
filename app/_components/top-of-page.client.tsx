"use client";

import { usePathname } from "next/navigation";
import { useEffect, useRef } from "react";

/**
 * Another page begins at its top, whatever was saved before; a link to a place in a page goes to that
 * place, and going back goes to where one was.
 */
export function TopOfPage() {
  const pathname = usePathname();
  const shown = useRef(pathname);
  const back = useRef(false);

  useEffect(() => {
    const goBack = () => {
      back.current = true;
    };
    window.addEventListener("popstate", goBack);
    return () => window.removeEventListener("popstate", goBack);
  }, []);

  useEffect(() => {
    if (shown.current === pathname) return;
    shown.current = pathname;
    if (!back.current && window.location.hash === "") window.scrollTo(0, 0);
    back.current = false;
  }, [pathname]);
  return null;
}
