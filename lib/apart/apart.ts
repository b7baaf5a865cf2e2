import { type ChildProcess, spawn } from "node:child_process";
import fs from "node:fs";
import { err, ok, type Result } from "#lib/result.ts";

// What reads a file of a stranger's may need more time or memory than there is, however small the
// file. It runs in a process of its own then, which is ended when it takes too much; everybody else
// goes on meanwhile.

export interface Limits {
  /** For one piece of work, in milliseconds. */
  readonly time: number;
  /** In megabytes, whatever they are used for. */
  readonly memory: number;
}

/** Why there is no answer. */
export type NoAnswer = "too-long" | "too-much-memory" | "broke";

/** A process that does one piece of work after the other. */
export interface Apart<I, O> {
  /** What the work came to. `time` is a shorter limit for this piece. */
  readonly ask: (input: I, time?: number) => Promise<Result<O, NoAnswer>>;
  readonly close: () => void;
}

const LOOK_MS = 50;
const STARTING_MS = 60_000;
const MEGABYTE = 1_048_576;
/** V8 ends a process without a word to its parent; this is the code that it leaves then. */
const OUT_OF_MEMORY = "SIGABRT";

/**
 * Opens a process for the work of `entry`, a module that calls `workApart` (a path from the
 * program's own folder: bundlers move source files, so their place says nothing). The process starts
 * with the first piece of work, and anew after one that it did not survive.
 */
export function openApart<I extends object, O>(entry: string, limits: Limits): Apart<I, O> {
  let child: ChildProcess | null = null;
  return { ask, close };

  async function ask(input: I, time = limits.time): Promise<Result<O, NoAnswer>> {
    const started = child === null ? await begin() : ok(child);
    if (!started.ok) return started;
    const within = { ...limits, time: Math.min(time, limits.time) };
    const answer = await nextAnswer<{ value: O } | null>(started.value, within, input);
    if (answer.ok && answer.value !== null) return ok(answer.value.value);
    if (!answer.ok) close();
    return answer.ok ? err("broke") : answer;
  }

  /** Starting takes a moment that is not the work's. */
  async function begin(): Promise<Result<ChildProcess, NoAnswer>> {
    child = start(entry, limits);
    const ready = await nextAnswer(child, { ...limits, time: STARTING_MS }, null);
    if (ready.ok) return ok(child);
    close();
    return ready;
  }

  function close() {
    child?.removeAllListeners();
    // What it says last is no news: it was ended.
    child?.on("error", () => {});
    child?.kill("SIGKILL");
    child = null;
  }
}

/** As many at once as leave the machine to others. */
const MOST_AT_ONCE = 2;
let busy = 0;
const waiting: (() => void)[] = [];

/** One piece of work in a process of its own; where too many are at work, waits for its turn. */
export async function askApart<I extends object, O>(
  entry: string,
  limits: Limits,
  input: I,
): Promise<Result<O, NoAnswer>> {
  if (busy >= MOST_AT_ONCE) await new Promise<void>((resolve) => waiting.push(resolve));
  busy += 1;
  const apart = openApart<I, O>(entry, limits);
  try {
    return await apart.ask(input);
  } finally {
    apart.close();
    busy -= 1;
    waiting.shift()?.();
  }
}

function start(entry: string, { memory }: Limits): ChildProcess {
  const options = ["--import", "tsx", `--max-old-space-size=${Math.floor(memory * 0.8)}`];
  // Run by Node as any program: a bundler would take the module that is forked into its bundle.
  return spawn(process.execPath, [...options, entry], {
    cwd: process.cwd(),
    // Nothing of ours is its business.
    env: { NODE_ENV: "production" },
    serialization: "advanced",
    stdio: ["ignore", "ignore", "ignore", "ipc"],
  });
}

/** The next thing that the process says; with an input, its answer to that. */
function nextAnswer<O>(
  child: ChildProcess,
  { time, memory }: Limits,
  input: object | null,
): Promise<Result<O, NoAnswer>> {
  return new Promise((resolve) => {
    const clock = setTimeout(() => end(err("too-long")), time);
    const look = setInterval(() => {
      if (memoryOf(child) > memory * MEGABYTE) end(err("too-much-memory"));
    }, LOOK_MS);
    child.on("message", onMessage);
    child.on("exit", onExit);
    child.on("error", onError);
    if (input !== null)
      child.send(input, (error) => {
        if (error !== null) end(err("broke"));
      });

    function onMessage(answer: unknown) {
      end(ok(answer as O));
    }
    function onExit(_code: number | null, signal: string | null) {
      end(err(signal === OUT_OF_MEMORY ? "too-much-memory" : "broke"));
    }
    function onError() {
      end(err("broke"));
    }
    function end(result: Result<O, NoAnswer>) {
      clearTimeout(clock);
      clearInterval(look);
      child.off("message", onMessage);
      child.off("exit", onExit);
      child.off("error", onError);
      resolve(result);
    }
  });
}

/** Memory that a process holds, as Linux tells it; elsewhere only V8's own limit counts. */
function memoryOf({ pid }: ChildProcess): number {
  try {
    const [, kilobytes = "0"] =
      /^VmRSS:\s*(\d+)/m.exec(fs.readFileSync(`/proc/${pid}/status`, "utf8")) ?? [];
    return Number(kilobytes) * 1_024;
  } catch {
    return 0;
  }
}
