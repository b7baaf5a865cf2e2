"use client";

import { useRouter } from "next/navigation";
import { useEffect, useId, useRef, useState } from "react";
import { formatBytes } from "#app/_components/bytes.ts";
import upload from "#app/_components/upload.module.css";
import { useEarlyFile } from "#app/_components/use-early-file.ts";
import { sendVideo } from "./send-video.ts";

type Stage =
  | { readonly at: "empty" }
  | {
      readonly at: "sending";
      readonly name: string;
      readonly have: number;
      readonly size: number;
    }
  | { readonly at: "refused"; readonly message: string };

/** A run's recording to be stored, with its progress; it can be stopped and gone on with. */
export function VideoUpload({ url, label }: { readonly url: string; readonly label: string }) {
  const [stage, setStage] = useState<Stage>({ at: "empty" });
  const input = useRef<HTMLInputElement>(null);
  const abort = useRef<AbortController | null>(null);
  const router = useRouter();
  const id = useId();
  useEffect(() => () => abort.current?.abort(), []);
  useStay(stage.at === "sending");

  useEarlyFile(input, take);

  async function take(file: File) {
    abort.current?.abort();
    const sending = new AbortController();
    abort.current = sending;
    const show = (have: number) =>
      setStage({ at: "sending", name: file.name, have, size: file.size });
    show(0);
    const sent = await sendVideo({ url, file, signal: sending.signal, onProgress: show });
    if (input.current !== null) input.current.value = "";
    setStage(sent.ok ? { at: "empty" } : { at: "refused", message: sent.error });
    if (sent.ok) router.refresh();
  }

  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      <span id={`${id}-hint`} className="hint">
        MP4 or WebM, up to several gigabytes. If the connection drops, choose the same file again to
        resume.
      </span>
      <input
        ref={input}
        id={id}
        type="file"
        className="input"
        accept=".mp4,.m4v,.webm,.mov,video/mp4,video/webm"
        aria-describedby={`${id}-hint ${id}-stage`}
        aria-invalid={stage.at === "refused" ? true : undefined}
        disabled={stage.at === "sending"}
        onChange={(event) => {
          const file = event.target.files?.[0];
          if (file !== undefined) take(file);
        }}
      />
      <span id={`${id}-stage`} role="status">
        <StageWords stage={stage} onStop={() => abort.current?.abort()} />
      </span>
    </div>
  );
}

function StageWords({ stage, onStop }: { readonly stage: Stage; readonly onStop: () => void }) {
  if (stage.at === "empty") return null;
  if (stage.at === "refused") return <span className="mend">{stage.message}</span>;
  const { name, have, size } = stage;
  return (
    <span className="stack-tight">
      <span>
        {have >= size
          ? `Upload complete; checking ${name} …`
          : `Uploading ${name}: ${formatBytes(have)} of ${formatBytes(size)}.`}{" "}
        <button type="button" className="link-button" onClick={onStop}>
          Stop
        </button>
      </span>
      <progress max={size} value={have} className={upload["progress"]} />
    </span>
  );
}

/** Asks before the page is left while something is being sent. */
function useStay(wanted: boolean) {
  useEffect(() => {
    if (!wanted) return;
    const ask = (event: BeforeUnloadEvent) => event.preventDefault();
    window.addEventListener("beforeunload", ask);
    return () => window.removeEventListener("beforeunload", ask);
  }, [wanted]);
}
