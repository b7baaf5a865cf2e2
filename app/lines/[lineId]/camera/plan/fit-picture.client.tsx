"use client";

import { useEffect, useState } from "react";
import { ActionForm } from "#app/_components/action-form.client.tsx";
import { SubmitButton } from "#app/_components/button.tsx";
import { Field } from "#app/_components/field.tsx";
import type { GridRow } from "#app/_components/grid/column.ts";
import { newRowId } from "#app/_components/grid/new-id.ts";
import { Upload } from "#app/_components/upload.client.tsx";
import { type FormState, refused, textOf } from "#app/form.ts";
import type { PlanPicture } from "#lib/domain/facts/plan.ts";
import { parseFeet, plainFeet } from "#lib/domain/length/station.ts";
import { formatBearing, parseBearing } from "#lib/domain/plan/compass.ts";
import {
  FIT_POINTS,
  type Fit,
  type FitPoint,
  NO_FIT,
  nextToFit,
} from "#lib/domain/plan/tracing.ts";
import { saveRowsAction } from "../../rows-action.ts";
import { AfterDone } from "./after-done.client.tsx";
import { keepRow } from "./keep-row.ts";
import { Mark, PictureStage, type ShownPicture } from "./picture-stage.client.tsx";
import type { TraceProps } from "./trace-props.ts";

const POINT_WORDS: Record<FitPoint, string> = {
  one: "one point of a known distance",
  other: "the other point of it",
  main: "the main connection",
};
const SHORT: Record<FitPoint, string> = { one: "A", other: "B", main: "main" };

/** Lays a picture on the ground: two points so many feet apart, where the main is, and what points up. */
export function FitPicture({
  before,
  onKept,
  ...props
}: TraceProps & {
  /** A picture that is laid anew. */
  readonly before: PlanPicture | null;
  readonly onKept: (id: string) => void;
}) {
  const { lineId, uploads } = props;
  const [uploadId, setUpload] = useState(before?.uploadId ?? "");
  const loaded = usePicture(uploadId === "" ? null : `/lines/${lineId}/uploads/${uploadId}`);
  return (
    <div className="stack">
      {before !== null ? null : (
        <div className="form-grid">
          {uploads.length === 0 ? null : (
            <label className="field">
              <span className="label">A picture that is on file</span>
              <select
                className="input"
                value={uploadId}
                onChange={(event) => setUpload(event.currentTarget.value)}
              >
                <option value="">choose</option>
                {uploads.map(({ id, name }) => (
                  <option key={id} value={id}>
                    {name}
                  </option>
                ))}
                {uploadId === "" || uploads.some(({ id }) => id === uploadId) ? null : (
                  <option value={uploadId}>the one just uploaded</option>
                )}
              </select>
            </label>
          )}
          <Upload
            lineId={lineId}
            name="uploadId"
            label={uploads.length === 0 ? "Picture of the plan" : "Or a new one"}
            hint="PNG or JPEG: a scan of the plat, a site plan, an aerial"
            picture
            onStored={(stored) => setUpload(stored?.id ?? "")}
          />
        </div>
      )}
      {loaded === "broken" ? (
        <p className="mend">
          The browser can’t show this file as a picture. Choose a PNG or JPEG; of a PDF, save the
          page as a picture first.
        </p>
      ) : null}
      {loaded === null || loaded === "broken" ? null : (
        <FitForm
          key={uploadId}
          {...props}
          uploadId={uploadId}
          before={before}
          shown={loaded}
          onKept={onKept}
        />
      )}
    </div>
  );
}

