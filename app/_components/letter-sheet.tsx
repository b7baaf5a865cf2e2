import { LETTER_WORDS } from "#lib/domain/paper/facts.ts";
import type { Letter, LetterBlock } from "#lib/domain/paper/letter.ts";
import type { LetterWords } from "#lib/domain/paper/words-en.ts";
import { planStrip } from "#lib/domain/strip/strip-plan.ts";
import type { Shape, StripPlan } from "#lib/domain/strip/strip-shape.ts";
import styles from "./letter-sheet.module.css";

/** A letter, or another paper with the parts of one. */
type SheetPaper = Omit<Letter, "kind">;

type BlockOf<K extends LetterBlock["kind"]> = Extract<LetterBlock, { kind: K }>;

/** Where the reader's browser finds a stored picture. */
type PictureHref = (uploadId: string) => string;

/**
 * A letter as a page: the same data as its PDF, readable by everybody, in the letter's language.
 * Without `pictureHref` the captions of its pictures stand alone. In two languages it is two sheets.
 */
export function LetterSheet({
  letter,
  pictureHref,
}: {
  readonly letter: SheetPaper;
  readonly pictureHref?: PictureHref;
}) {
  const { also } = letter;
  if (also === undefined) return <OneSheet letter={letter} pictureHref={pictureHref} />;
  const { frame } = LETTER_WORDS[also.language];
  return (
    <>
      <p className="muted small" lang={also.language}>
        {frame.alsoHere[0]}: {frame.below}.
      </p>
      <OneSheet letter={letter} pictureHref={pictureHref} />
      <OneSheet letter={also} pictureHref={pictureHref} />
    </>
  );
}

function OneSheet({
  letter,
  pictureHref,
}: {
  readonly letter: SheetPaper;
  readonly pictureHref: PictureHref | undefined;
}) {
  const words = LETTER_WORDS[letter.language];
  const [name = "", ...sender] = letter.from;
  return (
    <article className={styles["sheet"]} lang={letter.language}>
      <header className={styles["head"]}>
        <p className={styles["sender"]}>{name}</p>
        {sender.map((line) => (
          <p key={line} className={styles["senderLine"]}>
            {line}
          </p>
        ))}
      </header>
      <div className={styles["meta"]}>
        <address className={styles["to"]}>
          {letter.to.map((line) => (
            <span key={line}>{line}</span>
          ))}
        </address>
        <dl className={styles["aside"]}>
          <dt>{words.frame.date}</dt>
          <dd>{letter.date}</dd>
          <dt>{words.frame.reference}</dt>
          <dd>{letter.reference}</dd>
          {letter.answerBy !== "" && (
            <>
              <dt>{words.frame.answerBy}</dt>
              <dd>{letter.answerBy}</dd>
            </>
          )}
        </dl>
      </div>
      <h2 className={styles["subject"]}>{letter.subject}</h2>
      {letter.greeting === "" ? null : <p>{letter.greeting}</p>}
      {letter.blocks.map((block, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: the blocks of a letter never move
        <Block key={index} block={block} letter={letter} words={words} pictureHref={pictureHref} />
      ))}
      <footer className={styles["foot"]}>{letter.footer}</footer>
    </article>
  );
}

function Block({
  block,
  letter,
  words,
  pictureHref,
}: {
  readonly block: LetterBlock;
  readonly letter: SheetPaper;
  readonly words: LetterWords;
  readonly pictureHref: PictureHref | undefined;
}) {
  switch (block.kind) {
    case "paragraph":
      return <p>{block.lead === true ? <strong>{block.text}</strong> : block.text}</p>;
    case "heading":
      return <h3 className={styles["heading"]}>{block.text}</h3>;
    case "list":
      return (
        <ul className={styles["list"]}>
          {block.lines.map((line, index) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: the lines of a list never move
            <li key={index}>{line}</li>
          ))}
        </ul>
      );
    case "table":
      return <Table block={block} />;
    case "amount":
      return (
        <p className={styles["amount"]}>
          <span>{block.words}</span>
          <strong>{block.amount}</strong>
        </p>
      );
    case "caution":
      return (
        <section className={styles["caution"]}>
          <h3>{block.title}</h3>
          <p>{block.text}</p>
        </section>
      );
    case "strip":
      return <Strip block={block} words={words} />;
    case "pictures":
      return <Pictures block={block} pictureHref={pictureHref} />;
    case "signature":
      return (
        <div className={styles["signature"]}>
          <p>{letter.closing}</p>
          {block.lines.map((line) => (
            <p key={line} className={styles["signed"]}>
              {line}
            </p>
          ))}
        </div>
      );
    case "answer-slip":
      return <Slip block={block} letter={letter} words={words} />;
  }
}

/** A table of more columns stands on a phone as one block a row, each value under its heading. */
const MOST_ON_A_PHONE = 3;

