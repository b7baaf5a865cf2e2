import type { Material } from "#lib/domain/facts/line.ts";

/**
 * The materials in hatches of our own; the word always stands with it. Each pattern is a tile in units
 * of the drawing.
 */
const HATCHES: Record<
  Material,
  { readonly size: number; readonly path: string; readonly dots?: boolean }
> = {
  "vitrified-clay": { size: 9, path: "M-2 11 11 -2 M-2 2 2 -2 M7 11 11 7" },
  concrete: { size: 10, path: "M2 3h.01 M7 2h.01 M5 6h.01 M1 8h.01 M8 8h.01", dots: true },
  "cast-iron": { size: 4, path: "M-1 5 5 -1 M-1 1 1 -1 M3 5 5 3" },
  "ductile-iron": { size: 4, path: "M-1 -1 5 5 M3 -1 5 1 M-1 3 1 5" },
  pvc: { size: 10, path: "" },
  abs: { size: 6, path: "M0 2H6 M0 4.5H6" },
  polyethylene: { size: 6, path: "M0 3H6" },
  "bituminous-fibre": { size: 7, path: "M-1 8 8 -1 M-1 -1 8 8" },
  "asbestos-cement": { size: 4, path: "M2 0V4" },
  "cured-in-place-liner": { size: 10, path: "M0 7 2.5 2 5 7 7.5 2 10 7" },
  unknown: { size: 10, path: "M0 5H5" },
};

/** The patterns of all materials and shades, under names that begin with `prefix`. */
export function HatchDefs({ prefix }: { readonly prefix: string }) {
  return (
    <defs>
      {Object.entries(HATCHES).map(([material, { size, path, dots }]) => (
        <pattern
          key={material}
          id={`${prefix}-${material}`}
          width={size}
          height={size}
          patternUnits="userSpaceOnUse"
        >
          <path
            d={path}
            fill="none"
            stroke="var(--ink)"
            strokeWidth={dots === true ? 1.5 : 0.8}
            strokeLinecap={dots === true ? "round" : "butt"}
          />
        </pattern>
      ))}
      <Shade id={`${prefix}-sparse`} size={9} path="M-2 11 11 -2 M-2 2 2 -2 M7 11 11 7" />
      <Shade id={`${prefix}-dense`} size={6} path="M0 1.5H6 M0 4.5H6" />
      <Shade id={`${prefix}-cross`} size={8} path="M-1 9 9 -1 M-1 -1 9 9" />
    </defs>
  );
}

function Shade({
  id,
  size,
  path,
}: {
  readonly id: string;
  readonly size: number;
  readonly path: string;
}) {
  return (
    <pattern id={id} width={size} height={size} patternUnits="userSpaceOnUse">
      <path d={path} fill="none" stroke="var(--rule-strong)" strokeWidth="0.7" />
    </pattern>
  );
}

export function hatchOf(material: string): string {
  return material in HATCHES ? material : "unknown";
}