function FitForm({
  lineId,
  pictures,
  picturesBase,
  uploadId,
  before,
  shown,
  onKept,
}: TraceProps & {
  readonly uploadId: string;
  readonly before: PlanPicture | null;
  readonly shown: ShownPicture;
  readonly onKept: (id: string) => void;
}) {
  const [id] = useState(() => before?.id ?? newRowId());
  const [fit, setFit] = useState<Fit>(before === null ? NO_FIT : fitOf(before));
  const [asked, setAsked] = useState<FitPoint>(nextToFit(fit) ?? "one");

  async function keep(_state: FormState, form: FormData): Promise<FormState> {
    const missing = nextToFit(fit);
    if (missing !== null) return refused(`Click ${POINT_WORDS[missing]} on the picture.`, form);
    const apart = parseFeet(textOf(form, "apart"));
    if (apart === null || apart <= 0)
      return refused("Enter the distance between A and B in feet, e.g. 50.", form, "apart");
    const up = parseBearing(textOf(form, "up"));
    if (up === null)
      return refused("Enter N, or the bearing that points up: N 35 E, or 35.", form, "up");
    const row = rowOf(fit, { id, uploadId, shown, apart, up, note: before?.note ?? "" });
    return keepRow(
      (base, rows) => saveRowsAction(lineId, "planPictures", base, rows),
      { base: picturesBase, rows: pictures as unknown as readonly GridRow[] },
      row,
      { form, words: "Picture placed." },
    );
  }

  return (
    <>
      <fieldset className="cluster">
        <legend>The next click on the picture sets</legend>
        {FIT_POINTS.map((point) => (
          <label key={point} className="check">
            <input
              type="radio"
              name="asked"
              checked={asked === point}
              onChange={() => setAsked(point)}
            />
            <span>
              {POINT_WORDS[point]} ({SHORT[point]}
              {fit[point] === null ? "" : ", set"})
            </span>
          </label>
        ))}
      </fieldset>
      <PictureStage
        picture={shown}
        label={`Picture of a plan. Click ${POINT_WORDS[asked]}.`}
        sayAt={({ x, y }) => `${x} from the left, ${y} from the top, in pixels`}
        onPress={(pixel) => {
          const next = { ...fit, [asked]: pixel };
          setFit(next);
          setAsked(nextToFit(next) ?? asked);
        }}
        onUndo={() => {
          const last = FIT_POINTS.findLast((point) => fit[point] !== null);
          if (last === undefined) return;
          setFit({ ...fit, [last]: null });
          setAsked(last);
        }}
      >
        {(unit) =>
          FIT_POINTS.map((point) => {
            const at = fit[point];
            return at === null ? null : (
              <Mark key={point} at={at} unit={unit} words={SHORT[point]} />
            );
          })
        }
      </PictureStage>
      <ActionForm action={keep} label="Position of the picture">
        <div className="form-grid">
          <Field
            label="From A to B"
            name="apart"
            defaultValue={before === null ? "" : plainFeet(before.apart)}
            unit="ft"
            width={9}
            inputMode="decimal"
            example="50"
            hint="A dimension on the plan, or its scale bar; the longer, the better"
            required
          />
          <Field
            label="Up on the picture is"
            name="up"
            defaultValue={before === null || before.up === 0 ? "N" : formatBearing(before.up)}
            width={9}
            hint="N if north is up; otherwise the bearing, e.g. N 35 E"
            required
          />
        </div>
        {before === null ? null : (
          <p className="muted small">Shapes that were traced before stay where they are.</p>
        )}
        <div>
          <SubmitButton pendingWord="Saving …">Save and trace</SubmitButton>
        </div>
        <AfterDone then={() => onKept(id)} />
      </ActionForm>
    </>
  );
}

function fitOf(picture: PlanPicture): Fit {
  const { oneX, oneY, otherX, otherY, mainX, mainY } = picture;
  return {
    one: { x: oneX, y: oneY },
    other: { x: otherX, y: otherY },
    main: { x: mainX, y: mainY },
  };
}

function rowOf(
  { one, other, main }: Fit,
  {
    shown,
    ...rest
  }: Pick<PlanPicture, "id" | "uploadId" | "apart" | "up" | "note"> & {
    readonly shown: ShownPicture;
  },
): GridRow {
  return {
    ...rest,
    width: shown.width,
    height: shown.height,
    oneX: one?.x,
    oneY: one?.y,
    otherX: other?.x,
    otherY: other?.y,
    mainX: main?.x,
    mainY: main?.y,
  };
}

/** A picture with its own size, once the browser has it; null until then. */
function usePicture(src: string | null): ShownPicture | "broken" | null {
  const [loaded, setLoaded] = useState<{ src: string; shown: ShownPicture | "broken" } | null>(
    null,
  );
  useEffect(() => {
    if (src === null) return;
    const image = new Image();
    image.onload = () => {
      const { naturalWidth: width, naturalHeight: height } = image;
      setLoaded({ src, shown: width > 0 && height > 0 ? { src, width, height } : "broken" });
    };
    image.onerror = () => setLoaded({ src, shown: "broken" });
    image.src = src;
    return () => {
      image.onload = null;
      image.onerror = null;
    };
  }, [src]);
  return loaded?.src === src ? loaded.shown : null;
}
