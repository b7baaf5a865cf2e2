import type { ReactNode } from "react";

/** The head of a page that answers a question: what is asked, what is so, what would close it. */
export function PageHead({
  asked,
  answer,
  closes = null,
  children,
}: {
  readonly asked: string;
  readonly answer?: string;
  readonly closes?: ReactNode;
  readonly children?: ReactNode;
}) {
  return (
    <div className="page-head">
      <h1 className={answer === undefined ? "display" : "page-asked"}>{asked}</h1>
      {answer === undefined ? null : <p className="display">{headline(answer)}</p>}
      {closes === null ? null : (
        <p className="page-closes">
          <span className="muted">To do: </span>
          {closes}
        </p>
      )}
      {children}
    </div>
  );
}

/** One sentence as a headline, without its period; several keep theirs. */
function headline(answer: string): string {
  return /[.?!]\s/.test(answer) ? answer : answer.replace(/\.$/, "");
}
