// Serves an office: the page servers and the worker, each started again when it dies.
import { spawn } from "node:child_process";
import { noteServing, ROOT, say, stop } from "./house.mjs";
import { keep } from "./keep.mjs";
import { keepPages } from "./page-servers.mjs";

/** How long what is being done may take to end when told to stop. */
const ENDING_MS = 90_000;

/** Serves, and returns once the pages answer for the first time. */
export async function serving(place) {
  await new Promise((resolve) => serve({ ...place, ready: resolve }));
}

/**
 * Serves the pages and runs the worker (PDFs and mail) until one is told to stop. Both end with this
 * process, however it ends: they see its end of the channel between them close. `ready` is called
 * when the pages answer for the first time.
 */
function serve({ port, dataFolder, ready }) {
  const env = {
    ...process.env,
    NODE_ENV: "production",
    NEXT_TELEMETRY_DISABLED: "1",
    PORT: String(port),
    WYEBOOK_DATA: dataFolder,
  };
  const forget = noteServing(dataFolder, port);
  process.once("exit", forget);
  const pages = keepPages({ port, env, ready });
  const worker = keep({
    name: "The worker, which makes PDFs and sends mail,",
    start: () =>
      spawn(process.execPath, ["--import", "tsx", "lib/commands/worker.ts"], {
        cwd: ROOT,
        env,
        stdio: ["ignore", "inherit", "inherit", "ipc"],
      }),
  });
  pages.over.then(async (stopped) => {
    if (stopped) return;
    end("SIGTERM");
    await worker.over;
    stop(
      "The web server keeps failing, so Wyebook is stopping. Fix the problem described above, then start it again.",
    );
  });
  for (const signal of ["SIGINT", "SIGTERM"]) process.on(signal, endByPerson);

  let asked = 0;

  /** Once: what is being done is finished first. Twice: at once; what was saved is safe all the same. */
  function endByPerson() {
    asked += 1;
    // A terminal tells every process of the group, and some shells tell this one twice.
    end(asked > 2 ? "SIGKILL" : "SIGTERM");
  }

  /** One after the other: whoever closes the database last folds its log in, if nobody else closes it too. */
  function end(signal) {
    pages.stop(signal);
    pages.over.then(() => worker.stop(signal));
    setTimeout(() => {
      say("Stopping took too long and was forced; everything already saved is safe.");
      pages.stop("SIGKILL");
      worker.stop("SIGKILL");
    }, ENDING_MS).unref();
  }
}
