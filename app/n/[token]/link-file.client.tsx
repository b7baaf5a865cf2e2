"use client";

import { useEffect, useId, useRef, useState } from "react";
import { sendFileTo } from "#app/_components/send-file.ts";
import { useEarlyFile } from "#app/_components/use-early-file.ts";

interface LinkFileWords {
  readonly label: string;
  readonly hint: string;
  readonly drop: string;
  readonly broken: string;
  /** With `{name}` and ` 0 %` in their places. */
  readonly storing: string;
  /** With `{name}` in its place. */
  readonly stored: string;
}

type Stage =
  | { readonly at: "empty" }
  | { readonly at: "sending"; readonly name: string; readonly percent: number }
  | { readonly at: "stored"; readonly id: string; readonly name: string }
  | { readonly at: "refused"; readonly message: string };

/** A photo or paper to go with an answer, sent as soon as it is chosen. */
export function LinkFile({
  to,
  name,
  words,
}: {
  readonly to: string;
  readonly name: string;
  readonly words: LinkFileWords;
}) {
  const [stage, setStage] = useState<Stage>({ at: "empty" });
  const input = useRef<HTMLInputElement>(null);
  const abort = useRef<AbortController | null>(null);
  const id = useId();

  useEffect(() => {
    const form = input.current?.form;
    const clear = () => setStage({ at: "empty" });
    form?.addEventListener("reset", clear);
    return () => {
      form?.removeEventListener("reset", clear);
      abort.current?.abort();
    };
  }, []);

  useEarlyFile(input, take);

  async function take(file: File) {
    abort.current?.abort();
    const sending = new AbortController();
    abort.current = sending;
    setStage({ at: "sending", name: file.name, percent: 0 });
    const sent = await sendFileTo(to, {
      file,
      signal: sending.signal,
      onProgress: (percent) => setStage({ at: "sending", name: file.name, percent }),
      broken: words.broken,
    });
    if (sending.signal.aborted) return;
    if (input.current !== null) input.current.value = "";
    setStage(
      sent.ok
        ? { at: "stored", id: sent.value, name: file.name }
        : { at: "refused", message: sent.error },
    );
  }

  function drop() {
    abort.current?.abort();
    setStage({ at: "empty" });
  }

  return (
    <div className="field">
      <label htmlFor={id}>{words.label}</label>
      <span id={`${id}-hint`} className="hint">
        {words.hint}
      </span>
      <input
        ref={input}
        id={id}
        type="file"
        className="input"
        accept=".pdf,.jpg,.jpeg,.png,application/pdf,image/jpeg,image/png"
        aria-describedby={`${id}-hint ${id}-stage`}
        aria-invalid={stage.at === "refused" ? true : undefined}
        onChange={(event) => {
          const file = event.target.files?.[0];
          if (file !== undefined) take(file);
        }}
      />
      <input type="hidden" name={name} value={stage.at === "stored" ? stage.id : ""} />
      <span id={`${id}-stage`} role="status">
        {stage.at === "refused" ? <span className="mend">{stage.message}</span> : null}
        {stage.at === "sending" || stage.at === "stored" ? (
          <span>
            {saidOf(stage, words)}{" "}
            <button type="button" className="link-button" onClick={drop}>
              {words.drop}
            </button>
          </span>
        ) : null}
      </span>
    </div>
  );
}

function saidOf(stage: Extract<Stage, { at: "sending" | "stored" }>, words: LinkFileWords): string {
  if (stage.at === "stored") return words.stored.replace("{name}", stage.name);
  return words.storing.replace("{name}", stage.name).replace(" 0 %", ` ${stage.percent} %`);
}
