"use client";

import { type PointerEvent, useEffect, useRef, useState } from "react";
import { Document, Page, pdfjs } from "react-pdf";
import type { FormPage, FormPlace } from "#lib/domain/facts/form.ts";
import { inches } from "#lib/domain/form/field-title.ts";
import { DrawnBox, nameTheBox, useBoxDrawing } from "./box-drawing.client.tsx";
import styles from "./form-page.module.css";

pdfjs.GlobalWorkerOptions.workerSrc = new URL(
  "pdfjs-dist/build/pdf.worker.min.mjs",
  import.meta.url,
).toString();

interface PictureProps {
  /** Where the blank form is. */
  readonly address: string;
  readonly pages: readonly FormPage[];
  /** Every field with its number as the tables have it. */
  readonly marks: readonly { readonly number: number; readonly places: readonly FormPlace[] }[];
  /** Boxes are drawn on it; their numbers go into the form that places them. */
  readonly draws?: boolean;
}

const NO_PAGE: FormPage = { width: 0, height: 0 };

/** A page is no use wider than this beside the tables. */
const WIDEST = 720;

/** One page of a blank form with its fields numbered; a press tells where it was, in inches. */
export function FormPicture({ address, pages, marks, draws = false }: PictureProps) {
  const [shown, setShown] = useState(1);
  const [pressed, setPressed] = useState("");
  const [width, setWidth] = useState<number | null>(null);
  const frame = useRef<HTMLDivElement>(null);
  useEffect(() => {
    const element = frame.current;
    if (element === null) return;
    const watch = new ResizeObserver(() => setWidth(element.clientWidth));
    watch.observe(element);
    return () => watch.disconnect();
  }, []);
  const size = pages[shown - 1];
  const drawing = useBoxDrawing(size ?? NO_PAGE, shown);
  if (size === undefined) return null;
  const part = (points: number, whole: number) => `${(points / whole) * 100}%`;

  function turnTo(page: number) {
    drawing.clear();
    setShown(page);
  }

  function press(event: PointerEvent<HTMLElement>) {
    if (size === undefined) return;
    const box = event.currentTarget.getBoundingClientRect();
    const left = ((event.clientX - box.left) / box.width) * size.width;
    const top = ((event.clientY - box.top) / box.height) * size.height;
    setPressed(
      `Page ${shown}: ${inches(left)} in from the left, ${inches(top)} in from the top of the page.`,
    );
  }

  return (
    <div className="stack-tight">
      {pages.length > 1 ? (
        <div className="cluster">
          <button
            type="button"
            className="button"
            aria-disabled={shown === 1}
            onClick={() => turnTo(Math.max(1, shown - 1))}
          >
            Previous page
          </button>
          <span>
            Page {shown} of {pages.length}
          </span>
          <button
            type="button"
            className="button"
            aria-disabled={shown === pages.length}
            onClick={() => turnTo(Math.min(pages.length, shown + 1))}
          >
            Next page
          </button>
        </div>
      ) : null}
      {draws ? (
        <div className="cluster">
          <button type="button" className="button" onClick={drawing.begin}>
            New box
          </button>
          <span className="muted small">
            Or draw one on the page. Drag it, or move it by arrow keys; with Shift they change its
            size.
          </span>
        </div>
      ) : null}
      <div
        ref={frame}
        className={styles["page"]}
        style={{ maxWidth: WIDEST }}
        onPointerDown={(event) => {
          press(event);
          if (draws) drawing.press(event);
        }}
        {...(draws
          ? {
              onPointerMove: drawing.move,
              onPointerUp: drawing.release,
              onPointerCancel: drawing.release,
            }
          : {})}
      >
        <Document
          file={address}
          loading={<p>Opening the form …</p>}
          error={<p className="mend">This form can’t be shown here. Open the PDF instead.</p>}
        >
          {width === null ? null : (
            <Page
              pageNumber={shown}
              width={width}
              renderTextLayer={false}
              renderAnnotationLayer={false}
            />
          )}
        </Document>
        {marks.flatMap(({ number, places }) =>
          places
            .filter(({ page }) => page === shown)
            .map(({ left, top, width, height }) => (
              <span
                key={`${number} ${left} ${top}`}
                className={styles["mark"]}
                style={{
                  left: part(left, size.width),
                  top: part(top, size.height),
                  width: part(width, size.width),
                  height: part(height, size.height),
                }}
              >
                {number}
              </span>
            )),
        )}
        {drawing.box === null ? null : (
          <DrawnBox box={drawing.box} size={size} onKeyDown={drawing.keys} />
        )}
      </div>
      {drawing.box === null ? null : (
        <div>
          <button type="button" className="button" onClick={nameTheBox}>
            Name this box
          </button>
        </div>
      )}
      <p role="status" className="muted small">
        {pressed === "" ? "Press anywhere on the page to read the place in inches." : pressed}
      </p>
    </div>
  );
}
