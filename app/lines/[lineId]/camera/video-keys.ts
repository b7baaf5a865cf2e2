import type { ObservationKind } from "#lib/domain/facts/run.ts";

/** What the player is asked to do. */
export type VideoCommand =
  | { readonly do: "play" }
  | { readonly do: "step"; readonly seconds: number }
  | { readonly do: "speed"; readonly by: 1 | -1 }
  | { readonly do: "still" }
  | { readonly do: "log"; readonly kind: ObservationKind };

/** A letter for each thing that can be seen, in the order of the legend: J is for junk. */
export const KIND_KEYS: readonly (readonly [string, ObservationKind])[] = [
  ["t", "tie-in"],
  ["d", "fault"],
  ["k", "blockage"],
  ["x", "crossing"],
  ["w", "water"],
  ["j", "deposit"],
  ["m", "material"],
  ["b", "bend"],
  ["c", "cleanout"],
  ["n", "remark"],
];

/** One picture further, at the thirty a second of most cameras. */
const FRAME = 1 / 30;

export const SPEEDS: readonly number[] = [0.25, 0.5, 1, 1.5, 2, 4, 8];

/** A key as the browser tells it. */
export interface PressedKey {
  readonly key: string;
  readonly shiftKey: boolean;
  readonly ctrlKey: boolean;
  readonly metaKey: boolean;
  readonly altKey: boolean;
}

const STEPS: Readonly<Record<string, number>> = { ArrowLeft: -1, ArrowRight: 1 };
const FRAMES: Readonly<Record<string, number>> = { ",": -FRAME, ".": FRAME };
const SPEED_KEYS: Readonly<Record<string, 1 | -1>> = { "-": -1, "+": 1, "=": 1 };

/** What a key asks of the player; null: nothing, the browser has it. */
export function videoCommand(pressed: PressedKey): VideoCommand | null {
  if (pressed.ctrlKey || pressed.metaKey || pressed.altKey) return null;
  const key = pressed.key.length === 1 ? pressed.key.toLowerCase() : pressed.key;
  if (key === " ") return { do: "play" };
  if (key === "g") return { do: "still" };
  return moveOf(key, pressed.shiftKey) ?? logOf(key);
}

function moveOf(key: string, shift: boolean): VideoCommand | null {
  const step = STEPS[key];
  if (step !== undefined) return { do: "step", seconds: shift ? step * 5 : step };
  const frame = FRAMES[key];
  if (frame !== undefined) return { do: "step", seconds: frame };
  const by = SPEED_KEYS[key];
  return by === undefined ? null : { do: "speed", by };
}

function logOf(key: string): VideoCommand | null {
  const found = KIND_KEYS.find(([letter]) => letter === key);
  return found === undefined ? null : { do: "log", kind: found[1] };
}

/** `2:58.4`: a moment of the recording, with hours where there are any. */
export function clockWords(seconds: number): string {
  const tenths = Math.floor(seconds * 10 + 1e-6);
  const whole = Math.floor(tenths / 10);
  const hours = Math.floor(whole / 3600);
  const minutes = Math.floor((whole % 3600) / 60);
  const rest = `${String(whole % 60).padStart(2, "0")}.${tenths % 10}`;
  return hours === 0
    ? `${minutes}:${rest}`
    : `${hours}:${String(minutes).padStart(2, "0")}:${rest}`;
}
