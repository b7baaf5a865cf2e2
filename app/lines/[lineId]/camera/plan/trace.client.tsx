"use client";

import { useState } from "react";
import { useLive } from "#app/_components/use-live.ts";
import { FitPicture } from "./fit-picture.client.tsx";
import type { TraceProps } from "./trace-props.ts";
import { TraceShape } from "./trace-shape.client.tsx";

/** A picture by its id, to trace over; or one that is being laid on the ground, new where `id` is null. */
type Desk =
  | { readonly at: "trace"; readonly id: string }
  | { readonly at: "fit"; readonly id: string | null };

/** Streets, lot lines and buildings, pressed on the picture of a plan instead of being typed. */
export function Trace(props: TraceProps) {
  const { pictures } = props;
  const [desk, setDesk] = useState<Desk | null>(null);
  if (!useLive())
    return (
      <p className="muted">
        Clicking corners needs the page’s scripts. Without them, type the corners below.
      </p>
    );
  const last = pictures.at(-1);
  const now = desk ?? (last === undefined ? { at: "fit", id: null } : { at: "trace", id: last.id });
  const picture = pictures.find(({ id }) => id === now.id);
  return (
    <div className="stack">
      {last === undefined ? null : (
        <PictureChoice
          {...props}
          chosen={now.at === "fit" && now.id === null ? "" : (picture?.id ?? "")}
          onChoose={(id) => setDesk(id === "" ? { at: "fit", id: null } : { at: "trace", id })}
        />
      )}
      {now.at === "trace" && picture !== undefined ? (
        <TraceShape
          key={picture.id}
          {...props}
          picture={picture}
          onRefit={() => setDesk({ at: "fit", id: picture.id })}
          onDropped={() => setDesk(null)}
        />
      ) : (
        <FitPicture
          key={now.id ?? "new"}
          {...props}
          before={picture ?? null}
          onKept={(id) => setDesk({ at: "trace", id })}
        />
      )}
    </div>
  );
}

function PictureChoice({
  pictures,
  uploads,
  chosen,
  onChoose,
}: TraceProps & { readonly chosen: string; readonly onChoose: (id: string) => void }) {
  return (
    <label className="field">
      <span className="label">Picture</span>
      <select
        className="input"
        value={chosen}
        onChange={(event) => onChoose(event.currentTarget.value)}
      >
        {pictures.map(({ id, uploadId }) => (
          <option key={id} value={id}>
            {uploads.find((each) => each.id === uploadId)?.name ?? "picture"}
          </option>
        ))}
        <option value="">another picture</option>
      </select>
    </label>
  );
}
