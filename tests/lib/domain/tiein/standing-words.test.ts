import fc from "fast-check";
import { expect, test } from "vitest";
import type { DoubtWhy } from "#lib/domain/reconcile/doubt.ts";
import type { AxisGap } from "#lib/domain/record/axis.ts";
import {
  type SeenSaid,
  type ShownSaid,
  type StandingSaid,
  standingSentence,
} from "#lib/domain/tiein/standing-said.ts";
import { STANDING_EN } from "#lib/domain/tiein/standing-words-en.ts";
import { STANDING_ES } from "#lib/domain/tiein/standing-words-es.ts";

const SHOWN: ShownSaid = {
  record: { title: "Card 1184", kind: "card", number: "1184" },
  label: "House 14",
  station: 3_400,
  off: 0,
  moved: 3_630,
};
const SEEN: SeenSaid = { station: 3_650, uncertainty: 100, runs: ["Run 1", "Run 2"] };
const SETTLED = { settledBy: "Dana Okafor", settledReason: "Dug up." };

function said(each: StandingSaid) {
  return {
    en: standingSentence(STANDING_EN, [each]),
    es: standingSentence(STANDING_ES, [each]),
  };
}

const SPANISH: readonly (readonly [string, StandingSaid, string])[] = [
  [
    "a proposal",
    {
      kind: "linked",
      shown: SHOWN,
      seen: SEEN,
      compared: { off: 20, tolerance: 140, allowedFor: true, sides: null },
      acceptedBy: null,
    },
    "Card 1184 muestra House 14 a 34.0 pies (36.3 pies al corregir desde dónde mide); vista a 36.5 pies, con un margen de 1.0 pies, en Run 1 y Run 2: 0.2 pies de diferencia al corregir desde dónde mide el registro, dentro de los 1.4 pies en que pueden diferir las lecturas. Es una propuesta; nadie la ha aceptado todavía.",
  ],
  [
    "an accepted pair on opposite sides",
    {
      kind: "linked",
      shown: { ...SHOWN, moved: null },
      seen: { ...SEEN, runs: [] },
      compared: {
        off: 250,
        tolerance: 140,
        allowedFor: false,
        sides: {
          recorded: { side: "left", compass: null },
          seen: { side: "right", compass: "north" },
        },
      },
      acceptedBy: "Dana Okafor",
    },
    "Card 1184 muestra House 14 a 34.0 pies; vista a 36.5 pies, con un margen de 1.0 pies, por la cámara: 2.5 pies de diferencia, fuera de los 1.4 pies en que pueden diferir las lecturas; a la izquierda en el registro, a la derecha (lado norte) en la tubería. Dana Okafor aceptó que son la misma conexión.",
  ],
  [
    "an undocumented tie-in",
    { kind: "no-entry", seen: SEEN },
    "Vista a 36.5 pies, con un margen de 1.0 pies, en Run 1 y Run 2; ninguna conexión del registro corresponde a ella.",
  ],
  [
    "an entry under water",
    {
      kind: "not-inspected",
      shown: { ...SHOWN, moved: null },
      unseen: { from: 3_000, to: 3_600, state: "under-water" },
    },
    "Card 1184 muestra House 14 a 34.0 pies; la tubería de 30.0 a 36.0 pies estaba bajo agua, así que puede estar allí sin que se haya visto.",
  ],
  [
    "an entry not seen",
    { kind: "not-seen", shown: { ...SHOWN, moved: null }, from: 3_260, to: 3_540, nearly: "" },
    "Card 1184 muestra House 14 a 34.0 pies; la cámara vio la tubería de 32.6 a 35.4 pies y no halló allí ningún ramal que le corresponda.",
  ],
  [
    "a tie-in that another zero would explain",
    { kind: "doubtful", seen: SEEN, why: "zero", entry: "House 14" },
    "Vista a 36.5 pies, con un margen de 1.0 pies, en Run 1 y Run 2; podría ser House 14 si el registro mide desde otro punto, pero faltan datos para decirlo.",
  ],
  [
    "an entry that a record in meters would explain",
    { kind: "place-unclear", shown: { ...SHOWN, moved: null }, why: "meters", tieIn: "T3" },
    "Card 1184 muestra House 14 a 34.0 pies; podría ser T3 si el registro está en metros, así que aún no puede decirse qué punto de la tubería es.",
  ],
  [
    "a tie-in out of use",
    { kind: "inactive", settled: SETTLED },
    "Fuera de uso, según determinó Dana Okafor: Dug up.",
  ],
];

