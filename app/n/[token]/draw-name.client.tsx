"use client";

import { useEffect, useRef, useState } from "react";
import SignaturePad from "signature_pad";
import styles from "./private-page.module.css";

interface DrawWords {
  readonly draw: string;
  readonly note: string;
  readonly place: string;
  readonly clear: string;
}

/** A place to draw a name; the typed name does without it. Always ink on white, as it is kept. */
export function DrawName({ name, words }: { readonly name: string; readonly words: DrawWords }) {
  const canvas = useRef<HTMLCanvasElement>(null);
  const pad = useRef<SignaturePad | null>(null);
  const [drawn, setDrawn] = useState("");
  const [open, setOpen] = useState(false);

  useEffect(() => {
    const place = canvas.current;
    if (!open || place === null) return;
    const scale = Math.max(window.devicePixelRatio, 1);
    place.width = place.offsetWidth * scale;
    place.height = place.offsetHeight * scale;
    place.getContext("2d")?.scale(scale, scale);
    const fresh = new SignaturePad(place, { backgroundColor: "#ffffff", penColor: "#18222c" });
    const keep = () => setDrawn(fresh.isEmpty() ? "" : fresh.toDataURL("image/png"));
    fresh.addEventListener("endStroke", keep);
    pad.current = fresh;
    return () => {
      fresh.removeEventListener("endStroke", keep);
      fresh.off();
    };
  }, [open]);

  function clear() {
    pad.current?.clear();
    setDrawn("");
  }

  return (
    <details onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>{words.draw}</summary>
      <div className="stack-tight">
        <p className="muted small">{words.note}</p>
        <canvas ref={canvas} className={styles["pad"]} role="img" aria-label={words.place} />
        <div>
          <button type="button" className="link-button" onClick={clear}>
            {words.clear}
          </button>
        </div>
      </div>
      <input type="hidden" name={name} value={drawn} />
    </details>
  );
}
