import net from "node:net";

/** Below the ports that systems hand out to connections, so that none takes one while it rests. */
const FIRST = 20_000;
const LAST = 31_999;

/** A port that nobody listens on, drawn at random so that two runs do not meet. */
export async function freePort(): Promise<number> {
  for (;;) {
    const port = FIRST + Math.floor(Math.random() * (LAST - FIRST + 1));
    if (await isFree(port)) return port;
  }
}

function isFree(port: number): Promise<boolean> {
  return new Promise((done) => {
    const server = net.createServer();
    server.once("error", () => done(false));
    server.listen(port, () => server.close(() => done(true)));
  });
}