test.each(SPANISH)("a standing in Spanish tells of %s", (_what, each, sentence) => {
  expect(said(each).es).toBe(sentence);
});

const cft = fc.integer({ min: 0, max: 20_000 });
const name = fc.constantFrom("", "House 14", "Shop B");
const seen: fc.Arbitrary<SeenSaid | null> = fc.option(
  fc.record({
    station: fc.option(cft),
    uncertainty: cft,
    runs: fc.array(fc.constantFrom("", "Run 1", "Push rod"), { maxLength: 3 }),
  }),
);
const shown: fc.Arbitrary<ShownSaid> = fc.record({
  record: fc.option(
    fc.record({
      title: fc.constantFrom("", "Card 1184"),
      kind: fc.constantFrom("card" as const, "as-built" as const, "other" as const),
      number: fc.constantFrom("", "77"),
    }),
  ),
  label: name,
  station: fc.option(cft),
  off: cft,
  moved: fc.option(cft),
});
const settled = fc.record({ settledBy: name, settledReason: fc.constantFrom("", "Dug up.") });
const side = fc.constantFrom("left" as const, "right" as const, "crown" as const);
const why = fc.constantFrom<DoubtWhy>(
  "zero",
  "mirrored",
  "meters",
  "other-end",
  "meters-from-other-end",
  "not-established",
);
const gaps: readonly AxisGap[] = [
  "no-record",
  "no-distance",
  "measured-from-unknown",
  "no-length",
  "beyond-length",
  "below-main",
  "not-a-length",
];

const sideSaid = fc.record({
  side,
  compass: fc.constantFrom(null, "north" as const, "southwest" as const),
});

const anySaid: fc.Arbitrary<StandingSaid> = fc.oneof(
  fc.record({ kind: fc.constant("inactive" as const), settled }),
  fc.record({
    kind: fc.constant("not-sanitary" as const),
    tieInKind: fc.constantFrom("yard-drain" as const, "roof-drain" as const),
    settled,
  }),
  fc.record({
    kind: fc.constant("linked" as const),
    shown: fc.option(shown),
    seen,
    compared: fc.option(
      fc.record({
        off: cft,
        tolerance: cft,
        allowedFor: fc.boolean(),
        sides: fc.option(fc.record({ recorded: sideSaid, seen: sideSaid })),
      }),
    ),
    acceptedBy: fc.option(name),
  }),
  fc.record({ kind: fc.constantFrom("no-record-yet" as const, "never-tied" as const), seen }),
  fc.record({ kind: fc.constant("no-entry" as const), seen }),
  fc.record({ kind: fc.constant("conflict" as const), seen, entry: name, off: cft }),
  fc.record({
    kind: fc.constantFrom("near-tie" as const, "unplaced-entry" as const),
    seen,
    entry: name,
  }),
  fc.record({ kind: fc.constant("doubtful" as const), seen, why, entry: name }),
  fc.record({ kind: fc.constant("place-unclear" as const), shown, why, tieIn: name }),
  fc.record({ kind: fc.constant("written-twice" as const) }),
  fc.record({
    kind: fc.constant("no-station" as const),
    entry: name,
    gap: fc.constantFrom(...gaps),
  }),
  fc.record({ kind: fc.constant("beyond-end" as const), shown, upperEnd: cft }),
  fc.record({ kind: fc.constant("not-seen" as const), shown, from: cft, to: cft, nearly: name }),
  fc.record({
    kind: fc.constant("explained" as const),
    by: name,
    explanation: fc.constantFrom("Never built", "Never built."),
  }),
);

test("a standing tells the same numbers in both languages, as whole sentences without a gap", () => {
  fc.assert(
    fc.property(anySaid, (each) => {
      const { en, es } = said(each);
      const numbers = (text: string) => text.match(/\d+(\.\d+)?/g) ?? [];
      expect(numbers(es)).toEqual(numbers(en));
      for (const text of [en, es]) {
        expect(text).toMatch(/^[A-ZÁÉÍÓÚ].*[.!?]$/s);
        expect(text).not.toMatch(/ {2}|undefined|null|NaN|\.\.| ,/);
      }
      expect(es).not.toMatch(/\bft\b|\bthe\b/);
    }),
  );
});
