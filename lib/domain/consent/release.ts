import type { LineFile } from "../facts/line-file.ts";
import type { Notice, Reply } from "../facts/notice.ts";
import { isDealtWith } from "../party/reply.ts";

/**
 * The reader's request to be let go from a promise to pay that binds already, while nobody of the
 * office has answered it; null where there is none.
 */
export function openRelease(
  { replies }: Pick<LineFile, "replies">,
  { id }: Pick<Notice, "id">,
): Reply | null {
  const asked = replies.filter(
    (reply) => reply.noticeId === id && reply.kind === "asks-release" && !isDealtWith(reply),
  );
  return asked.at(-1) ?? null;
}
