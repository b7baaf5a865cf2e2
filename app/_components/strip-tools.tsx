import type { StripSize } from "#lib/domain/strip/measures.ts";
import styles from "./strip.module.css";

/** How large the drawing is, and how close it is looked at. */
export function StripTools({
  size,
  zoom,
  onZoom,
  onResize,
  onFold,
}: {
  readonly size: StripSize;
  readonly zoom: number;
  readonly onZoom: (zoom: number) => void;
  /** Where the page lets its reader choose the size. */
  readonly onResize: ((size: StripSize) => void) | undefined;
  /** Where the page opens with a slim drawing. */
  readonly onFold: (() => void) | undefined;
}) {
  return (
    <div className={styles["tools"]}>
      {onFold === undefined ? null : (
        <button type="button" className="link-button" onClick={onFold}>
          Fold
        </button>
      )}
      {onResize === undefined ? null : (
        <button
          type="button"
          className="link-button"
          onClick={() => onResize(size === "small" ? "large" : "small")}
        >
          {size === "small" ? "Taller" : "Shorter"}
        </button>
      )}
      <button type="button" className="link-button" onClick={() => onZoom(zoom * 1.6)}>
        Zoom in
      </button>
      <button
        type="button"
        className="link-button"
        disabled={zoom === 1}
        onClick={() => onZoom(zoom / 1.6)}
      >
        Zoom out
      </button>
      <button type="button" className="link-button" disabled={zoom === 1} onClick={() => onZoom(1)}>
        Whole line
      </button>
    </div>
  );
}
