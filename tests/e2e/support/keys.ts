import { expect, type Locator, type Page } from "@playwright/test";
import { open } from "./open.ts";

/** What the focus is on, as somebody without a mouse needs to see it. */
interface Stop {
  /** Where it is in the page, so that two stops can be told apart; empty outside of the page. */
  readonly path: string;
  readonly says: string;
  /** A ring is drawn around it, or around what it belongs to. */
  readonly ringed: boolean;
  /** At least a part of it is on the screen and under nothing else. */
  readonly seen: boolean;
  readonly inGrid: boolean;
  /** A date is four stops: month, day, year, and the button of its calendar. */
  readonly inParts: boolean;
}

/** So many presses of Tab at most from one thing to the next. */
const FARTHEST = 130;

/** Somebody at the keyboard alone: each stop must be seen, and none may hold the focus. */
export class Keys {
  private readonly page: Page;
  /** Stops without a visible ring or off the screen; a journey expects none. */
  readonly faults = new Set<string>();
  private before = "";

  constructor(page: Page) {
    this.page = page;
  }

  /** Opens a page as by its address, the focus at its beginning. */
  async open(path: string): Promise<void> {
    await open(this.page, path);
    this.before = "";
  }

  async press(key: string): Promise<void> {
    await this.page.keyboard.press(key);
  }

  /** The next stop; what is wrong with it is noted. */
  async tab(): Promise<Stop> {
    await this.press("Tab");
    const stop = await this.settled();
    if (stop.path === "") return stop;
    const at = `${new URL(this.page.url()).pathname}: ${stop.says}`;
    if (!stop.ringed) this.faults.add(`${at}: no visible focus`);
    if (!stop.seen) this.faults.add(`${at}: focus out of sight`);
    if (stop.path === this.before && !stop.inParts) this.faults.add(`${at}: holds the focus`);
    this.before = stop.path;
    return stop;
  }

  /** The stop as it is to be seen: the page may still be scrolling to it, or settling above it. */
  private async settled(): Promise<Stop> {
    let stop = await this.page.evaluate(stopNow);
    if (stop.path === "" || (stop.seen && stop.ringed)) return stop;
    await expect(async () => {
      stop = await this.page.evaluate(stopNow);
      expect(stop.path === "" || (stop.seen && stop.ringed)).toBe(true);
    })
      .toPass({ timeout: 1_000, intervals: [50] })
      .catch(() => {});
    return stop;
  }

  /** Tabs to something; a table on the way is left by Escape, as its own line of help says. */
  async to(target: Locator): Promise<void> {
    const wanted = target.first();
    await expect(wanted).toBeAttached();
    for (let stops = 0; stops < FARTHEST; stops += 1) {
      if (await wanted.evaluate((it) => it === document.activeElement)) return;
      const { inGrid } = await this.tab();
      if (!inGrid || (await wanted.evaluate(isInFocusedTable))) continue;
      await this.press("Escape");
    }
    throw new Error(`Not reached within ${FARTHEST} presses of Tab: ${target}`);
  }

  /** Tabs from the beginning of a page to its end; of a table it visits one cell. */
  async toTheEnd(): Promise<void> {
    for (let stops = 0; stops < FARTHEST * 5; stops += 1) {
      const { path, inGrid } = await this.tab();
      if (path === "") return;
      if (inGrid) await this.press("Escape");
    }
    throw new Error(`${this.page.url()} has no end`);
  }

  /** Goes to a link or a button, and presses it. */
  async enter(target: Locator): Promise<void> {
    await this.to(target);
    await this.press("Enter");
  }

  async check(box: Locator): Promise<void> {
    await this.to(box);
    if (await box.isChecked()) return;
    await this.press("Space");
    await expect(box).toBeChecked();
  }

  /** Goes to one of a group of radio buttons by arrows: the group is one stop. */
  async pick(group: Locator, wanted: Locator): Promise<void> {
    const buttons = group.getByRole("radio");
    for (let stops = 0; stops < FARTHEST; stops += 1) {
      if ((await group.locator("input:focus[type=radio]").count()) > 0) break;
      await this.tab();
    }
    for (let left = await buttons.count(); left > 0 && !(await isFocused(wanted)); left -= 1)
      await this.press("ArrowDown");
    if (!(await wanted.isChecked())) await this.press("Space");
    await expect(wanted).toBeChecked();
  }

  async write(field: Locator, text: string): Promise<void> {
    await this.to(field);
    await this.press("ControlOrMeta+A");
    await this.page.keyboard.type(text);
  }

  /** Chooses from a list by its first letters. */
  async choose(list: Locator, label: string): Promise<void> {
    await this.to(list);
    await this.page.keyboard.type(label);
    await expect(list.locator("option:checked")).toHaveText(label);
  }

  /** Types one row into a table: text, Tab, text, Tab, past what is left empty. */
  async row(grid: Locator, word: string, cells: Readonly<Record<string, string>>): Promise<void> {
    const row = (await grid.locator("tr[data-row-id]").count()) + 1;
    let at = `new ${word}`;
    for (const [title, text] of Object.entries(cells)) {
      await this.to(grid.getByLabel(`${title}, ${at}`, { exact: true }));
      await this.page.keyboard.type(text);
      await this.press("Tab");
      at = `row ${row}`;
    }
  }

  /** Leaves a table for its button that saves, and saves. */
  async save(): Promise<void> {
    await this.press("Escape");
    const button = this.page.locator(":focus");
    await expect(button).toHaveText("Save now");
    await this.press("Enter");
    await expect(button.locator("xpath=..").getByRole("status")).toHaveText(
      /^(Saved \d|All saved)/,
    );
  }
}

function isFocused(target: Locator): Promise<boolean> {
  return target.evaluate((it) => it === document.activeElement);
}

function isInFocusedTable(wanted: Element): boolean {
  return document.activeElement?.closest("[role=grid]")?.contains(wanted) ?? false;
}

/** Runs in the page. */
function stopNow(): Stop {
  const it = document.activeElement;
  if (it === null || it === document.body)
    return { path: "", says: "", ringed: true, seen: true, inGrid: false, inParts: false };
  const box = it.getBoundingClientRect();
  const points = [0.1, 0.5, 0.9].flatMap((x) =>
    [0.15, 0.5, 0.85].map((y) => [box.left + box.width * x, box.top + box.height * y] as const),
  );
  const seen = points.some(([x, y]) => {
    const hit = document.elementFromPoint(x, y);
    return hit !== null && (it.contains(hit) || hit.contains(it) || sharesLabel(it, hit));
  });
  const around = [it, ...it.querySelectorAll("*"), it.closest("label, td") ?? it];
  const path: string[] = [];
  for (let up: Element | null = it; up !== null; up = up.parentElement)
    path.unshift(`${up.tagName}${[...(up.parentElement?.children ?? [])].indexOf(up)}`);
  return {
    path: path.join(">"),
    says: `${it.tagName.toLowerCase()} “${(it.getAttribute("aria-label") ?? it.textContent ?? "").trim().slice(0, 60)}” ${it.getAttribute("name") ?? ""}`,
    ringed: around.some(hasRing),
    seen,
    inGrid: it.closest("[role=grid]") !== null,
    inParts: it instanceof HTMLInputElement && it.type === "date",
  };

  function hasRing(each: Element): boolean {
    const { outlineStyle, outlineWidth } = getComputedStyle(each);
    return outlineStyle !== "none" && Number.parseFloat(outlineWidth) > 0;
  }

  function sharesLabel(one: Element, other: Element): boolean {
    return one.closest("label")?.contains(other) ?? false;
  }
}
