import { Section } from "#app/_components/section.tsx";
import { LINK_REPLIES } from "#lib/domain/consent/words-en.ts";
import type { Reply } from "#lib/domain/facts/notice.ts";
import { LETTER_WORDS } from "#lib/domain/paper/facts.ts";
import type { PartProps } from "./part.ts";

/** What was said to this letter so far, with the day. */
export function Said({ view, language, words }: PartProps) {
  if (view.replies.length === 0) return null;
  const kindOf = ({ kind }: Reply) => {
    const own = LINK_REPLIES.find((each) => each === kind);
    return own === undefined ? words.saidOther : words.replies[own];
  };
  return (
    <Section title={words.saidTitle} id="said">
      <ul className="plain-list stack">
        {view.replies.map((reply, at) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: ids of the file stay in the office
          <li key={at} className="stack-tight">
            <p className="strong">
              {words.said(LETTER_WORDS[language].day(reply.receivedOn), kindOf(reply))}
            </p>
            {reply.suitsOn === null ? null : (
              <p>{words.dayLine(LETTER_WORDS[language].day(reply.suitsOn))}</p>
            )}
            {reply.words === "" ? null : <p className="prewrap">{reply.words}</p>}
            {reply.uploadId === null ? null : <p className="muted">{words.saidFile}</p>}
          </li>
        ))}
      </ul>
    </Section>
  );
}
