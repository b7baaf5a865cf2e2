import { describe, expect, test } from "vitest";
import {
  fullFlow,
  partFull,
  partFullFlow,
  SEWER_ROUGHNESS,
  sectionLeft,
} from "#lib/domain/capacity/manning.ts";

const GALLONS_PER_CUBIC_FOOT = 7.48052;

describe("full flow", () => {
  // https://civiltoolbox.com/manningpipe (from memory, not found again) prints these with "1.49", but they come out with 1.486.
  test("fullFlow() of 8 in at 0.5% and n 0.013 is 2.448 ft/s, 0.854 cfs, 552 261 gallons a day", () => {
    const flow = fullFlow({ diameter: 8, slope: 0.005, roughness: 0.013 });
    expect(Math.abs(flow.velocity / 2.448 - 1)).toBeLessThan(0.001);
    expect(Math.abs(flow.cfs / 0.854 - 1)).toBeLessThan(0.001);
    expect(Math.abs((flow.cfs * GALLONS_PER_CUBIC_FOOT * 86_400) / 552_261 - 1)).toBeLessThan(
      0.001,
    );
  });

  // A pipe maker's manual (cast iron, n 0.012, inside diameters 1.96, 2.96, 5.94 and 7.94 in; from
  // memory, not found again, but each figure follows from the formula within 0.6 %).
  test.each([
    [1.96, 0.01, 1.47, 13.75],
    [1.96, 0.02, 2.07, 19.44],
    [2.96, 0.01, 1.93, 41.49],
    [2.96, 0.02, 2.73, 58.67],
    [5.94, 0.01, 3.07, 265.5],
    [5.94, 0.02, 4.35, 375.47],
    [7.94, 0.01, 3.73, 575.81],
    [7.94, 0.02, 5.28, 814.32],
  ])("fullFlow() of %f in at %f is %f ft/s and %f gpm", (diameter, slope, velocity, gpm) => {
    const flow = fullFlow({ diameter, slope, roughness: 0.012 });
    expect(Math.abs(flow.velocity / velocity - 1)).toBeLessThan(0.006);
    expect(Math.abs(flow.gpm / gpm - 1)).toBeLessThan(0.006);
  });

  // Computed here from the formula, nominal diameters.
  test.each([
    [4, 1 / 48, 0.013, 3.148, 123.3],
    [4, 1 / 96, 0.013, 2.226, 87.2],
    [6, 1 / 96, 0.013, 2.917, 257],
    [6, 1 / 48, 0.013, 4.125, 363.5],
    [8, 0.004, 0.013, 2.19, 343],
    [4, 1 / 48, 0.009, 4.547, 178.1],
    [6, 1 / 96, 0.009, 4.213, 371.3],
    [4, 1 / 48, 0.012, 3.41, 133.6],
  ])("fullFlow() of %f in at %f, n %f", (diameter, slope, roughness, velocity, gpm) => {
    const flow = fullFlow({ diameter, slope, roughness });
    expect(Math.abs(flow.velocity - velocity)).toBeLessThan(0.001);
    expect(Math.abs(flow.gpm - gpm)).toBeLessThan(0.1);
  });

  // Least slopes for 2 ft/s, as in Purcell OK, https://codelibrary.amlegal.com/codes/purcellok/latest/purcell_ok/0-0-0-6429,
  // whose 0.20 for 10 in is a misprint of 0.28: it would give 1.797 ft/s.
  test.each([
    [8, 0.4, 2.189],
    [10, 0.28, 2.126],
    [12, 0.22, 2.128],
    [15, 0.15, 2.039],
    [18, 0.12, 2.059],
    [21, 0.1, 2.083],
    [24, 0.08, 2.037],
  ])(
    "fullFlow() of %f in at %f ft per 100 ft is faster than 2 ft/s",
    (diameter, fall, velocity) => {
      const flow = fullFlow({ diameter, slope: fall / 100, roughness: 0.013 });
      expect(Math.abs(flow.velocity - velocity)).toBeLessThan(0.0015);
    },
  );

  test("fullFlow() of 10 in at the misprinted 0.20 would be too slow", () => {
    const flow = fullFlow({ diameter: 10, slope: 0.002, roughness: 0.013 });
    expect(flow.velocity).toBeCloseTo(1.797, 3);
  });

  test("fullFlow() refuses a pipe without size, fall or roughness", () => {
    expect(() => fullFlow({ diameter: 0, slope: 0.01, roughness: 0.013 })).toThrow("must be > 0");
    expect(() => fullFlow({ diameter: 4, slope: Number.NaN, roughness: 0.013 })).toThrow(
      "must be > 0",
    );
  });
});

