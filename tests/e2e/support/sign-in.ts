import { expect, type Page } from "@playwright/test";
import { DEMO_OFFICE } from "../../playwright.config.ts";
import { open } from "./open.ts";

/** Signs in to the demo office as its admin. */
export async function signIn(page: Page): Promise<void> {
  await open(page, "/sign-in");
  await page.getByLabel("Email address").fill("demo@example.com");
  await page.getByLabel("Password").fill("demo-office-2026");
  await page.getByRole("button", { name: "Sign in" }).click();
  await expect(page).toHaveURL(`${DEMO_OFFICE}/`);
}

/** Opens a file on a new line under the demo's authority; its address without the question. */
export async function openNewLine(page: Page, name: string): Promise<string> {
  await open(page, "/lines/new");
  await page.getByLabel("Name of the line").fill(name);
  await page.getByLabel("Town").fill("Quillhaven, WA");
  await page.getByLabel("Authority").selectOption({ index: 1 });
  await page.getByRole("button", { name: "Open the file" }).click();
  await expect(page).toHaveURL(/\/lines\/[^/]+\/who$/);
  return new URL(page.url()).pathname.replace(/\/who$/, "");
}
