import { type RefObject, useEffect, useState } from "react";

export interface ClockState {
  /** Seconds, to a tenth. */
  readonly now: number;
  readonly length: number | null;
  readonly playing: boolean;
  readonly broken: boolean;
}

/** Where the recording stands, ten times a second while it plays. */
export function useClock(video: RefObject<HTMLVideoElement | null>): ClockState {
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
