"use client";

import { useEffect, useRef, useState } from "react";
import { Document, Page, pdfjs } from "react-pdf";
import "react-pdf/dist/Page/AnnotationLayer.css";
import "react-pdf/dist/Page/TextLayer.css";
import styles from "./paper-pages.module.css";

pdfjs.GlobalWorkerOptions.workerSrc = new URL(
  "pdfjs-dist/build/pdf.worker.min.mjs",
  import.meta.url,
).toString();

/** A page is no use wider than paper on a desk. */
const WIDEST = 880;

/** US Letter, until a page has told its own size. */
const TALL = 11 / 8.5;

/** All pages of a PDF below each other, as wide as there is room; drawn as they come into view. */
export function PaperPages({ address, name }: { readonly address: string; readonly name: string }) {
  const [pages, setPages] = useState(0);
  const [width, setWidth] = useState<number | null>(null);
  const frame = useRef<HTMLElement>(null);

  useEffect(() => {
    const element = frame.current;
    if (element === null) return;
    const watch = new ResizeObserver(() => setWidth(Math.min(element.clientWidth, WIDEST)));
    watch.observe(element);
    return () => watch.disconnect();
  }, []);

  return (
    <section ref={frame} aria-label={name} className={styles["frame"]}>
      {width === null ? null : (
        <Document
          file={address}
          onLoadSuccess={({ numPages }) => setPages(numPages)}
          loading={<p>Opening the document…</p>}
          error={
            <p className="mend">
              This document can’t be shown here. Download it and open it in your PDF reader.
            </p>
          }
        >
          {Array.from({ length: pages }, (_, at) => at + 1).map((number) => (
            <Sheet key={number} number={number} of={pages} width={width} />
          ))}
        </Document>
      )}
    </section>
  );
}

function Sheet({
  number,
  of,
  width,
}: {
  readonly number: number;
  readonly of: number;
  readonly width: number;
}) {
  const [near, setNear] = useState(false);
  const [shape, setShape] = useState(TALL);
  const sheet = useRef<HTMLDivElement>(null);

  useEffect(() => {
    const element = sheet.current;
    if (element === null) return;
    const watch = new IntersectionObserver(
      (seen) => {
        if (seen.some((each) => each.isIntersecting)) setNear(true);
      },
      { rootMargin: "600px" },
    );
    watch.observe(element);
    return () => watch.disconnect();
  }, []);

  return (
    <figure className={styles["sheet"]}>
      <div ref={sheet} className={styles["page"]} style={{ width, minHeight: width * shape }}>
        {near ? (
          <Page
            pageNumber={number}
            width={width}
            onLoadSuccess={(page) => setShape(page.originalHeight / page.originalWidth)}
          />
        ) : null}
      </div>
      <figcaption className="muted small">
        Page {number} of {of}
      </figcaption>
    </figure>
  );
}
