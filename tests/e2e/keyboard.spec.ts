import { expect, type Locator, type Page, test } from "@playwright/test";
import { DEMO_OFFICE } from "../playwright.config.ts";
import { table } from "./support/grid.ts";
import { Keys } from "./support/keys.ts";
import { signIn } from "./support/sign-in.ts";

// The main job at the keyboard alone, from the sign-in to letters that are sent: no mouse is touched,
// and no page is opened by its address after the first. Where the focus is must be seen at each stop.
//
// Tie-ins at 22.1, 42.0, 50.0 and 62.1 ft; work from 10.0 to 60.0 ft at $120.00 a foot, each foot
// shared by those whose flow passes it, worked by hand.
const SHARES = ["$363.00", "$1,159.00", "$1,639.00", "$2,839.00"];

test.use({ baseURL: DEMO_OFFICE });
test.setTimeout(600_000);

test("a line is worked from the sign-in to the sent letters without a mouse", async ({ page }) => {
  const keys = new Keys(page);
  await test.step("sign in, and open a line", () => openLine(page, keys));
  await test.step("who is on it", () => enterPeople(page, keys));
  await test.step("what is on record", () => enterCard(page, keys));
  await test.step("what the camera saw", () => enterRun(page, keys));
  await test.step("record and camera are matched", () => match(page, keys));
  await test.step("an undocumented tie-in is settled", () => settle(page, keys));
  await test.step("who is responsible", () => applyRule(page, keys));
  await test.step("what it costs, and who pays", () => price(page, keys));
  await test.step("letters are drafted and sent", () => writeLetters(page, keys));
  expect([...keys.faults]).toEqual([]);
});

const FENNEL = "/lines/fennel-0001";
const WALKED = [
  "/",
  "/lines",
  "/office",
  "/office/authorities/authority-quillhaven",
  ...[
    ...["", "/who", "/who/land", "/who/calls", "/record", "/camera", "/camera/log?run=fr-run2"],
    ...["/camera/plan", "/camera/capacity", "/camera/narration?run=fr-run2", "/reconcile"],
    ...["/reconcile/line-up", "/reconcile/match", "/reconcile/undocumented", "/reconcile/test-day"],
    ...["/responsibility", "/cost", "/cost/compare", "/cost/choose", "/cost/statements"],
    ...["/notices", "/notices/write", "/notices/consents", "/notices/refusal", "/notices/meeting"],
    ...["/authority", "/authority/permits", "/schedule", "/schedule/roll-call", "/history"],
  ].map((part) => `${FENNEL}${part}`),
  "/lines/ropewalk-0001/cost/money",
];

test("on every page Tab comes from its beginning to its end, and is seen at each stop", async ({
  page,
}) => {
  const keys = new Keys(page);
  await signIn(page);
  for (const path of WALKED) {
    await keys.open(path);
    await keys.toTheEnd();
  }
  expect([...keys.faults]).toEqual([]);
});

async function openLine(page: Page, keys: Keys) {
  await keys.open("/sign-in");
  await keys.write(page.getByLabel("Email address"), "demo@example.com");
  await keys.write(page.getByLabel("Password"), "demo-office-2026");
  await keys.press("Enter");
  await expect(page).toHaveURL(`${DEMO_OFFICE}/`);
  await keys.enter(page.getByRole("navigation", { name: "Office" }).getByText("Lines"));
  await keys.enter(page.getByRole("link", { name: "Open a line" }));
  await keys.write(page.getByLabel("Name of the line"), "Copper Lane, by keyboard");
  await keys.write(page.getByLabel("Town"), "Quillhaven, WA");
  await keys.choose(page.getByLabel("Authority"), "Quillhaven Sewer District");
  await keys.enter(page.getByRole("button", { name: "Open the file" }));
  await expect(page).toHaveURL(/\/lines\/[^/]+\/who$/);
}

async function enterPeople(page: Page, keys: Keys) {
  const properties = table(page, "One property a line");
  for (const number of [2, 4, 6, 8])
    await keys.row(properties, "property", {
      "Street address": `${number} Copper Lane`,
      City: "Quillhaven",
      State: "WA",
      ZIP: "98000",
      Connection: number === 8 ? "possibly connected" : "connected",
    });
  await keys.save();
  const people = table(page, "One person a line");
  for (const [name, number] of [
    ["Odile Marchetti", 2],
    ["Jesús Peña", 4],
    ["Agnieszka Mroz", 6],
    ["Theo Abernathy", 8],
  ] as const)
    await keys.row(people, "person", {
      Name: name,
      Role: "owner",
      Property: `${number} Copper Lane`,
    });
  await keys.save();
}

async function enterCard(page: Page, keys: Keys) {
  await question(page, keys, "What is on record?");
  await keys.row(table(page, "One record a line"), "record", {
    Kind: "card",
    Title: "Side sewer card",
    "Measured from": "the main",
  });
  await keys.save();
  const entries = table(page, "One entry a line");
  for (const [number, feet] of [
    [2, "20"],
    [4, "40"],
    [6, "60"],
  ] as const)
    await keys.row(entries, "entry", {
      Entry: `House ${number}`,
      "Distance, ft": feet,
      Side: "left",
      Property: `${number} Copper Lane`,
    });
  await keys.save();
}

