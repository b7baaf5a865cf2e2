"use client";

import {
  type KeyboardEvent,
  type ReactNode,
  type RefObject,
  useCallback,
  useEffect,
  useState,
} from "react";
import { plainFeet } from "#lib/domain/line/station.ts";
import type { ObservationKind } from "#lib/domain/run/run.ts";
import { OBSERVATION_WORDS } from "../_field-terms.ts";
import { clockWords, KIND_KEYS, SPEEDS, type VideoCommand, videoCommand } from "./_video-keys.ts";
import styles from "./video.module.css";

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
      aria-label={`Recording of ${runName}`}
      onKeyDown={press}
    >
      <div className={styles["screen"]}>
        <video
          ref={video}
          src={src}
          tabIndex={0}
          className={styles["video"]}
          preload="metadata"
          playsInline
          aria-label={`Recording of ${runName}; space plays it, letters log what is seen`}
          onClick={() => {
            video.current?.focus();
            obey({ do: "play" });
          }}
        >
          <track kind="captions" />
        </video>
        {clock.broken ? (
          <p className="mend">
            This browser cannot show this recording. Save a copy of it as MP4 (H.264) with the
            program that made it, take this one out of the file, and add the copy.
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

interface ClockState {
  /** Seconds, to a tenth. */
  readonly now: number;
  readonly length: number | null;
  readonly playing: boolean;
  readonly broken: boolean;
}

/** Where the recording stands, ten times a second while it plays. */
function useClock(video: RefObject<HTMLVideoElement | null>): ClockState {
  const [clock, setClock] = useState<ClockState>({
    now: 0,
    length: null,
    playing: false,
    broken: false,
  });
  useEffect(() => {
    const { current } = video;
    if (current === null) return;
    const look = () => {
      const next: ClockState = {
        now: Math.floor(current.currentTime * 10 + 1e-6) / 10,
        length: Number.isFinite(current.duration) ? current.duration : null,
        playing: !current.paused && !current.ended,
        broken: current.error !== null,
      };
      setClock((last) => (isSameClock(last, next) ? last : next));
    };
    const events = ["timeupdate", "seeking", "seeked", "loadedmetadata", "durationchange"];
    const all = [...events, "play", "pause", "ended", "error"];
    for (const name of all) current.addEventListener(name, look);
    const timer = setInterval(() => {
      if (!current.paused) look();
    }, 100);
    look();
    return () => {
      for (const name of all) current.removeEventListener(name, look);
      clearInterval(timer);
    };
  }, [video]);
  return clock;
}

function isSameClock(one: ClockState, other: ClockState): boolean {
  return (
    one.now === other.now &&
    one.length === other.length &&
    one.playing === other.playing &&
    one.broken === other.broken
  );
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
        aria-label="Moment of the recording"
        aria-valuetext={clockWords(clock.now)}
        onChange={(event) => {
          if (video.current !== null) video.current.currentTime = Number(event.target.value);
        }}
      />
      <p className={styles["clock"]}>
        <span className={styles["now"]}>{clockWords(clock.now)}</span>
        <span className="muted">
          {clock.length === null ? "" : `of ${clockWords(clock.length)}`}
          {speed === 1 ? "" : `, at ${speed} ×`}
        </span>
        <span className={styles["counter"]}>
          {counter === null ? "" : `about ${plainFeet(counter)} ft`}
        </span>
      </p>
    </>
  );
}

type Obey = (command: VideoCommand) => void;

function Transport({
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
      <Press onPress={() => obey(back(-5))} label="Back 5 s, Shift and left">
        −5 s
      </Press>
      <Press onPress={() => obey(back(-1))} label="Back 1 s, left">
        −1 s
      </Press>
      <Press onPress={() => obey({ do: "play" })} label="Play or pause, space" main>
        {clock.playing ? "Pause" : "Play"}
      </Press>
      <Press onPress={() => obey(back(1))} label="On 1 s, right">
        +1 s
      </Press>
      <Press onPress={() => obey(back(5))} label="On 5 s, Shift and right">
        +5 s
      </Press>
      <span className={styles["fine"]}>
        <Press onPress={() => obey(back(-1 / 30))} label="One picture back, comma">
          ‹ picture
        </Press>
        <Press onPress={() => obey(back(1 / 30))} label="One picture on, full stop">
          picture ›
        </Press>
        <Press onPress={() => obey({ do: "speed", by: -1 })} label="Slower, minus">
          slower
        </Press>
        <Press onPress={() => obey({ do: "speed", by: 1 })} label={`Faster than ${speed} ×, plus`}>
          faster
        </Press>
      </span>
    </div>
  );
}

function Legend({ obey, mayLog }: { readonly obey: Obey; readonly mayLog: boolean }) {
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
            <kbd>G</kbd> still for the row
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
          <kbd>,</kbd> <kbd>.</kbd> one picture
        </span>
        <span>
          <kbd>−</kbd> <kbd>+</kbd> speed
        </span>
        {mayLog ? (
          <span>
            <kbd>Ctrl</kbd> <kbd>Enter</kbd> from the table back to the video
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
