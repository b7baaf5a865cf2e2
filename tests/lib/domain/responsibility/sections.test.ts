import { expect, test } from "vitest";
import { sectionsOf } from "#lib/domain/responsibility/sections.ts";
import { aReach } from "#tests/support/report.ts";

const OWNERS = "Owners own and repair the pipe up to the main.";

test("sectionsOf() joins neighbors that read the same and says once what all have in common", () => {
  const all = { citation: "Code 14.20" };
  const both = ["p12", "p14"];
  const { sections, common, citation } = sectionsOf([
    aReach(0, 600, { ...all, reason: `${OWNERS} The tap is the authority’s.`, servedBy: both }),
    aReach(600, 1200, { ...all, reason: OWNERS, servedBy: both }),
    aReach(1200, 2000, { ...all, reason: OWNERS, servedBy: ["p14"] }),
  ]);
  expect(sections).toMatchObject([
    { from: 0, to: 1200, own: "The tap is the authority’s." },
    { from: 1200, to: 2000, own: "" },
  ]);
  expect(common).toBe(OWNERS);
  expect(citation).toBe("Code 14.20");
});

test("sectionsOf() keeps apart what differs in owner, repair, kind of work, flow or source", () => {
  const like = { servedBy: ["p12"] };
  const others = [
    { holder: "authority" },
    { mender: "authority" },
    { menders: { clearing: "owners", repair: "authority", replacement: "owners" } },
    { unknownTieIns: ["T2"] },
    { answerable: ["p14"] },
    { servedBy: ["p14"] },
    { citation: "Recorded agreement 1984" },
  ] as const;
  for (const other of others) {
    const { sections } = sectionsOf([
      aReach(0, 600, like),
      aReach(600, 1200, { ...like, ...other }),
    ]);
    expect(sections, JSON.stringify(other)).toHaveLength(2);
  }
});

test("sectionsOf() names every pipe in a section, and leaves a gap a gap", () => {
  const { sections } = sectionsOf([
    aReach(0, 600, { material: "concrete", diameter: 6 }),
    aReach(600, 1200, { material: "pvc", diameter: 6 }),
    aReach(1300, 1500, { material: "pvc", diameter: 6 }),
  ]);
  expect(sections.map(({ from, to, pipes }) => [from, to, pipes.length])).toEqual([
    [0, 1200, 2],
    [1300, 1500, 1],
  ]);
});

test("sectionsOf() tells a source with each section where they differ", () => {
  const { citation } = sectionsOf([
    aReach(0, 600, { citation: "Code 1" }),
    aReach(600, 1200, { citation: "Code 2" }),
  ]);
  expect(citation).toBe("");
});

test("sectionsOf() tells once what is said wherever someone's flow passes", () => {
  const shared = "Among owners, everyone whose flow passes is responsible.";
  const { sections, common } = sectionsOf([
    aReach(0, 600, { reason: `${OWNERS} ${shared}`, servedBy: ["p12"] }),
    aReach(600, 1200, { reason: `${OWNERS} ${shared}`, unknownTieIns: ["T2"] }),
    aReach(1200, 2000, { reason: `${OWNERS} No active tie-in upstream.` }),
  ]);
  expect(common).toBe(`${OWNERS} ${shared}`);
  expect(sections.map(({ own }) => own)).toEqual(["", "", "No active tie-in upstream."]);
});
