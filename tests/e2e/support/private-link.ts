import type { BrowserContext } from "@playwright/test";
import { aForm, builtActions, callAction, type OwnOffice, signInTo } from "./own-office.ts";

/** A private link to a letter that went out, as the office makes it: its path. */
export async function privateLink(
  office: OwnOffice,
  { lineId, noticeId }: { readonly lineId: string; readonly noticeId: string },
): Promise<string> {
  const { cookie } = await signInTo(office, "demo@example.com");
  const action = builtActions().find(({ name }) => name === "makeLinkAction");
  if (action === undefined) throw new Error("There is no action that makes a link");
  const { text } = await callAction(office, {
    ...{ action, cookie, path: `/lines/${lineId}/notices/letter/${noticeId}` },
    args: [{ lineId, noticeId }, { url: "", message: "" }, aForm({ days: "30" })],
  });
  const path = /\/n\/[\w-]{22,}/.exec(text)?.[0];
  if (path === undefined) throw new Error(`No link was made: ${text.slice(0, 500)}`);
  return path;
}

/** Signs a browser in as the demo's admin. */
export async function signedIn(office: OwnOffice, context: BrowserContext): Promise<void> {
  const { cookie } = await signInTo(office, "demo@example.com");
  const [name = "", ...value] = cookie.split("=");
  await context.addCookies([{ name, value: value.join("="), url: office.origin }]);
}
