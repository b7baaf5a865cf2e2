/** Stands for the site itself: only a path is wanted of what is read. */
const HERE = "http://own.invalid";

/**
 * A page of this program as a path, to go there after signing in; the desk for everything that leads
 * elsewhere or back to the sign-in. The mark of a page's own data request is taken off.
 */
export function ownPath(asked: string): string {
  if (!/^\/(?![/\\])/.test(asked) || !URL.canParse(asked, HERE)) return "/";
  const url = new URL(asked, HERE);
  if (url.origin !== HERE || /^\/(sign-in|setup)(\/|$)/.test(url.pathname)) return "/";
  url.searchParams.delete("_rsc");
  return `${url.pathname}${url.search}`;
}
