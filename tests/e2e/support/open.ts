import { expect, type Page } from "@playwright/test";

/** Opens a page and waits until its scripts are at work: what is pressed before may go nowhere. */
export async function open(page: Page, path: string): Promise<void> {
  await page.goto(path);
  await live(page);
}

/** Loads the page anew, scripts and all. */
export async function reopen(page: Page): Promise<void> {
  await page.reload();
  await live(page);
}

/** Waits for the mark that the page sets itself once its scripts are there. */
async function live(page: Page): Promise<void> {
  await expect(page.locator("html[data-live]")).toBeAttached();
}
