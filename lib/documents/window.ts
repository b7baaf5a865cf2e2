/** Inches from the top left of an envelope or sheet, or of sides. */
export interface Envelope {
  readonly width: number;
  readonly height: number;
  readonly window: {
    readonly fromLeft: number;
    readonly fromBottom: number;
    readonly width: number;
    readonly height: number;
  };
}

/** A box on the sheet, in points of 1/72 in from its top left. */
export interface Box {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/** The usual #10 envelope with one window (4-1/8 × 9-1/2 in; window 1-1/8 × 4-1/2 in). */
export const NUMBER_TEN: Envelope = {
  width: 9.5,
  height: 4.125,
  window: { fromLeft: 0.875, fromBottom: 0.5, width: 4.5, height: 1.125 },
};

/** The usual #9 reply envelope with one window (3-7/8 × 8-7/8 in; window 1-1/8 × 4-1/2 in). */
export const NUMBER_NINE: Envelope = {
  width: 8.875,
  height: 3.875,
  window: { fromLeft: 0.875, fromBottom: 0.5, width: 4.5, height: 1.125 },
};

/** How high the part of an invoice is that is cut off and returned: it goes into a #9 unfolded. */
export const SLIP = 3.5;

/**
 * The fold of our letters: accordion (Z), at 4 and at 8 in from the top, the printed top panel
 * facing out. A third of a sheet (3-2/3 in) would slide 11/24 in up and down in a #10 envelope and
 * leave room for two lines and a half only; 4 in slides 1/8 in and leaves room for five.
 */
export const FOLD = 4;

const SHEET_WIDTH = 8.5;
const POINTS = 72;
/** USPS: the address must show with 1/8 in around it through the insert's full movement. */
const CLEARANCE = 0.125;

/** Where words stay visible in the window, with clearance, however the folded sheet has slid. */
export function visibleBox(envelope: Envelope, fold: number): Box {
  const { left, top, right, bottom } = windowAtRest(envelope);
  return inPoints({
    left: left + CLEARANCE,
    top: top + CLEARANCE,
    right: right - (envelope.width - SHEET_WIDTH) - CLEARANCE,
    bottom: bottom - (envelope.height - fold) - CLEARANCE,
  });
}

/** Everything that the window may ever show: only the address may stand here. */
export function exposedBox(envelope: Envelope, fold: number): Box {
  const { left, top, right, bottom } = windowAtRest(envelope);
  return inPoints({
    left: left - (envelope.width - SHEET_WIDTH),
    top: top - (envelope.height - fold),
    right,
    bottom,
  });
}

/** The window on the sheet when the sheet lies in the envelope's top left corner. */
function windowAtRest({ height, window }: Envelope): Box {
  const bottom = height - window.fromBottom;
  return {
    left: window.fromLeft,
    top: bottom - window.height,
    right: window.fromLeft + window.width,
    bottom,
  };
}

function inPoints({ left, top, right, bottom }: Box): Box {
  return {
    left: left * POINTS,
    top: top * POINTS,
    right: right * POINTS,
    bottom: bottom * POINTS,
  };
}
