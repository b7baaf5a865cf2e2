import type { Metadata } from "next";
import Link from "next/link";
import { notFound } from "next/navigation";
import { CompanyPapers } from "#app/_components/company-papers.tsx";
import { DUE_TITLES, DueList } from "#app/_components/due-list.tsx";
import { PageHead } from "#app/_components/page-head.tsx";
import { Pages, pageFrom } from "#app/_components/pages.tsx";
import { Section } from "#app/_components/section.tsx";
import { dueNow, papersOf } from "#app/desk.ts";
import { requireUser } from "#app/session.ts";
import { today } from "#app/today.ts";
import { DUE_KINDS, type DueKind } from "#lib/domain/desk/answer.ts";

interface Asked {
  readonly params: Promise<{ readonly kind: string }>;
  readonly searchParams: Promise<{ readonly page?: string | string[] }>;
}

const MOST = 50;

export async function generateMetadata({ params }: Asked): Promise<Metadata> {
  return { title: DUE_TITLES[kindOf((await params).kind)] };
}

/** Everything of one kind, over all lines. */
export default async function DuePage({ params, searchParams }: Asked) {
  await requireUser();
  const kind = kindOf((await params).kind);
  const from = pageFrom((await searchParams).page, MOST);
  const { rows, of } = dueNow(kind, { from, most: MOST });
  const papers = papersOf(kind);
  const all = of + papers.length;
  return (
    <div className="sheet">
      <PageHead
        asked={DUE_TITLES[kind]}
        answer={all === 1 ? "1 item in all" : `${all.toLocaleString("en-US")} items in all`}
      >
        <p>
          <Link href="/">Back to the desk</Link>
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
          href={(page) => `/due/${kind}?page=${page}`}
        />
      </Section>
    </div>
  );
}

function kindOf(asked: string): DueKind {
  return DUE_KINDS.find((kind) => kind === asked) ?? notFound();
}
