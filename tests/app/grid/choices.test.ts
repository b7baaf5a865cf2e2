import { describe, expect, test } from "vitest";
import { choiceMeant, choicesToShow, distinct } from "#app/_components/grid/choices.ts";
import type { GridChoice } from "#app/_components/grid/column.ts";

function choices(...labels: string[]): GridChoice[] {
  return labels.map((label) => ({ value: label, label }));
}

function meant(typed: string, all: readonly GridChoice[]): string {
  const read = choiceMeant(all, typed);
  return read.ok ? read.value.value : read.error;
}

describe("choiceMeant()", () => {
  test("says what to do first where there is nothing to choose from", () => {
    expect(meant("14 Heron Court", [])).toMatch(/^nothing to choose from yet: .*save/);
  });

  test("never takes a word from the middle of a choice", () => {
    expect(meant("seen", choices("positive", "not seen", "inconclusive"))).toBe(
      "choose positive, not seen, inconclusive",
    );
    expect(meant("before", choices("due by", "not before", "not after"))).toMatch(/^choose /);
    expect(meant("connected", choices("perhaps connected", "only crossed"))).toMatch(/^choose /);
  });

  test("takes the exact words before others that begin with them", () => {
    expect(meant("no", choices("not run", "no", "none"))).toBe("no");
    expect(meant("14 Fennel Row", choices("14 Fennel Row", "14 Fennel Row, Unit A"))).toBe(
      "14 Fennel Row",
    );
  });

  test("takes a beginning only where no other choice has it, and asks which one otherwise", () => {
    const all = choices("cast iron", "concrete", "cured-in-place liner");
    expect(meant("cas", all)).toBe("cast iron");
    expect(meant("c", all)).toBe("which one: cast iron, concrete, cured-in-place liner?");
  });

  test("takes a number or a single letter at the end whole", () => {
    expect(meant("4", choices("42 Fennel Row"))).toMatch(/^choose /);
    expect(meant("42", choices("42 Fennel Row"))).toBe("42 Fennel Row");
    expect(meant("Unit 1", choices("Unit 10, 42 Fennel Row"))).toMatch(/^choose /);
    expect(meant("Unit A", choices("Unit Annex"))).toMatch(/^choose /);
    expect(meant("Unit A", choices("Unit A, 42 Fennel Row"))).toBe("Unit A, 42 Fennel Row");
  });

  test("takes the words that are kept as meaning the same, whole only", () => {
    const all: GridChoice[] = [
      { value: "positive", label: "positive", also: ["seen"] },
      { value: "not-seen", label: "not seen" },
    ];
    expect(meant("Seen", all)).toBe("positive");
    expect(meant("see", all)).toMatch(/^choose /);
  });

  test("does not mind capitals, hyphens, dots and the shape of an apostrophe", () => {
    const all = choices("can’t tell", "break-in");
    expect(meant("Can't Tell", all)).toBe("can’t tell");
    expect(meant("break in.", all)).toBe("break-in");
  });

  test("asks which one where two are called the same", () => {
    expect(meant("14 Fennel Row", choices("14 Fennel Row", "14 Fennel Row"))).toMatch(/^which one/);
  });
});

describe("choicesToShow()", () => {
  test("shows those that begin so, then those with a later word that does, never a word’s middle", () => {
    const all = choices("scope", "responsibility", "observation log", "tests of scope");
    expect(choicesToShow(all, "s").map(({ label }) => label)).toEqual(["scope", "tests of scope"]);
    expect(choicesToShow(all, "ob").map(({ label }) => label)).toEqual(["observation log"]);
    expect(choicesToShow(all, "")).toEqual(all);
  });
});

test("distinct() gives what is shown twice a number", () => {
  const shown = distinct(choices("14 Fennel Row", "12 Fennel Row", "14 fennel row"));
  expect(shown.map(({ label }) => label)).toEqual([
    "14 Fennel Row",
    "12 Fennel Row",
    "14 fennel row (2)",
  ]);
});