// ASCE Manual of Practice 60 (1982), as EPA's SWMM user's manual reprints it in A.7, Manning's n of
// closed conduits (read in a public copy): 0.011 to 0.015 for asbestos-cement, lined cast iron, concrete,
// smooth plastic and vitrified clay alike.
test("SEWER_ROUGHNESS is the table's range for every pipe of a sewer", () => {
  expect(SEWER_ROUGHNESS).toEqual({ low: 0.011, high: 0.015 });
});

describe("part-full flow", () => {
  // Hydraulic elements with constant n, computed here from the segment of the circle.
  test.each([
    [0.05, 0.0187, 0.1302, 0.2569, 0.0048],
    [0.1, 0.052, 0.2541, 0.4012, 0.0209],
    [0.15, 0.0941, 0.3715, 0.5168, 0.0486],
    [0.2, 0.1424, 0.4824, 0.6151, 0.0876],
    [0.25, 0.1955, 0.5865, 0.7007, 0.137],
    [0.3, 0.2523, 0.6838, 0.7761, 0.1958],
    [0.4, 0.3735, 0.8569, 0.9022, 0.337],
    [0.5, 0.5, 1, 1, 0.5],
    [0.6, 0.6265, 1.1106, 1.0724, 0.6718],
    [0.7, 0.7477, 1.1849, 1.1198, 0.8372],
    [0.75, 0.8045, 1.2067, 1.1335, 0.9119],
    [0.8, 0.8576, 1.2168, 1.1397, 0.9775],
    [0.9, 0.948, 1.1921, 1.1243, 1.0658],
    [0.95, 0.9813, 1.1458, 1.095, 1.0745],
    [1, 1, 1, 1, 1],
  ])("partFull(%f)", (depth, area, radius, velocity, flow) => {
    const part = partFull(depth);
    expect(Math.abs(part.area - area)).toBeLessThan(5e-4);
    expect(Math.abs(part.radius - radius)).toBeLessThan(5e-4);
    expect(Math.abs(part.velocity - velocity)).toBeLessThan(5e-4);
    expect(Math.abs(part.flow - flow)).toBeLessThan(5e-4);
  });

  test("partFull() is greatest in flow at 0.938 and in velocity at 0.813 of the diameter", () => {
    const depths = Array.from({ length: 100_001 }, (_, step) => step / 100_000);
    const greatest = (of: "flow" | "velocity") =>
      depths.reduce((best, depth) => (partFull(depth)[of] > partFull(best)[of] ? depth : best), 0);
    expect(Math.abs(greatest("flow") - 0.93818)).toBeLessThan(1e-3);
    expect(Math.abs(greatest("velocity") - 0.8128)).toBeLessThan(1e-3);
    expect(partFull(0.93818).flow).toBeCloseTo(1.0757, 4);
    expect(partFull(0.8128).velocity).toBeCloseTo(1.14, 4);
  });

  // The pipe maker's "1/4 full" and "3/4 full" are by area: 6 in at 1% runs 2.38 ft/s, 51.32 gpm and
  // 3.44 ft/s, 223.10 gpm, at depths of 0.298 and 0.702 of the diameter (computed here).
  test.each([
    [0.29801, 2.38, 51.32],
    [0.70199, 3.44, 223.1],
  ])("partFullFlow() at %f of the diameter is %f ft/s and %f gpm", (depth, velocity, gpm) => {
    const flow = partFullFlow({ diameter: 5.94, slope: 0.01, roughness: 0.012 }, depth);
    expect(Math.abs(flow.velocity / velocity - 1)).toBeLessThan(0.006);
    expect(Math.abs(flow.gpm / gpm - 1)).toBeLessThan(0.006);
  });

  test("sectionLeft() is what an obstruction leaves", () => {
    expect(sectionLeft(4, 0)).toBe(1);
    expect(sectionLeft(4, 2)).toBeCloseTo(0.5, 12);
    expect(sectionLeft(4, 1)).toBeCloseTo(1 - 0.1955, 4);
    expect(sectionLeft(4, 5)).toBe(0);
  });
});
