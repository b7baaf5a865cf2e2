import type { Fitting, Material, Side, TieInKind } from "./line.ts";

/** Plain English of the trade, as it stands inside a sentence. */
export const MATERIAL_WORDS: Record<Material, string> = {
  "vitrified-clay": "vitrified clay",
  concrete: "concrete",
  "cast-iron": "cast iron",
  "ductile-iron": "ductile iron",
  pvc: "PVC",
  abs: "ABS",
  polyethylene: "polyethylene",
  "bituminous-fibre": "bituminous fiber pipe",
  "asbestos-cement": "asbestos cement",
  "cured-in-place-liner": "cured-in-place liner",
  unknown: "unknown",
};

export const SIDE_WORDS: Record<Side, string> = {
  left: "left",
  right: "right",
  crown: "top of pipe",
  unknown: "unknown",
};

export const FITTING_WORDS: Record<Fitting, string> = {
  wye: "wye",
  tee: "tee",
  saddle: "saddle",
  "break-in": "cut-in (hammer) tap",
  unknown: "unknown",
};

export const TIE_IN_KIND_WORDS: Record<TieInKind, string> = {
  unknown: "unknown",
  building: "building",
  "yard-drain": "yard drain",
  "roof-drain": "roof drain",
  "cleanout-riser": "cleanout riser",
  "capped-stub": "capped stub",
  "old-septic-line": "old septic line",
};
