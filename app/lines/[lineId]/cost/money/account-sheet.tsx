import sheet from "#app/_components/letter-sheet.module.css";
import stacks from "#app/_components/stacks.module.css";
import type { LetterBlock } from "#lib/domain/paper/letter.ts";
import type { AccountPaper } from "#lib/domain/paper/paper-frame.ts";
import styles from "./money.module.css";

/** A statement as a page: the same data as its PDF, in its reader's language. */
export function AccountSheet({ paper }: { readonly paper: AccountPaper }) {
  const [name = "", ...sender] = paper.from;
  return (
    <article className={`${sheet["sheet"]} ${styles["sheet"]}`} lang={paper.language}>
      <header className={sheet["head"]}>
        <p className={sheet["sender"]}>{name}</p>
        {sender.map((line) => (
          <p key={line} className={sheet["senderLine"]}>
            {line}
          </p>
        ))}
      </header>
      <div className={sheet["meta"]}>
        <address className={sheet["to"]}>
          {paper.to.map((line) => (
            <span key={line}>{line}</span>
          ))}
        </address>
        <dl className={sheet["aside"]}>
          {paper.aside.map(([label, value]) => (
            <div key={label}>
              <dt>{label}</dt>
              <dd>{value}</dd>
            </div>
          ))}
        </dl>
      </div>
      <h2 className={sheet["subject"]}>{paper.subject}</h2>
      {paper.blocks.map((block, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: the blocks of a paper never move
        <Block key={index} block={block} />
      ))}
      <footer className={sheet["foot"]}>{paper.footer}</footer>
    </article>
  );
}

function Block({ block }: { readonly block: LetterBlock }) {
  switch (block.kind) {
    case "paragraph":
      return <p>{block.text}</p>;
    case "heading":
      return <h3 className={sheet["heading"]}>{block.text}</h3>;
    case "list":
      return (
        <ul className={sheet["list"]}>
          {block.lines.map((line) => (
            <li key={line}>{line}</li>
          ))}
        </ul>
      );
    case "amount":
      return (
        <p className={sheet["amount"]}>
          <span>{block.words}</span>
          <strong>{block.amount}</strong>
        </p>
      );
    case "table":
      return <Table block={block} />;
    default:
      return null;
  }
}

function Table({ block }: { readonly block: Extract<LetterBlock, { kind: "table" }> }) {
  const number = (column: number) =>
    block.numeric.includes(column) ? `num ${sheet["number"]}` : undefined;
  return (
    <div className={sheet["scroll"]}>
      <table className={`${sheet["table"]} ${stacks["stacks"]} ${styles["money"]}`}>
        <thead>
          <tr>
            {block.head.map((title, column) => (
              <th key={title} scope="col" className={number(column)}>
                {title}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {block.rows.map((row, index) => (
            <tr
              // biome-ignore lint/suspicious/noArrayIndexKey: the rows of a paper never move
              key={index}
              className={index >= block.rows.length - block.totals ? sheet["total"] : undefined}
            >
              {row.map((text, column) =>
                column === 0 ? (
                  // biome-ignore lint/suspicious/noArrayIndexKey: the cells of a paper never move
                  <th key={column} scope="row">
                    {text}
                  </th>
                ) : (
                  <td
                    // biome-ignore lint/suspicious/noArrayIndexKey: the cells of a paper never move
                    key={column}
                    className={number(column)}
                    data-label={block.numeric.includes(column) ? block.head[column] : undefined}
                    data-nil={text === "" ? "" : undefined}
                  >
                    {text}
                  </td>
                ),
              )}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