function Table({ block }: { readonly block: BlockOf<"table"> }) {
  const titled = block.head.some((title) => title !== "");
  const number = (column: number) =>
    block.numeric.includes(column) ? styles["number"] : undefined;
  const stacked = block.head.length > MOST_ON_A_PHONE ? styles["stacked"] : "";
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reachable by keyboard
    <div className={styles["scroll"]} tabIndex={0}>
      <table className={`${styles["table"]} ${stacked}`}>
        {titled && (
          <thead>
            <tr>{block.head.map((title, column) => headOf(title, column, number(column)))}</tr>
          </thead>
        )}
        <tbody>
          {block.rows.map((row, index) => (
            <tr
              // biome-ignore lint/suspicious/noArrayIndexKey: the rows of a letter never move
              key={index}
              className={index >= block.rows.length - block.totals ? styles["total"] : undefined}
            >
              {row.map((text, column) =>
                cellOf(text, column, { title: block.head[column], className: number(column) }),
              )}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

/** A column whose name is empty, over the names of the rows, has nothing to head. */
function headOf(title: string, column: number, className: string | undefined) {
  if (title === "") return <td key={column} />;
  return (
    <th key={column} scope="col" className={className}>
      {title}
    </th>
  );
}

function cellOf(
  text: string,
  column: number,
  { title, className }: { title: string | undefined; className: string | undefined },
) {
  // A row without a name has nothing to head.
  if (column > 0 || text === "") {
    return (
      <td key={column} className={className} data-title={title}>
        {text}
      </td>
    );
  }
  return (
    <th key={column} scope="row" className={className}>
      {text}
    </th>
  );
}

function Pictures({
  block,
  pictureHref,
}: {
  readonly block: BlockOf<"pictures">;
  readonly pictureHref: PictureHref | undefined;
}) {
  return (
    <div className={styles["pictures"]}>
      {block.pictures.map(({ uploadId, caption, alt }) => (
        <figure key={caption}>
          {pictureHref === undefined ? null : (
            // biome-ignore lint/performance/noImgElement: a stored file, behind its own door
            <img src={pictureHref(uploadId)} alt={alt} decoding="async" />
          )}
          <figcaption>{caption}</figcaption>
        </figure>
      ))}
    </div>
  );
}

/** In points: its letters are then at least 9 px high on a screen, and on a phone. */
const WIDTH = 520;
const PHONE_WIDTH = 240;

function Strip({
  block,
  words,
}: {
  readonly block: BlockOf<"strip">;
  readonly words: LetterWords;
}) {
  const { drawing, caption } = block;
  const frame = { scale: null, from: 0, to: drawing.extent };
  const plan = planStrip(drawing, { ...frame, width: WIDTH, height: 320 });
  const narrow = planStrip(drawing, { ...frame, width: PHONE_WIDTH, height: 360 });
  const marks = [...drawing.above, ...drawing.onPipe, ...drawing.below]
    .toSorted((a, b) => a.station - b.station)
    .filter((mark) => mark.sentence !== "");
  return (
    <figure className={styles["strip"]}>
      <Plan plan={plan} className={styles["wide"]} />
      <Plan plan={narrow} className={styles["narrow"]} />
      <figcaption>{`${caption} ${words.frame.notToScale}`}</figcaption>
      <details className={styles["inWords"]}>
        <summary>{words.frame.drawnAs}</summary>
        <ul>
          {marks.map((mark) => (
            <li key={mark.id}>{mark.sentence}</li>
          ))}
        </ul>
      </details>
    </figure>
  );
}

function Plan({
  plan,
  className,
}: {
  readonly plan: StripPlan;
  readonly className: string | undefined;
}) {
  return (
    <svg viewBox={`0 0 ${plan.width} ${plan.height}`} className={className} aria-hidden="true">
      {plan.shapes.map((shape, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: the shapes of a plan never move
        <Drawn key={index} shape={shape} />
      ))}
    </svg>
  );
}

function Drawn({ shape }: { readonly shape: Shape }) {
  if (shape.kind === "words") {
    return (
      <text
        x={shape.at[0]}
        y={shape.at[1]}
        fontSize={shape.size}
        fontWeight={shape.strong ? 600 : 400}
        textAnchor={shape.anchor}
        transform={shape.upright ? `rotate(-90 ${shape.at[0]} ${shape.at[1]})` : undefined}
        className={styles[shape.tone]}
      >
        {shape.text}
      </text>
    );
  }
  const points = shape.points.map(([x, y]) => `${x.toFixed(2)},${y.toFixed(2)}`).join(" ");
  const stroke = styles[`${shape.tone}Line`];
  if (shape.kind === "area") {
    return (
      <polygon
        points={points}
        className={`${styles[shape.fill]} ${stroke}`}
        strokeWidth={shape.width}
      />
    );
  }
  return (
    <polyline
      points={points}
      fill="none"
      className={stroke}
      strokeWidth={shape.width}
      strokeDasharray={shape.dash ? "3 2.5" : undefined}
    />
  );
}

function Slip({
  block,
  letter,
  words,
}: {
  readonly block: BlockOf<"answer-slip">;
  readonly letter: SheetPaper;
  readonly words: LetterWords;
}) {
  const { frame } = words;
  return (
    <section className={styles["slip"]}>
      <p className={styles["cut"]}>{frame.slipCut}</p>
      <h3 className={styles["slipTitle"]}>{frame.slipTitle}</h3>
      {block.returnBy !== "" && <p>{frame.slipBy(block.returnBy)}</p>}
      <p className={styles["slipMeta"]}>
        {`${frame.slipAbout}: ${letter.subject}, ${letter.reference}`}
        <br />
        {`${frame.slipTo}: ${letter.from.join(", ")}`}
      </p>
      <ul className={styles["choices"]}>
        {block.choices.map((choice) => (
          <li key={choice}>{choice}</li>
        ))}
      </ul>
      <p className={styles["fields"]}>
        {[frame.slipNote, frame.slipName, frame.slipSignature, frame.slipDate, frame.slipPhone].map(
          (label) => (
            <span key={label}>{label}</span>
          ),
        )}
      </p>
    </section>
  );
}
