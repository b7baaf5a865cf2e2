import { type RefObject, useEffect, useRef, useState } from "react";
import type { Result } from "#lib/result.ts";
import type { Sending } from "./send-file.ts";
import { useEarlyFile } from "./use-early-file.ts";

export type UploadStage =
  | { readonly at: "empty" }
  | { readonly at: "sending"; readonly name: string; readonly percent: number }
  | {
      readonly at: "stored";
      readonly id: string;
      readonly name: string;
      /** Null of a file that was there before. */
      readonly bytes: number | null;
    }
  | { readonly at: "refused"; readonly message: string };

/** How far a file has got that is sent as soon as it is chosen, also before scripts were there. */
export function useUpload({
  input,
  start = { at: "empty" },
  send,
  onStored,
}: {
  readonly input: RefObject<HTMLInputElement | null>;
  readonly start?: UploadStage;
  /** Sends it; the id of what was stored, or a sentence on what is wrong. */
  readonly send: (sending: Sending) => Promise<Result<string, string>>;
  readonly onStored?:
    | ((stored: { readonly id: string; readonly name: string } | null) => void)
    | undefined;
}) {
  const [stage, setStage] = useState(start);
  const abort = useRef<AbortController | null>(null);

  useEffect(() => {
    const form = input.current?.form;
    const clear = () => setStage({ at: "empty" });
    form?.addEventListener("reset", clear);
    return () => {
      form?.removeEventListener("reset", clear);
      abort.current?.abort();
    };
  }, [input]);

  useEarlyFile(input, take);

  async function take(file: File) {
    const { name, size: bytes } = file;
    abort.current?.abort();
    const sending = new AbortController();
    abort.current = sending;
    setStage({ at: "sending", name, percent: 0 });
    const sent = await send({
      file,
      signal: sending.signal,
      onProgress: (percent) => setStage({ at: "sending", name, percent }),
    });
    if (sending.signal.aborted) return;
    if (input.current !== null) input.current.value = "";
    setStage(
      sent.ok
        ? { at: "stored", id: sent.value, name, bytes }
        : { at: "refused", message: sent.error },
    );
    if (sent.ok) onStored?.({ id: sent.value, name });
  }

  function drop() {
    abort.current?.abort();
    setStage({ at: "empty" });
    onStored?.(null);
  }

  return { stage, take, drop };
}
