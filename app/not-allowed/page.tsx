import type { Metadata } from "next";
import Link from "next/link";
import { PageHead } from "#app/_components/page-head.tsx";
import { USER_ROLE_WORDS } from "#app/_components/words.ts";
import { requireUser } from "#app/session.ts";

export const metadata: Metadata = { title: "Not for your role" };

export default async function NotAllowedPage() {
  const user = await requireUser();
  return (
    <div className="sheet sheet-narrow">
      <PageHead asked="Your role does not include this" />
      <p>
        You are signed in as {user.name}, with the role “{USER_ROLE_WORDS[user.role]}”. An admin of
        the office can do this for you, or change your role under Office.
      </p>
      <p>
        <Link href="/">Back to the desk</Link>
      </p>
    </div>
  );
}
