"use client";

import { type KeyboardEvent, type ReactNode, type RefObject, useCallback, useState } from "react";
import type { ObservationKind } from "#lib/domain/facts/run.ts";
import { plainFeet } from "#lib/domain/length/station.ts";
import { type ClockState, useClock } from "./use-clock.ts";
import styles from "./video.module.css";
import { Legend, Transport } from "./video-controls.client.tsx";
import { clockWords, SPEEDS, type VideoCommand, videoCommand } from "./video-keys.ts";

export interface PlayerProps {
  readonly src: string;
  readonly runName: string;
  readonly video: RefObject<HTMLVideoElement | null>;
  /** The counter at a second, as far as the log tells; hundredths of a foot. */
  readonly counterAt: (second: number) => number | null;
  /** Null for those who may not log. */
  readonly onLog: ((kind: ObservationKind, second: number) => void) | null;
  readonly onStill: (() => void) | null;
  /** What came of the last key. */
  readonly said: string;
  readonly children?: ReactNode;
}

/** The recording of a run, driven by keys while it has the focus, and by the buttons that name them. */
export function VideoPlayer(props: PlayerProps) {
  const { src, runName, video, onLog, onStill, said } = props;
  const [speed, setSpeed] = useState(1);
  const clock = useClock(video);

  const obey = useCallback(
    (command: VideoCommand) => {
      const { current } = video;
      if (current === null) return;
      if (command.do === "play") {
        if (current.paused) void current.play().catch(() => undefined);
        else current.pause();
      } else if (command.do === "step") step(current, command.seconds);
      else if (command.do === "speed") {
        const at = SPEEDS.indexOf(current.playbackRate) + command.by;
        current.playbackRate = SPEEDS[Math.min(Math.max(at, 0), SPEEDS.length - 1)] ?? 1;
        setSpeed(current.playbackRate);
      } else if (command.do === "still") onStill?.();
      else onLog?.(command.kind, current.currentTime);
    },
    [video, onLog, onStill],
  );

  function press(event: KeyboardEvent<HTMLElement>) {
    if (isOwnKey(event)) return;
    const command = videoCommand(event);
    if (command === null) return;
    event.preventDefault();
    if (event.repeat && command.do !== "step") return;
    obey(command);
  }

  return (
    <section
      className={`${styles["side"]} screen-only`}
      aria-label={`Video of ${runName}`}
      onKeyDown={press}
    >
      <div className={styles["screen"]}>
        {/* biome-ignore lint/a11y/useMediaCaption: what was said is written down in the log beside it */}
        <video
          ref={video}
          src={src}
          tabIndex={0}
          className={styles["video"]}
          preload="metadata"
          playsInline
          aria-label={`Video of ${runName}; space plays it, letters log what is seen`}
          onClick={() => {
            video.current?.focus();
            obey({ do: "play" });
          }}
        />
        {clock.broken ? (
          <p className="mend">
            This browser can’t play this video. Save a copy as MP4 (H.264), remove this one, and
            upload the copy.
          </p>
        ) : null}
        <Clock clock={clock} video={video} speed={speed} counter={props.counterAt(clock.now)} />
        <Transport clock={clock} obey={obey} speed={speed} />
      </div>
      <Legend obey={obey} mayLog={onLog !== null} />
      <p role="status" className={styles["said"]}>
        {said}
      </p>
      {props.children}
    </section>
  );
}

/** A key that the control in focus has a use for itself. */
function isOwnKey({ key, target }: KeyboardEvent<HTMLElement>): boolean {
  if (target instanceof HTMLButtonElement || target instanceof HTMLAnchorElement)
    return key === " " || key === "Enter";
  return target instanceof HTMLInputElement || target instanceof HTMLSelectElement;
}

function step(video: HTMLVideoElement, seconds: number) {
  if (Math.abs(seconds) < 1) video.pause();
  const end = Number.isFinite(video.duration) ? video.duration : Number.MAX_SAFE_INTEGER;
  video.currentTime = Math.min(Math.max(video.currentTime + seconds, 0), end);
}

function Clock({
  clock,
  video,
  speed,
  counter,
}: {
  readonly clock: ClockState;
  readonly video: RefObject<HTMLVideoElement | null>;
  readonly speed: number;
  readonly counter: number | null;
}) {
  return (
    <>
      <input
        type="range"
        className={styles["along"]}
        min={0}
        max={clock.length ?? 0}
        step={0.1}
        value={clock.now}
        aria-label="Time in the video"
        aria-valuetext={clockWords(clock.now)}
        onChange={(event) => {
          if (video.current !== null) video.current.currentTime = Number(event.target.value);
        }}
      />
      <p className={styles["clock"]}>
        <span className={styles["now"]}>{clockWords(clock.now)}</span>
        <span className="muted">
          {clock.length === null ? "" : `of ${clockWords(clock.length)}`}
          {speed === 1 ? "" : `, at ${speed}×`}
        </span>
        <span className={styles["counter"]}>
          {counter === null ? "" : `about ${plainFeet(counter)} ft`}
        </span>
      </p>
    </>
  );
}
