import { expect, test } from "vitest";
import { pageServers } from "#lib/commands/page-servers.mjs";

const GIGABYTE = 1_000_000_000;

test.each([
  { cores: 1, memory: 8 * GIGABYTE, count: 1 },
  { cores: 2, memory: 8 * GIGABYTE, count: 2 },
  { cores: 16, memory: 64 * GIGABYTE, count: 2 },
  { cores: 4, memory: 1.5 * GIGABYTE, count: 1 },
  { cores: 4, memory: GIGABYTE / 2, count: 1 },
])("a machine of $cores cores and $memory bytes gets $count page servers", (machine) => {
  expect(pageServers({ asked: undefined, ...machine })).toBe(machine.count);
});

test("an office can say how many it wants; what is no number from 1 to 8 says nothing", () => {
  const machine = { cores: 2, memory: 8 * GIGABYTE };
  expect(pageServers({ asked: "1", ...machine })).toBe(1);
  expect(pageServers({ asked: "4", ...machine })).toBe(4);
  for (const asked of ["0", "9", "two", "", "-1", "1.5"])
    expect(pageServers({ asked, ...machine })).toBe(2);
});
