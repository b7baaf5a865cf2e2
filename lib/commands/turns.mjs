// In which order a page server answers what comes at once. Plain JavaScript on Node.
import { performance } from "node:perf_hooks";

/** Who waits is looked after so often, in milliseconds. */
const LOOK_MS = 2;

/** A page that has not been answered by then lets the next one begin beside it, in milliseconds. */
const LONGEST_MS = 250;

/**
 * Requests begin one after the other. Drawing a page goes on in many short steps: begun together,
 * ten pages take their steps in turn and are all ready when the last one is. One by one, the first is
 * there after a tenth of that time and the last as soon as before.
 *
 * The next one begins when all that were begun are answered, when they wait for something else than
 * this thread (a disk, a lock, another process), so that it was idle, or when they take very long.
 *
 * `take(begin, response)` waits for its turn; whoever is gone by then is not begun.
 * `goAhead(begin, response)` begins at once, and the others wait for it too.
 */
export function makeTurns({ longest = LONGEST_MS, idle = idleSoFar } = {}) {
  /** Begun, not answered, and not found waiting for something else. */
  const drawing = new Set();
  const waiting = [];
  let begunAt = 0;
  let idleAt = 0;
  let timer = null;
  return { take, goAhead };

  function take(begin, response) {
    waiting.push({ begin, response });
    next();
  }

  function goAhead(begin, response) {
    if (drawing.size === 0) begunAt = performance.now();
    drawing.add(response);
    response.once("close", () => {
      drawing.delete(response);
      next();
    });
    begin();
  }

  function next() {
    while (drawing.size === 0 && waiting.length > 0) {
      const { begin, response } = waiting.shift();
      if (response.destroyed) continue;
      // Its reader's next question comes on a new connection, which whichever server is free takes.
      if (waiting.length > 0) response.setHeader("Connection", "close");
      goAhead(begin, response);
    }
    if (waiting.length === 0 || timer !== null) return;
    idleAt = idle();
    timer = setTimeout(look, LOOK_MS);
  }

  function look() {
    timer = null;
    if (idle() - idleAt >= LOOK_MS / 2 || performance.now() - begunAt >= longest) drawing.clear();
    next();
  }
}

/** For how long this thread has had nothing to do since it began, in milliseconds. */
function idleSoFar() {
  return performance.eventLoopUtilization().idle;
}
