// Keeps a program running: starts it again when it dies, later each time, and says so.
import { say } from "./house.mjs";

/** How long it waits before each new start, in milliseconds; the last one holds from then on. */
const PAUSES = [500, 1_000, 2_000, 5_000, 15_000, 30_000, 60_000];

/** What ran for so long was healthy: its next death is a first one. */
const HEALTHY_MS = 120_000;

/** A program that ends with this code has said itself what a person has to mend first. */
const SAID_ITSELF = 3;

/**
 * Starts a program, and again whenever it ends by itself. After `most` deaths one soon after the
 * other it is given up. `name` begins the sentences that are said.
 *
 * Returns `stop()`, which ends it for good, at once with "SIGKILL"; and the promise `over`, which
 * comes true when it was stopped, false when it was given up.
 */
export function keep({
  name,
  start,
  most = Number.POSITIVE_INFINITY,
  pauses = PAUSES,
  tell = say,
}) {
  let deaths = 0;
  let stopping = false;
  let child = null;
  let timer = null;
  let finish = () => {};
  const over = new Promise((resolve) => {
    finish = resolve;
  });
  run();
  return { over, stop };

  function run() {
    const startedAt = Date.now();
    child = start();
    child.once("exit", (code, signal) => died(code ?? signal, Date.now() - startedAt));
  }

  function died(code, ranFor) {
    child = null;
    if (stopping) return finish(true);
    deaths = ranFor > HEALTHY_MS ? 1 : deaths + 1;
    if (deaths >= most) {
      tell(`${name} ended ${deaths} times, the last time with ${code}. See its output above.`);
      return finish(false);
    }
    if (code === SAID_ITSELF) {
      timer = setTimeout(run, pauses.at(-1));
      return;
    }
    const pause = pauses[Math.min(deaths, pauses.length) - 1];
    const again = pause < 1_000 ? "at once" : `in ${Math.round(pause / 1_000)} s`;
    tell(`${name} ended with ${code}; restarting ${again}.`);
    timer = setTimeout(run, pause);
  }

  function stop(signal = "SIGTERM") {
    stopping = true;
    clearTimeout(timer);
    if (child === null) finish(true);
    else child.kill(signal);
  }
}
