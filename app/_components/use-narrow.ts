import { useEffect, useState } from "react";

/** Whether the page is as narrow as a phone; false until that is known. */
export function useNarrow(): boolean {
  const [narrow, setNarrow] = useState(false);
  useEffect(() => {
    const query = window.matchMedia("(max-width: 42rem)");
    const look = () => setNarrow(query.matches);
    look();
    query.addEventListener("change", look);
    return () => query.removeEventListener("change", look);
  }, []);
  return narrow;
}
