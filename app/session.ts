import "server-only";
import { createHash, randomBytes, randomUUID } from "node:crypto";
import { cookies, headers } from "next/headers";
import { redirect } from "next/navigation";
import { cache } from "react";
import { db, writable } from "#app/db.ts";
import { ownPath } from "#app/own-path.ts";
import { today } from "#app/today.ts";
import { getOffice } from "#db/queries/office.ts";
import { getUserOfSession } from "#db/queries/user.ts";
import { ABSOLUTE_MINUTES } from "#lib/domain/facts/session.ts";
import { type Deed, mayDo, type User } from "#lib/domain/facts/user.ts";
import { readEnv } from "#lib/env.ts";
import type { Act, Actor } from "#lib/operations/act.ts";

/** Who is asking, or null. */
export const getUser = cache(async (): Promise<User | null> => {
  const token = await getSessionToken();
  if (token === null) return null;
  return getUserOfSession(db(), hashToken(token), new Date().toISOString());
});

/**
 * Who is asking; anybody else is led to the sign-in, which then goes on to the page that was asked
 * for (the page server names it), or to the first set-up of a new office.
 */
export async function requireUser(): Promise<User> {
  const user = await getUser();
  if (user !== null) return user;
  if (getOffice(db()) === null) return redirect("/setup");
  const asked = ownPath((await headers()).get("x-asked-page") ?? "");
  return redirect(asked === "/" ? "/sign-in" : `/sign-in?for=${encodeURIComponent(asked)}`);
}

/** What an operation needs to know of a signed-in user: who acts, when, where. */
export function actOf(actor: Actor): Act {
  return {
    db: db(),
    actor,
    now: new Date().toISOString(),
    today: today(),
    dataFolder: readEnv().dataFolder,
    newId: randomUUID,
  };
}

/** The signed-in user's act. With a deed: leads away those whose role may not do it. */
export async function requireAct(deed?: Deed): Promise<Act> {
  const user = await requireUser();
  if (deed !== undefined && !mayDo(user.role, deed)) redirect("/not-allowed");
  await writable();
  return actOf(user);
}

/** A new secret for a session; only its hash is stored. */
export function newToken(): string {
  return randomBytes(32).toString("base64url");
}

export function hashToken(token: string): string {
  return createHash("sha256").update(token).digest("hex");
}

export async function getSessionToken(): Promise<string | null> {
  return (await cookies()).get(cookieName())?.value ?? null;
}

/** Keeps the session's secret in the browser: unreadable for scripts, and tied to this host over https. */
export async function keepSessionToken(token: string): Promise<void> {
  (await cookies()).set(cookieName(), token, {
    httpOnly: true,
    sameSite: "lax",
    secure: servedOverHttps(),
    path: "/",
    maxAge: ABSOLUTE_MINUTES * 60,
  });
}

export async function dropSessionToken(): Promise<void> {
  (await cookies()).set(cookieName(), "", {
    httpOnly: true,
    sameSite: "lax",
    secure: servedOverHttps(),
    path: "/",
    maxAge: 0,
  });
}

function servedOverHttps(): boolean {
  return readEnv().address?.startsWith("https://") ?? false;
}

function cookieName(): string {
  return servedOverHttps() ? "__Host-wyebook" : "wyebook";
}
