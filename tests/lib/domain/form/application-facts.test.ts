import { expect, test } from "vitest";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import type { PermitKind } from "#lib/domain/facts/permit.ts";
import { formFact } from "#lib/domain/form/form-facts.ts";
import {
  anApplication,
  aPavementRule,
  aProposedPipe,
  aSurfaceCut,
} from "#tests/support/application.ts";
import { anOffice, aScopeItem } from "#tests/support/file.ts";
import { sampleLine } from "#tests/support/sample-line.ts";

const SCOPE = [
  aScopeItem("dig", {
    title: "Dig",
    kind: "dig-and-replace",
    place: "stretch",
    from: 0,
    to: 1_000,
  }),
];

function value(key: string, change: Partial<LineFile>, permitKind: PermitKind = "side-sewer") {
  const line = sampleLine();
  const file = { ...line.file, ...change };
  const office = anOffice({ compensation: "Fund 55-0177", compensationExpiresOn: "2027-03-31" });
  const authority = { name: "Quillhaven" };
  return formFact(key)?.of({ file, report: line.report, office, authority, permitKind });
}

test("a form takes what was entered for its own permit, else for the side sewer’s", () => {
  const applications = [
    anApplication({ valuation: 900_000 }),
    anApplication({
      id: "street",
      permitKind: "street-use",
      applicant: "",
      applicantIs: "not-set",
      traffic: "Detour",
      attestedOn: null,
    }),
  ];
  expect(value("application.traffic", { applications }, "street-use")).toEqual(["Detour"]);
  expect(value("application.applicant", { applications }, "street-use")).toEqual([
    "Bellwether Drain and Sewer",
  ]);
  expect(value("application.applicant-is", { applications }, "street-use")).toEqual(["contractor"]);
  expect(value("application.valuation", { applications }, "street-use")).toEqual(["900000"]);
});

test("a signature is of its own application; nobody signed for another permit", () => {
  const applications = [anApplication()];
  expect(value("application.signed-on", { applications })).toEqual(["2026-11-20"]);
  expect(value("application.signed-on", { applications }, "street-use")).toEqual([]);
});

test("what nobody entered fills and checks nothing; the valuation falls back on the work", () => {
  for (const key of [
    "application.applicant",
    "application.work-type",
    "application.traffic",
    "surface.total",
    "surface.area",
  ])
    expect(value(key, { scope: [], applications: [], surfaceCuts: [] }), key).toEqual([]);
  expect(value("application.valuation", { scope: [] })).toEqual([]);
  expect(value("application.valuation", { scope: SCOPE, options: [] })).not.toEqual([]);
  const half = [aSurfaceCut(), aSurfaceCut({ id: "open", walls: "not-set" })];
  expect(value("surface.total", { surfaceCuts: half })).toEqual([]);
  expect(value("surface.area", { surfaceCuts: half })).toEqual(["30", ""]);
});

test("new pipe and surfaces stand row by row", () => {
  const change = {
    scope: SCOPE,
    options: [],
    changeOrders: [],
    proposedPipes: [aProposedPipe("dig")],
    surfaceCuts: [aSurfaceCut()],
  };
  const told = ["work", "material", "size", "length", "slope", "bedding"].map((key) =>
    value(`pipe-new.${key}`, change)?.join(),
  );
  expect(told).toEqual([
    "Dig",
    "PVC",
    "8",
    "1000",
    "2% (about 1/4 in per ft)",
    "6 in of crushed rock",
  ]);
  const { authority } = sampleLine().file;
  const ruled = {
    ...change,
    authority: authority && { ...authority, pavementRules: [aPavementRule({ beyond: 100 })] },
  };
  expect(value("surface.width", ruled)).toEqual(["500"]);
  expect(value("surface.total", ruled)).toEqual(["60"]);
});

test("workers’ compensation and its end are the office’s", () => {
  expect(value("contractor.compensation", {})).toEqual(["Fund 55-0177"]);
  expect(value("contractor.compensation-expires", {})).toEqual(["2027-03-31"]);
  expect(value("contractor.business-license", {})).toEqual([]);
});
