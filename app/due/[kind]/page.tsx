import type { Metadata } from "next";
import Link from "next/link";
import { notFound } from "next/navigation";
import { CompanyPapers } from "#app/_components/company-papers.tsx";
import { DUE_TITLES, DueList } from "#app/_components/due-list.tsx";
import { type AskedWords, narrowedWords, oneOfEach } from "#app/_components/narrow.tsx";
import { PageHead } from "#app/_components/page-head.tsx";
import { Pages, pageFrom } from "#app/_components/pages.tsx";
import { Section } from "#app/_components/section.tsx";
import { dueNow, papersOf } from "#app/desk.ts";
import { requireUser } from "#app/session.ts";
import { today } from "#app/today.ts";
import { DUE_KINDS, type DueKind } from "#lib/domain/desk/answer.ts";
import { isNarrowed, narrowedAddress, narrowingOf } from "#lib/domain/desk/narrowing.ts";

interface Asked {
  readonly params: Promise<{ readonly kind: string }>;
  readonly searchParams: Promise<AskedWords & { readonly page?: string | string[] }>;
}

const MOST = 50;

export async function generateMetadata({ params }: Asked): Promise<Metadata> {
  return { title: DUE_TITLES[kindOf((await params).kind)] };
}

/** Everything of one kind, over all lines. */
export default async function DuePage({ params, searchParams }: Asked) {
  const user = await requireUser();
  const kind = kindOf((await params).kind);
  const { page, ...rest } = await searchParams;
  const asked = oneOfEach(rest);
  const narrowing = narrowingOf(asked, { userId: user.id, today: today() });
  const from = pageFrom(page, MOST);
  const { rows, of } = dueNow(kind, { from, most: MOST, narrowing });
  const papers = isNarrowed(narrowing) ? [] : papersOf(kind);
  const all = of + papers.length;
  const where = isNarrowed(narrowing) ? narrowedWords(asked) : "in all";
  return (
    <div className="sheet">
      <PageHead
        asked={DUE_TITLES[kind]}
        answer={all === 1 ? `1 item ${where}` : `${all.toLocaleString("en-US")} items ${where}`}
      >
        <p>
          <Link href={narrowedAddress("/", asked)}>Back to the desk</Link>
        </p>
      </PageHead>
      <Section title="By date">
        {from === 0 ? <CompanyPapers papers={papers} day={today()} /> : null}
        <DueList things={rows} day={today()} />
        <Pages
          from={from}
          most={MOST}
          of={of}
          what="items"
          href={(number) => narrowedAddress(`/due/${kind}`, asked, { page: String(number) })}
        />
      </Section>
    </div>
  );
}

function kindOf(asked: string): DueKind {
  return DUE_KINDS.find((kind) => kind === asked) ?? notFound();
}
