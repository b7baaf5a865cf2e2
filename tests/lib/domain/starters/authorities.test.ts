import { expect, test } from "vitest";
import { AUTHORITY_PART_NAMES } from "#lib/domain/facts/authority.ts";
import {
  EXAMPLE_CITATION,
  exampleRows,
  STARTERS,
  starterAuthority,
  starterChoices,
} from "#lib/domain/starters/authorities.ts";
import { authorityShape } from "#lib/exchange/shape.ts";

const GIVEN = { id: "a", name: "", state: "OR", today: "2026-11-25" } as const;

test("each example is a whole authority that the reader takes", () => {
  for (const starter of STARTERS) {
    const made = starterAuthority(starter, GIVEN);
    const read = authorityShape("memory").safeParse(made);
    expect(read.error?.issues, starter).toBeUndefined();
    for (const part of AUTHORITY_PART_NAMES.filter((each) => each !== "holidays"))
      expect(made[part].length, `${starter} ${part}`).toBeGreaterThan(0);
    const ids = AUTHORITY_PART_NAMES.flatMap(
      (part): readonly { readonly id: string }[] => made[part],
    ).map(({ id }) => id);
    expect(new Set(ids).size).toBe(ids.length);
  }
});

test("every row of an example says that it is one until its citation is replaced", () => {
  const made = starterAuthority("city-to-main", GIVEN);
  const { rules } = made;
  const rows = AUTHORITY_PART_NAMES.filter((part) => part !== "holidays").flatMap(
    (part): readonly { readonly citation: string }[] => made[part],
  );
  expect(rows.every(({ citation }) => citation === EXAMPLE_CITATION)).toBe(true);
  expect(exampleRows(made)).toBe(rows.length);
  const checked = rules.map((rule) => ({ ...rule, citation: "Code 14.20" }));
  expect(exampleRows({ ...made, rules: checked })).toBe(rows.length - rules.length);
});

test("holidays are those of the state for two years, each with its source", () => {
  const { holidays } = starterAuthority("town-cleanout", { ...GIVEN, state: "WA" });
  expect(holidays.map(({ day }) => day.slice(0, 4))).toContain("2027");
  expect(holidays.every(({ source }) => source !== "")).toBe(true);
  const federal = starterAuthority("town-cleanout", { ...GIVEN, state: "" }).holidays;
  expect(holidays.length).toBeGreaterThan(federal.length);
});

test("an example keeps the name that the office gives it, and has one of its own else", () => {
  expect(starterAuthority("town-cleanout", { ...GIVEN, name: "Alder Fork" }).name).toBe(
    "Alder Fork",
  );
  expect(starterAuthority("town-cleanout", GIVEN).name).toBe("Example town");
  expect(starterChoices()).toHaveLength(STARTERS.length);
});
