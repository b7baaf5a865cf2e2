// The page servers of one office, side by side on one port: while one computes, the other answers.
import cluster from "node:cluster";
import os from "node:os";
import { host, ROOT, say } from "./house.mjs";
import { keep } from "./keep.mjs";

/** So many deaths one soon after the other, and a page server is given up. */
const MOST_DEATHS = 6;

/** More than two gain little: one office has one database, and the worker wants a core as well. */
const MOST = 2;

/** A page server takes a quarter of this; the rest is the system's, the worker's and the files'. */
const MEMORY_EACH = 1_000_000_000;

/**
 * How many page servers a machine gets: one a core, at most two, and no more than its memory holds;
 * `WYEBOOK_PAGE_SERVERS` says another number, 1 to 8.
 */
export function pageServers({
  asked = process.env.WYEBOOK_PAGE_SERVERS,
  cores = os.availableParallelism(),
  memory = os.totalmem(),
} = {}) {
  if (/^[1-8]$/.test(asked ?? "")) return Number(asked);
  return Math.max(1, Math.min(MOST, cores, Math.floor(memory / MEMORY_EACH)));
}

/**
 * Starts the page servers and keeps them running. This process holds the port, and whichever server
 * is free takes the next connection; each is a process of its own with its own reports kept in
 * memory, which it holds against the database before it uses them. `ready` is called when all of
 * them answer. Returns `stop(signal)` and the promise `over`, which comes when all have ended: true
 * where they were stopped, false where one was given up.
 */
export function keepPages({ port, env, ready, count = pageServers() }) {
  // Dealt out by this process, a connection that goes to a server as it dies would hang for good.
  cluster.schedulingPolicy = cluster.SCHED_NONE;
  cluster.setupPrimary({
    exec: "lib/commands/pages.mjs",
    args: [String(port), host()],
    cwd: ROOT,
    stdio: ["ignore", "ignore", "inherit", "ipc"],
  });
  let answering = 0;
  const servers = Array.from({ length: count }, () => {
    let isBack = false;
    const start = () => {
      const server = cluster.fork(env);
      // What can't be said to one that just died is no error of ours: its end is seen below.
      server.on("error", () => {});
      const child = server.process;
      child.once("message", () => {
        if (isBack) say("The web server is running again.");
        else if (++answering === count) ready();
        isBack = true;
      });
      return child;
    };
    return keep({ name: count > 1 ? "A web server" : "The web server", start, most: MOST_DEATHS });
  });
  const stop = (signal) => {
    for (const server of servers) server.stop(signal);
  };
  // Where one can't be kept running, the others would not be either.
  for (const { over } of servers) over.then((stopped) => stopped || stop("SIGTERM"));
  const over = Promise.all(servers.map((server) => server.over)).then((each) =>
    each.every(Boolean),
  );
  return { over, stop };
}
