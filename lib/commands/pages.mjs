// A page server: Next behind a server of our own, which sees the socket and the office's address.
// Plain JavaScript on Node, like the commands that start it. Usage: pages.mjs PORT HOST
import cluster from "node:cluster";
import { randomBytes } from "node:crypto";
import http from "node:http";
import next from "next";
import { ROOT } from "./house.mjs";
import { makeTurns } from "./turns.mjs";

/**
 * In which header the socket's own address stands. Its name is new at every start and known to this
 * process alone, so that no request can bring one along (lib/env.ts reads the name).
 */
const PEER_HEADER = `x-peer-${randomBytes(12).toString("hex")}`;
process.env.WYEBOOK_PEER_HEADER = PEER_HEADER;

// What is written into the data folder is the owner's alone.
process.umask(0o077);

const OWN = process.env.WYEBOOK_ADDRESS ? new URL(process.env.WYEBOOK_ADDRESS) : null;
const YEAR_SECONDS = 31_536_000;

const [port, hostname] = [Number(process.argv[2]), process.argv[3]];
const app = next({ dev: false, dir: ROOT, port, hostname });
await app.prepare();
const handle = app.getRequestHandler();
const turns = makeTurns();

const server = http.createServer((request, response) => {
  if (OWN?.protocol === "https:")
    response.setHeader("Strict-Transport-Security", `max-age=${YEAR_SECONDS}`);
  if (changesSomething(request) && request.headers.origin === undefined) {
    response.writeHead(403, { "Content-Type": "text/plain; charset=utf-8" });
    response.end("Nothing was done: this request does not say from which page it comes.\n");
    return;
  }
  request.headers[PEER_HEADER] = request.socket.remoteAddress ?? "";
  // Where somebody wanted to go who has to sign in first (app/session.ts).
  request.headers["x-asked-page"] = request.url;
  tellOwnHost(request.headers);
  const begin = () => handle(request, response);
  if (waitsItsTurn(request)) turns.take(begin, response);
  else turns.goAhead(begin, response);
});
server.once("error", (error) => {
  console.error(`The pages can't be served on port ${port}: ${error.message}`);
  process.exit(1);
});
server.listen(port, hostname, () => {
  // One of several asks for the port over this channel: until then it is all that keeps it running.
  process.channel?.unref();
  process.send?.("ready");
});

/** Browsers name the page's origin on every such request; what does not is no page of ours. */
function changesSomething({ method }) {
  return method !== "GET" && method !== "HEAD" && method !== "OPTIONS";
}

/**
 * A page. What is being saved is begun at once, so that a browser that is closed meanwhile does not
 * take it back; and scripts, styles and fonts are no work.
 */
function waitsItsTurn(request) {
  return !changesSomething(request) && !request.url.startsWith("/_next/static/");
}

/**
 * Next holds an action's origin against `X-Forwarded-Host`, else against `Host`. The first is nothing
 * that a stranger may say; and a proxy that puts its own name into the second does no harm, since the
 * office's address is known.
 */
function tellOwnHost(headers) {
  delete headers["x-forwarded-host"];
  if (OWN !== null && headers.origin === OWN.origin) headers["x-forwarded-host"] = OWN.host;
}

let stopping = false;
for (const signal of ["SIGINT", "SIGTERM"]) process.on(signal, stop);
// Started by another program, it ends with that one; one of several would end at once otherwise.
if (cluster.isWorker) cluster.worker.exitedAfterDisconnect = true;
process.once("disconnect", stop);

/**
 * Answers what was asked before, and ends. The database is closed at the end of the process
 * (app/db.ts), so that its log is folded in.
 */
function stop() {
  if (stopping) return;
  stopping = true;
  server.close(end);
  server.closeIdleConnections();
  setTimeout(end, 3_000).unref();
}

function end() {
  process.exit(0);
}
