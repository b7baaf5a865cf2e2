"use client";

import { useState } from "react";
import { ActionForm } from "#app/_components/action-form.client.tsx";
import { SubmitButton } from "#app/_components/button.tsx";
import { Field } from "#app/_components/field.tsx";
import type { GridRow } from "#app/_components/grid/column.ts";
import { newRowId } from "#app/_components/grid/new-id.ts";
import { type FormState, refused, textOf } from "#app/form.ts";
import type { PlanPicture, PlanShape, ShapeKind, Spot } from "#lib/domain/facts/plan.ts";
import { SHAPE_KINDS } from "#lib/domain/facts/plan.ts";
import { cornersOf } from "#lib/domain/plan/outline.ts";
import { type Pixel, pictureScale, pixelOfSpot, spotOfPixel } from "#lib/domain/plan/picture.ts";
import { fewestCorners, spotWords, tracedOutline, withCorner } from "#lib/domain/plan/tracing.ts";
import { sayCount } from "#lib/domain/say/count.ts";
import { saveRowsAction } from "../../rows-action.ts";
import { optionsOf } from "../../terms.ts";
import { AfterDone } from "./after-done.client.tsx";
import { SHAPE_WORDS } from "./columns.ts";
import { dropRow, keepRow } from "./keep-row.ts";
import { PictureStage } from "./picture-stage.client.tsx";
import styles from "./trace.module.css";
import type { TraceProps } from "./trace-props.ts";

/** Corners pressed over a picture become a shape of the plan. */
export function TraceShape({
  lineId,
  picture,
  uploads,
  shapes,
  shapesBase,
  properties,
  line,
  pictures,
  picturesBase,
  onRefit,
  onDropped,
}: TraceProps & {
  readonly picture: PlanPicture;
  readonly onRefit: () => void;
  readonly onDropped: () => void;
}) {
  const [kind, setKind] = useState<ShapeKind>("building");
  const [corners, setCorners] = useState<readonly Pixel[]>([]);
  const outline = tracedOutline(picture, corners);
  const upload = uploads.find(({ id }) => id === picture.uploadId);
  const undo = () => setCorners(corners.slice(0, -1));
  const sayAt = (pixel: Pixel) => {
    const spot = spotOfPixel(picture, pixel);
    return spot === null ? "" : spotWords(spot);
  };

  async function keep(_state: FormState, form: FormData): Promise<FormState> {
    const fewest = fewestCorners(kind);
    if (corners.length < fewest)
      return refused(
        `Click at least ${sayCount(fewest, "corner")} of the ${SHAPE_WORDS[kind]}.`,
        form,
      );
    const propertyId = textOf(form, "propertyId");
    const row: GridRow = {
      id: newRowId(),
      kind,
      name: textOf(form, "name"),
      propertyId: propertyId === "" ? null : propertyId,
      outline,
      note: upload === undefined ? "" : `Traced over ${upload.name}`,
    };
    return keepRow(
      (base, rows) => saveRowsAction(lineId, "planShapes", base, rows),
      { base: shapesBase, rows: shapes as unknown as readonly GridRow[] },
      row,
      { form, words: "The shape was added to the plan and to the table below." },
    );
  }

  function drop(_state: FormState, form: FormData): Promise<FormState> {
    return dropRow(
      (base, rows) => saveRowsAction(lineId, "planPictures", base, rows),
      { base: picturesBase, rows: pictures as unknown as readonly GridRow[] },
      picture.id,
      { form, words: "Picture removed from the plan." },
    );
  }

  return (
    <>
      <label className="field">
        <span className="label">Trace a</span>
        <select
          className="input"
          value={kind}
          onChange={(event) =>
            setKind(SHAPE_KINDS.find((each) => each === event.currentTarget.value) ?? kind)
          }
        >
          {optionsOf(SHAPE_WORDS).map(({ value, label }) => (
            <option key={value} value={value}>
              {label}
            </option>
          ))}
        </select>
      </label>
      <PictureStage
        picture={{
          src: `/lines/${lineId}/uploads/${picture.uploadId}`,
          width: picture.width,
          height: picture.height,
        }}
        label={`Picture of a plan. Click the corners of the ${SHAPE_WORDS[kind]} one after the other.`}
        sayAt={sayAt}
        onPress={(pixel) => setCorners(withCorner(corners, pixel))}
        onUndo={undo}
      >
        {(unit) => (
          <>
            <Beneath picture={picture} shapes={shapes} line={line} />
            <Pressed corners={corners} closed={kind === "building"} unit={unit} />
          </>
        )}
      </PictureStage>
      <p className="muted small">
        {pixelWords(picture)} Dashed blue: already on the plan.{" "}
        {line === null
          ? "The line is not drawn: its bearing is unknown."
          : "Dashed red: the line by its bearing and bends. If the picture shows the line elsewhere, one of the two is wrong."}
      </p>
      <ActionForm
        action={drop}
        className="cluster"
        label="The picture"
        confirm="Remove the picture from the plan? The file and the traced shapes stay."
      >
        <button type="button" className="link-button" onClick={onRefit}>
          Lay the picture anew
        </button>
        <button type="submit" className="link-button">
          Remove it from the plan
        </button>
        <AfterDone then={onDropped} />
      </ActionForm>
      <ActionForm action={keep} reset label="The traced shape">
        <div role="status" className="stack-tight">
          <p>
            {corners.length === 0
              ? "No corners yet."
              : `${sayCount(corners.length, "corner")}; the last one ${lastWords(corners, sayAt)}.`}
          </p>
        </div>
        <div className="cluster">
          <button type="button" className="button" disabled={corners.length === 0} onClick={undo}>
            Undo last corner
          </button>
          <button
            type="button"
            className="link-button"
            disabled={corners.length === 0}
            onClick={() => setCorners([])}
          >
            Start over
          </button>
        </div>
        <div className="form-grid">
          <Field label="Name" name="name" hint="Printed on the drawing" example="Garage" />
          <label className="field">
            <span className="label">Property</span>
            <select className="input" name="propertyId" defaultValue="">
              <option value="">–</option>
              {properties.map(({ value, label }) => (
                <option key={value} value={value}>
                  {label}
                </option>
              ))}
            </select>
          </label>
        </div>
        <div>
          <SubmitButton pendingWord="Saving …">Save the shape</SubmitButton>
        </div>
        <AfterDone then={() => setCorners([])} />
      </ActionForm>
    </>
  );
}

