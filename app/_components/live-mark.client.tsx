"use client";

import { useEffect } from "react";

/** Marks the page once its scripts are at work: what was pressed before may have gone nowhere. */
export function LiveMark() {
  useEffect(() => {
    document.documentElement.dataset["live"] = "";
  }, []);
  return null;
}
