import type { Page } from "@playwright/test";

/** Counts what a person presses on a page from now on; a choice from a list is two presses. */
export async function countPresses(page: Page): Promise<() => number> {
  let presses = 0;
  await page.exposeFunction("pressed", (many: number) => {
    presses += many;
  });
  await page.addInitScript(() => {
    const told = (many: number) => Reflect.get(window, "pressed")(many);
    // A click that a key made has no detail.
    window.addEventListener("click", (event) => event.detail > 0 && told(1), true);
    window.addEventListener(
      "change",
      (event) => event.target instanceof HTMLSelectElement && told(2),
      true,
    );
  });
  return () => presses;
}