function lastWords(corners: readonly Pixel[], sayAt: (pixel: Pixel) => string): string {
  const last = corners.at(-1);
  return last === undefined ? "" : sayAt(last);
}

/** How fine a press can be. */
function pixelWords(picture: PlanPicture): string {
  const scale = pictureScale(picture);
  if (scale === null) return "";
  return `One pixel of the picture is ${Number((scale / 100).toPrecision(2))} ft.`;
}

/** What is known already, as it lies on the picture. */
function Beneath({
  picture,
  shapes,
  line,
}: {
  readonly picture: PlanPicture;
  readonly shapes: readonly PlanShape[];
  readonly line: readonly Spot[] | null;
}) {
  const on = (spots: readonly Spot[]) =>
    pointsOf(spots.flatMap((s) => pixelOfSpot(picture, s) ?? []));
  return (
    <>
      {shapes.map(({ id, kind, outline }) =>
        kind === "building" ? (
          <polygon key={id} className={styles["there"]} points={on(cornersOf(outline))} />
        ) : (
          <polyline key={id} className={styles["there"]} points={on(cornersOf(outline))} />
        ),
      )}
      {line === null ? null : <polyline className={styles["line"]} points={on(line)} />}
    </>
  );
}

function Pressed({
  corners,
  closed,
  unit,
}: {
  readonly corners: readonly Pixel[];
  readonly closed: boolean;
  readonly unit: number;
}) {
  const points = pointsOf(corners);
  return (
    <>
      {closed ? (
        <polygon className={styles["pressed"]} points={points} />
      ) : (
        <polyline className={`${styles["pressed"]} ${styles["open"]}`} points={points} />
      )}
      {corners.map(({ x, y }, index) => (
        <circle
          // biome-ignore lint/suspicious/noArrayIndexKey: a corner is its place in the row
          key={index}
          className={styles["mark"]}
          cx={x}
          cy={y}
          r={3.5 * unit}
        />
      ))}
    </>
  );
}

function pointsOf(pixels: readonly Pixel[]): string {
  return pixels.map(({ x, y }) => `${x},${y}`).join(" ");
}
