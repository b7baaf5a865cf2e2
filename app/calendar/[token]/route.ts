import { callerOf } from "#app/caller.ts";
import { db, writable } from "#app/db.ts";
import { refusedRequest } from "#app/refused-request.ts";
import { today } from "#app/today.ts";
import { readEnv } from "#lib/env.ts";
import { openFeed } from "#lib/operations/open-feed.ts";

/** The office's days for a calendar program, at the address `<secret>.ics` that a person made. */
export async function GET(
  _request: Request,
  { params }: { params: Promise<{ token: string }> },
): Promise<Response> {
  const secret = (await params).token.replace(/\.ics$/, "");
  const { address } = await callerOf();
  // Who reads is noted.
  await writable();
  const door = { db: db(), now: new Date().toISOString(), today: today() };
  const opened = openFeed({ ...door, address, office: readEnv().address }, secret);
  if (!opened.ok)
    return opened.error.reason === "too-many-tries"
      ? refusedRequest(429, "Too many requests. Try again later.")
      : refusedRequest(404, "This calendar address is not valid. Make a new one under your name.");
  return new Response(opened.value, {
    headers: {
      "Content-Type": "text/calendar; charset=utf-8",
      "Content-Disposition": 'inline; filename="wyebook.ics"',
      "X-Content-Type-Options": "nosniff",
      "Cache-Control": "no-store",
      "Referrer-Policy": "no-referrer",
    },
  });
}
