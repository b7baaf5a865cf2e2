import type { SafetyRule } from "../capacity/trench.ts";

/*
 * Worker safety beside the trench. Read in public copies: 29 CFR 1926.1203(a), .1204(e), .1209 and
 * .1211 (Subpart AA); OSHA's QuickCard on hydrogen sulfide; 29 CFR 1926.55 Appendix A for its limit in
 * construction; OSHA's letter of May 29, 2007 on asbestos-cement pipe under 1926.1101. What has no
 * citation is common practice. A state plan may ask for more.
 */

const ENTERED: readonly SafetyRule[] = [
  {
    key: "permit-space",
    words:
      "No one goes in until a competent person has evaluated the manhole. Treat it as a permit space.",
    citation: "29 CFR 1926.1203(a)",
  },
  {
    key: "air-first",
    words:
      "Test the air from the top first: oxygen, then flammable gas, then toxic gas. Keep testing while anyone is in.",
    citation: "29 CFR 1926.1204(e)",
  },
  {
    key: "attendant",
    words: "One person stays at the top the whole time, and never goes in after anyone.",
    citation: "29 CFR 1926.1209",
  },
  {
    key: "rescue",
    words: "Rescue equipment is ready before anyone goes in.",
    citation: "29 CFR 1926.1211",
  },
];

const STAY_OUT: readonly SafetyRule[] = [
  {
    key: "stay-out",
    words:
      "No one goes into any manhole, even for a look, without the office’s confined-space program: air tested, a person at the top, rescue ready.",
    citation: "29 CFR 1926 Subpart AA",
  },
];

/** Where a manhole is on the line, all that going in asks for; else that nobody goes into any. */
export function manholeRules(isThere: boolean): readonly SafetyRule[] {
  return isThere ? ENTERED : STAY_OUT;
}

export const GASES: readonly SafetyRule[] = [
  {
    key: "hydrogen-sulfide",
    words:
      "Hydrogen sulfide sinks into trenches and manholes and numbs the nose. Go by a meter, never by smell. Alarm: everyone out.",
    citation: "OSHA QuickCard, Hydrogen Sulfide",
  },
  {
    key: "sulfide-limit",
    words: "Limit: 10 parts per million.",
    citation: "29 CFR 1926.55, Appendix A",
  },
  {
    key: "fuel-gas",
    words:
      "Smell of gas, a hiss, or bubbles in water: everyone out, no switches and no phones there, then 911 and the gas company.",
    citation: "",
  },
];

export const SEWAGE: readonly SafetyRule[] = [
  {
    key: "cover",
    words: "Waterproof gloves, face shield or goggles, boots. Cover every cut.",
    citation: "",
  },
  {
    key: "wash",
    words: "Wash before eating, drinking or smoking. Change clothes before going home.",
    citation: "",
  },
];
