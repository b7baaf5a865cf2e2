import { Image, Text, View } from "@react-pdf/renderer";
import { planStrip } from "#lib/domain/strip/strip-plan.ts";
import { type BlockManner, type BlockOf, spaced, styles } from "./block-manner.ts";
import type { PrintPicture } from "./pictures.ts";
import { StripSvg } from "./strip-svg.tsx";

export function StripBlock({
  block,
  manner,
}: {
  readonly block: BlockOf<"strip">;
  readonly manner: BlockManner;
}) {
  const { drawing, caption } = block;
  const plan = planStrip(drawing, {
    width: manner.width,
    scale: null,
    from: 0,
    to: drawing.extent,
    height: manner.stripHeight ?? 250,
  });
  return (
    <View style={spaced(manner, { marginTop: 6, marginBottom: 10 })} wrap={false}>
      <StripSvg plan={plan} />
      <Text style={styles.caption}>{`${caption} ${manner.stripNote}`}</Text>
    </View>
  );
}

const PICTURE_GAP = 14;

/** Stills are for recognizing, not for show: at most this wide and high, in points. */
const PICTURE_WIDTH = 230;

const PICTURE_HEIGHT = 150;

/** Two beside each other; a pair is not parted by a page's end. */
export function Pictures({
  block,
  manner,
}: {
  readonly block: BlockOf<"pictures">;
  readonly manner: BlockManner;
}) {
  const width = Math.min(PICTURE_WIDTH, (manner.width - PICTURE_GAP) / 2);
  const { pictures } = block;
  const pairs = pictures.flatMap((_, at) => (at % 2 === 0 ? [pictures.slice(at, at + 2)] : []));
  return pairs.map((pair) => (
    <View key={pair[0]?.caption ?? ""} style={styles.pictures} wrap={false}>
      {pair.map(({ uploadId, caption }) => (
        <View key={caption} style={{ width, marginRight: PICTURE_GAP }}>
          <Still picture={manner.pictures?.get(uploadId)} width={width} />
          <Text style={styles.caption}>{caption}</Text>
        </View>
      ))}
    </View>
  ));
}

function Still({
  picture,
  width,
}: {
  readonly picture: PrintPicture | undefined;
  readonly width: number;
}) {
  if (picture === undefined) return null;
  const scale = Math.min(width / picture.width, PICTURE_HEIGHT / picture.height);
  const size = { width: picture.width * scale, height: picture.height * scale };
  return <Image src={{ data: picture.jpeg, format: "jpg" }} style={size} />;
}
