/**
 * What this process itself has worked, in milliseconds of a processor. Other work on the machine
 * leaves it as it is, where a clock on the wall would tell of that work.
 */
export function effort(): number {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1_000;
}

/** What a piece of work costs this process, in milliseconds of a processor. */
export function effortOf(work: () => void): number {
  const before = effort();
  work();
  return effort() - before;
}

/**
 * Watches how long this process works without turning to anything else. Its answer, when asked for,
 * is the longest such stretch, in milliseconds of a processor; the watch then ends.
 */
export function watchStretches(): () => number {
  let longest = 0;
  let last = effort();
  const look = () => {
    const now = effort();
    longest = Math.max(longest, now - last);
    last = now;
  };
  const timer = setInterval(look, 5);
  return () => {
    clearInterval(timer);
    look();
    return longest;
  };
}
