import { type RefObject, useEffect, useRef } from "react";

/** Takes a file that was chosen before the page's scripts were there, as if it were chosen now. */
export function useEarlyFile(
  input: RefObject<HTMLInputElement | null>,
  take: (file: File) => void,
): void {
  const taking = useRef(take);
  taking.current = take;
  useEffect(() => {
    const file = input.current?.files?.[0];
    if (file !== undefined) taking.current(file);
  }, [input]);
}
