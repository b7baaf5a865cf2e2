import Link from "next/link";
import { PageHead } from "#app/_components/page-head.tsx";

export default function NotFound() {
  return (
    <div className="sheet sheet-narrow">
      <PageHead asked="There is no such page" />
      <p>
        The address may be mistyped, or what it led to is no longer in the file. Nothing was
        changed.
      </p>
      <p>
        <Link href="/">To the desk</Link>, or <Link href="/search">search</Link> for an address, a
        person or a permit number.
      </p>
    </div>
  );
}
