import { NAME } from "./plan-sheet.ts";
import type { Point, Shape, Tone } from "./strip-shape.ts";

export function northArrow(width: number): Shape[] {
  const x = width - 20;
  return [
    {
      kind: "line",
      points: [
        [x, 42],
        [x, 16],
      ],
      width: 1,
      tone: "ink",
      dash: false,
    },
    {
      kind: "area",
      points: [
        [x, 8],
        [x - 4.5, 20],
        [x + 4.5, 20],
      ],
      fill: "ink",
      tone: "ink",
      width: 0.5,
    },
    {
      kind: "words",
      at: [x - 9, 20],
      text: "N",
      size: 10,
      strong: true,
      tone: "ink",
      anchor: "end",
      upright: false,
    },
  ];
}

/** A bar of two inches, with the feet that it stands for. */
export function scaleBar({
  height,
  feetPerInch,
}: {
  height: number;
  feetPerInch: number;
}): Shape[] {
  const y = height - 8;
  const tick = (x: number): Shape => ({
    kind: "line",
    points: [
      [x, y - 4],
      [x, y + 2],
    ],
    width: 1,
    tone: "ink",
    dash: false,
  });
  const word = (x: number, text: string): Shape => ({
    kind: "words",
    at: [x, y - 7],
    text,
    size: NAME,
    strong: false,
    tone: "ink",
    anchor: "start",
    upright: false,
  });
  return [
    {
      kind: "line",
      points: [
        [4, y],
        [148, y],
      ],
      width: 1,
      tone: "ink",
      dash: false,
    },
    ...[4, 76, 148].map(tick),
    word(4, "0"),
    word(76, `${feetPerInch}`),
    word(140, `${2 * feetPerInch} ft`),
  ];
}

export function dot([x, y]: Point, radius: number, tone: Tone): Shape {
  return { kind: "area", points: circle(x, y, radius), fill: tone, tone, width: 0.5 };
}

export function ring([x, y]: Point, radius: number): Shape {
  return { kind: "area", points: circle(x, y, radius), fill: "faint", tone: "soft", width: 0.8 };
}

function circle(x: number, y: number, radius: number): Point[] {
  return Array.from({ length: 16 }, (_, step): Point => {
    const angle = (step * Math.PI) / 8;
    return [x + radius * Math.cos(angle), y + radius * Math.sin(angle)];
  });
}

export function diamond([x, y]: Point, half: number): Shape {
  return {
    kind: "area",
    points: [
      [x, y - half],
      [x + half, y],
      [x, y + half],
      [x - half, y],
    ],
    fill: "loud",
    tone: "loud",
    width: 0.5,
  };
}

export function triangle([x, y]: Point, half: number): Shape {
  return {
    kind: "area",
    points: [
      [x, y - half],
      [x + half, y + half],
      [x - half, y + half],
    ],
    fill: "paper",
    tone: "ink",
    width: 1,
  };
}

export function cross([x, y]: Point, half: number): Shape[] {
  return [
    {
      kind: "line",
      points: [
        [x - half, y - half],
        [x + half, y + half],
      ],
      width: 0.8,
      tone: "ink",
      dash: false,
    },
    {
      kind: "line",
      points: [
        [x - half, y + half],
        [x + half, y - half],
      ],
      width: 0.8,
      tone: "ink",
      dash: false,
    },
  ];
}
