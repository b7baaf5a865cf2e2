import "server-only";

/** A route's refusal: a sentence for the person, and the status for the program. */
export function refusedRequest(status: number, message: string): Response {
  return Response.json({ message }, { status, headers: { "Cache-Control": "no-store" } });
}

export function signedOut(): Response {
  return refusedRequest(401, "Nothing was done: you are signed out. Sign in and try again.");
}
