import { Line, StyleSheet, Svg, Text, View } from "@react-pdf/renderer";
import { MATERIALS } from "#lib/domain/facts/line.ts";
import { EN } from "#lib/domain/paper/words-en.ts";
import type { StripDrawing, StripMark } from "#lib/domain/strip/drawing.ts";
import { pipeHatch } from "#lib/domain/strip/strip-hatch.ts";
import type { Shape, StripPlan } from "#lib/domain/strip/strip-shape.ts";
import { INK } from "./ink.ts";
import { StripSvg } from "./strip-svg.tsx";

const styles = StyleSheet.create({
  legend: {
    position: "absolute",
    left: 44,
    bottom: 48,
    flexDirection: "row",
    justifyContent: "space-between",
    alignItems: "flex-end",
  },
  keys: { flexDirection: "row", flexWrap: "wrap", width: 520 },
  key: { flexDirection: "row", alignItems: "center", marginRight: 14, marginTop: 3 },
  word: { fontSize: 8, color: INK.soft, marginLeft: 4 },
  scale: { width: 150, alignItems: "flex-start" },
  scaleWord: { fontSize: 8, color: INK.soft, marginTop: 1 },
});

const BOX = { left: 1, right: 29, top: 1, bottom: 11 };

/** The signs and hatches that this drawing uses, each with its word, and the scale with a bar. */
export function Legend({
  drawing,
  feetPerInch,
  width,
}: {
  readonly drawing: StripDrawing;
  readonly feetPerInch: number;
  readonly width: number;
}) {
  const used = MATERIALS.filter((name) => drawing.pipes.some(({ material }) => material === name));
  const sized = (name: (typeof MATERIALS)[number]) => {
    const words = new Set(
      drawing.pipes.flatMap((pipe) => (pipe.material === name ? [pipe.words] : [])),
    );
    return words.size === 1 ? [...words].join("") : EN.material[name];
  };
  return (
    <View style={{ ...styles.legend, width }}>
      <View style={styles.keys}>
        {used.map((name) => (
          <Key key={name} plan={swatch(name)} word={sized(name)} />
        ))}
        {KEYS.map(([name, word, isUsed]) =>
          isUsed(drawing) ? <Key key={name} plan={sign(name)} word={word} /> : null,
        )}
      </View>
      <View style={styles.scale}>
        <ScaleBar />
        <Text
          style={styles.scaleWord}
        >{`1 in = ${feetPerInch} ft when printed at full size; stations increase upstream`}</Text>
      </View>
    </View>
  );
}

function Key({ plan, word }: { readonly plan: StripPlan; readonly word: string }) {
  return (
    <View style={styles.key}>
      <StripSvg plan={plan} />
      <Text style={styles.word}>{word}</Text>
    </View>
  );
}

/** The signs, with what they stand for and whether a drawing has one. */
const KEYS: readonly (readonly [keyof typeof SIGNS, string, (drawing: StripDrawing) => boolean])[] =
  [
    ["square", "permit record", ({ above }) => above.length > 0],
    ["round", "tie-in, seen", ({ below }) => below.length > 0],
    ["diamond", "undocumented or on hold", (drawing) => marksOf(drawing).some(({ loud }) => loud)],
    ["cross", "defect", ({ onPipe }) => onPipe.some(({ kind }) => kind === "fault")],
    ["whisker", "uncertainty", (drawing) => marksOf(drawing).some(({ whisker }) => whisker > 0)],
    ["solid", "matched", ({ joins }) => joins.some(({ state }) => state === "accepted")],
    ["dashed", "match proposed", ({ joins }) => joins.some(({ state }) => state !== "accepted")],
  ];

function marksOf({ above, below, onPipe }: StripDrawing): StripMark[] {
  return [...above, ...below, ...onPipe];
}

/** One inch and two, with the feet that they stand for. */
function ScaleBar() {
  return (
    <Svg width={146} height={8} viewBox="0 0 146 8">
      <Line x1={1} y1={5} x2={145} y2={5} stroke={INK.ink} strokeWidth={1} />
      {[1, 73, 145].map((x) => (
        <Line key={x} x1={x} y1={1} x2={x} y2={7} stroke={INK.ink} strokeWidth={1} />
      ))}
    </Svg>
  );
}

function swatch(material: string): StripPlan {
  const edge = (y: number): Shape => ({
    kind: "line",
    points: [
      [BOX.left, y],
      [BOX.right, y],
    ],
    width: 0.9,
    tone: "ink",
    dash: false,
  });
  return {
    width: 30,
    height: 12,
    foot: 12,
    shapes: [...pipeHatch(material, BOX), edge(BOX.top), edge(BOX.bottom)],
  };
}

function sign(
  name: "square" | "round" | "diamond" | "cross" | "whisker" | "solid" | "dashed",
): StripPlan {
  return { width: 14, height: 12, foot: 12, shapes: SIGNS[name] };
}

const SIGNS: Record<Parameters<typeof sign>[0], readonly Shape[]> = {
  square: [polygon(4, Math.PI / 4, 4, { fill: "paper", tone: "ink" })],
  round: [polygon(12, 0, 2.8, { fill: "ink", tone: "ink" })],
  diamond: [polygon(4, 0, 4, { fill: "loud", tone: "loud" })],
  cross: [stroke(3, 2, 11, 10, false), stroke(3, 10, 11, 2, false)],
  whisker: [stroke(1, 6, 13, 6, false), stroke(1, 3, 1, 9, false), stroke(13, 3, 13, 9, false)],
  solid: [stroke(3, 11, 11, 1, false)],
  dashed: [stroke(3, 11, 11, 1, true)],
};

function polygon(
  corners: number,
  start: number,
  size: number,
  colors: { fill: "paper" | "ink" | "loud"; tone: "ink" | "loud" },
): Shape {
  const points = Array.from({ length: corners }, (_, index) => {
    const turn = start + (index * 2 * Math.PI) / corners;
    return [7 + size * Math.sin(turn), 6 - size * Math.cos(turn)] as const;
  });
  return { kind: "area", points, width: 0.9, ...colors };
}

function stroke(x1: number, y1: number, x2: number, y2: number, dash: boolean): Shape {
  return {
    kind: "line",
    points: [
      [x1, y1],
      [x2, y2],
    ],
    width: 1.1,
    tone: "ink",
    dash,
  };
}
