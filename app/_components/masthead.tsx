import Link from "next/link";
import { signOutAction } from "#app/sign-in/actions.ts";
import type { User } from "#lib/domain/facts/user.ts";
import styles from "./masthead.module.css";
import { USER_ROLE_WORDS } from "./words.ts";

/** The head of every page: where you are, the search, who you are; on a phone one line of links. */
export function Masthead({ user }: { readonly user: User | null }) {
  return (
    <header className={styles["masthead"]}>
      <Link href="/" className={styles["name"]} aria-label="Wyebook">
        <Wye />
        <span className={user === null ? undefined : styles["wide"]}>Wyebook</span>
      </Link>
      {user === null ? null : <SignedIn user={user} />}
    </header>
  );
}

function SignedIn({ user }: { readonly user: User }) {
  return (
    <>
      <nav aria-label="Office" className={styles["nav"]}>
        <Link href="/">Desk</Link>
        <Link href="/lines">Lines</Link>
        <Link href="/office">Office</Link>
        <Link href="/search" className={styles["narrow"]}>
          Search
        </Link>
        <Link href="/account" className={styles["narrow"]}>
          Account
        </Link>
      </nav>
      <search className={styles["search"]}>
        <form action="/search">
          <label className="hidden" htmlFor="masthead-search">
            Search addresses, people and permit numbers
          </label>
          <input
            id="masthead-search"
            className="input"
            type="search"
            name="for"
            placeholder="Address, person, permit number"
          />
        </form>
      </search>
      <form action={signOutAction} className={styles["user"]}>
        <span>
          <Link href="/account">{user.name}</Link>{" "}
          <span className="muted">({USER_ROLE_WORDS[user.role]})</span>
        </span>
        <button type="submit" className="link-button">
          Sign out
        </button>
      </form>
    </>
  );
}

/** A pipe, and a branch that joins it. */
function Wye() {
  return (
    <svg viewBox="0 0 34 20" width="34" height="20" aria-hidden="true">
      <g fill="none" stroke="currentColor" strokeWidth="1.6">
        <path d="M1 12.5H15L22 2.5M27 2.5 20.5 12.5H33M1 18.5H33" />
      </g>
    </svg>
  );
}
