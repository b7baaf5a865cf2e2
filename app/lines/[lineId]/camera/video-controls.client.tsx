"use client";

import type { ReactNode } from "react";
import { OBSERVATION_WORDS } from "#lib/domain/facts/run-words.ts";
import type { ClockState } from "./use-clock.ts";
import styles from "./video.module.css";
import { KIND_KEYS, type VideoCommand } from "./video-keys.ts";

type Obey = (command: VideoCommand) => void;

/** The keys that move through the video, as buttons. */
export function Transport({
  clock,
  obey,
  speed,
}: {
  readonly clock: ClockState;
  readonly obey: Obey;
  readonly speed: number;
}) {
  const back = (seconds: number) => ({ do: "step", seconds }) as const;
  return (
    <div className={styles["transport"]}>
      <Press onPress={() => obey(back(-5))} label="Back 5 s (Shift+←)">
        −5 s
      </Press>
      <Press onPress={() => obey(back(-1))} label="Back 1 s (←)">
        −1 s
      </Press>
      <Press onPress={() => obey({ do: "play" })} label="Play or pause (space)" main>
        {clock.playing ? "Pause" : "Play"}
      </Press>
      <Press onPress={() => obey(back(1))} label="Forward 1 s (→)">
        +1 s
      </Press>
      <Press onPress={() => obey(back(5))} label="Forward 5 s (Shift+→)">
        +5 s
      </Press>
      <span className={styles["fine"]}>
        <Press onPress={() => obey(back(-1 / 30))} label="Previous frame (,)">
          ‹ frame
        </Press>
        <Press onPress={() => obey(back(1 / 30))} label="Next frame (.)">
          frame ›
        </Press>
        <Press onPress={() => obey({ do: "speed", by: -1 })} label="Slower (−)">
          slower
        </Press>
        <Press onPress={() => obey({ do: "speed", by: 1 })} label={`Faster than ${speed}× (+)`}>
          faster
        </Press>
      </span>
    </div>
  );
}

/** The letters that log, as buttons, and what the other keys do. */
export function Legend({ obey, mayLog }: { readonly obey: Obey; readonly mayLog: boolean }) {
  return (
    <div className={styles["legend"]}>
      {mayLog ? (
        <div className={styles["kinds"]}>
          {KIND_KEYS.map(([key, kind]) => (
            <Press key={key} onPress={() => obey({ do: "log", kind })}>
              <kbd>{key.toUpperCase()}</kbd> {OBSERVATION_WORDS[kind]}
            </Press>
          ))}
          <Press onPress={() => obey({ do: "still" })}>
            <kbd>G</kbd> add photo to row
          </Press>
        </div>
      ) : null}
      <p className={`${styles["keys"]} small muted`}>
        <span>
          <kbd>space</kbd> play, pause
        </span>
        <span>
          <kbd>←</kbd> <kbd>→</kbd> 1 s, with <kbd>Shift</kbd> 5 s
        </span>
        <span>
          <kbd>,</kbd> <kbd>.</kbd> one frame
        </span>
        <span>
          <kbd>−</kbd> <kbd>+</kbd> speed
        </span>
        {mayLog ? (
          <span>
            <kbd>Ctrl+Enter</kbd> back to the video
          </span>
        ) : null}
      </p>
    </div>
  );
}

/** A button that leaves the focus where it is, so that the keys go on working. */
function Press({
  onPress,
  label,
  main = false,
  children,
}: {
  readonly onPress: () => void;
  readonly label?: string;
  readonly main?: boolean;
  readonly children: ReactNode;
}) {
  return (
    <button
      type="button"
      className={main ? `${styles["press"]} ${styles["main"]}` : styles["press"]}
      title={label}
      aria-label={label}
      onMouseDown={(event) => event.preventDefault()}
      onClick={onPress}
    >
      {children}
    </button>
  );
}
