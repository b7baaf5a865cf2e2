import { expect, test } from "vitest";
import { paperClocks, papersBy, pressingPapers } from "#lib/domain/clocks/paper-clocks.ts";
import { anOffice } from "#tests/support/file.ts";

const TODAY = "2026-11-25";

test("each paper of the office that is on file with a date runs out on that date", () => {
  const office = anOffice({
    licenseExpiresOn: "2027-06-30",
    bondExpiresOn: null,
    insuranceExpiresOn: "2026-11-24",
    businessLicense: "",
    businessLicenseExpiresOn: "2026-12-01",
  });
  expect(paperClocks(office, TODAY).map(({ key, on }) => [key, on])).toEqual([
    ["paper:insurance", "2026-11-24"],
    ["paper:license", "2027-06-30"],
  ]);
  expect(paperClocks(office, TODAY)[0]?.sentence).toContain("expired on");
});

test("a paper stands on the desk for 45 days before it runs out, and after", () => {
  const on = (day: string) =>
    pressingPapers(anOffice({ licenseExpiresOn: day }), TODAY).map(({ key }) => key);
  expect(on("2027-01-10")).toEqual([]);
  expect(on("2027-01-09")).toEqual(["paper:license"]);
  expect(on("2025-01-01")).toEqual(["paper:license"]);
});

test("a paper that ran out counts as late, one that does within the week as due", () => {
  const office = anOffice({
    licenseExpiresOn: "2026-11-24",
    insuranceExpiresOn: "2026-12-02",
    bondExpiresOn: "2026-12-03",
  });
  const { late, due } = papersBy(pressingPapers(office, TODAY), TODAY);
  expect(late.map(({ key }) => key)).toEqual(["paper:license"]);
  expect(due.map(({ key }) => key)).toEqual(["paper:insurance"]);
});