async function enterRun(page: Page, keys: Keys) {
  await question(page, keys, "What did the camera see?");
  await keys.row(table(page, "One run a line"), "run", {
    Run: "Run 1",
    Day: "11/20/2026",
    Operator: "Sami Orlov",
    "Access point": "Cleanout behind 6",
    Direction: "downstream",
    "Zero at": "center of the cleanout",
    "Start footage, ft": "0",
    "End footage, ft": "80",
  });
  await keys.save();
  await keys.row(table(page, "One known point a line"), "known point", {
    "Counter, ft": "80",
    "Station, ft": "0",
    Landmark: "main connection",
  });
  await keys.save();
  await keys.enter(page.getByRole("link", { name: "Log of Run 1" }));
  await expect(page.getByRole("heading", { name: /^Log of Run 1/ })).toBeVisible();
  const log = table(page, "One observation a line");
  for (const [counter, clock] of [
    ["17.9", "3"],
    ["30.0", "9"],
    ["38.0", "3"],
    ["57.9", "3"],
  ] as const)
    await keys.row(log, "observation", {
      "Counter, ft": counter,
      What: "tie-in",
      "Clock, o’clock": clock,
    });
  await keys.save();
}

async function match(page: Page, keys: Keys) {
  await question(page, keys, "Does the record match the camera?");
  await part(page, keys, "Match");
  // Which number a tie-in got hangs on what the table had saved by itself in between.
  const sure = page.getByRole("form", { name: /^House 2 is T\d$/ });
  await keys.choose(
    sure.getByLabel("Reason", { exact: true }),
    "A test showed it serves this address",
  );
  await keys.enter(sure.getByRole("button", { name: /^Accept/ }));
  await keys.enter(page.getByRole("button", { name: "Accept all 2" }));
  await part(page, keys, "Status");
  await expect(page.getByText(/3 agree/).first()).toBeVisible();
}

async function settle(page: Page, keys: Keys) {
  await keys.enter(page.getByRole("link", { name: /^Find out what T\d serves/ }));
  const tieIn = page.getByRole("article", { name: /^Tie-in T/ });
  await keys.enter(
    tieIn.locator("summary").filter({ hasText: "Settle what it carries and who owns it" }),
  );
  await keys.choose(tieIn.getByLabel("Carries"), "building sewer");
  await keys.choose(tieIn.getByLabel("Owner", { exact: true }), "8 Copper Lane");
  await keys.check(tieIn.getByLabel("Owner accepted it in writing"));
  await keys.choose(tieIn.getByLabel("Evidence"), "Owner confirmed in writing");
  await keys.enter(tieIn.getByRole("button", { name: /^Settle T/ }));
  await expect(page.getByText("Settled").first()).toBeVisible();
}

async function applyRule(page: Page, keys: Keys) {
  await question(page, keys, "Who is responsible for what?");
  await keys.enter(page.getByRole("button", { name: "Apply this rule" }));
  await expect(page.locator("#reaches")).toBeVisible();
}

async function price(page: Page, keys: Keys) {
  await question(page, keys, "What does it cost, and who pays?");
  await keys.row(table(page, "Priced work"), "item", {
    Item: "Dig and replace",
    Location: "section",
    "From, ft": "10",
    "To, ft": "60",
    Quantity: "50",
    Unit: "ft",
    "Rate, $": "120",
  });
  await keys.save();
  await part(page, keys, "Choose");
  const choose = page.getByRole("form", { name: "Choose a rule" });
  await keys.pick(choose, choose.getByRole("radio", { name: /^By portion used/ }));
  await keys.write(choose.getByLabel("Why this rule"), "All four owners asked for it");
  await keys.enter(choose.getByRole("button", { name: "Choose this rule" }));
  for (const amount of SHARES) await expect(readable(page, amount).first()).toBeVisible();
}

async function writeLetters(page: Page, keys: Keys) {
  await question(page, keys, "Who has been notified?");
  await part(page, keys, "Write letters");
  await keys.enter(page.getByRole("link", { name: /^Write 4 letters/ }));
  await keys.write(page.getByLabel("Reply by"), "12102026");
  await keys.enter(page.getByRole("button", { name: "Create drafts" }));
  const send = page.getByRole("form", { name: "Send selected letters" });
  await keys.choose(send.getByLabel("Delivery method"), "certified mail");
  await keys.enter(send.getByRole("button", { name: "Record selected as sent" }));
  await expect(send).toHaveCount(0);
  await expect(page.getByText(/4 in transit|4 of 4/).first()).toBeVisible();
}

/** Words that a reader sees, not those of a folded form. */
function readable(page: Page, words: string): Locator {
  return page.getByText(words).filter({ visible: true });
}

async function question(page: Page, keys: Keys, asked: string) {
  const nav = page.getByRole("navigation", { name: "Questions on this line" });
  await keys.enter(nav.getByRole("link", { name: asked }));
  await expect(page.getByRole("heading", { level: 1, name: asked })).toBeVisible();
}

/** A page under the question that is open. */
async function part(page: Page, keys: Keys, name: string) {
  const nav = page.getByRole("navigation", { name: "Questions on this line" });
  const link = nav.getByRole("link", { name: new RegExp(`^${name}`) });
  await keys.enter(link);
  await expect(link).toHaveAttribute("aria-current", "page");
}
