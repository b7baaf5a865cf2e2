"use client";

import {
  type KeyboardEvent,
  type RefObject,
  useCallback,
  useEffect,
  useRef,
  useState,
} from "react";
import { ActionForm } from "#app/_components/action-form.client.tsx";
import { SubmitButton } from "#app/_components/button.tsx";
import { formatBytes } from "#app/_components/bytes.ts";
import type { GridRemote } from "#app/_components/grid/grid-box.client.tsx";
import { useSelection } from "#app/_components/selection.client.tsx";
import { type HearSaved, useSentRows } from "#app/_components/use-sent-rows.ts";
import type { Anchor, Observation, ObservationKind, Run } from "#lib/domain/facts/run.ts";
import { OBSERVATION_WORDS } from "#lib/domain/facts/run-words.ts";
import type { Video } from "#lib/domain/facts/video.ts";
import { counterAt } from "#lib/domain/run/between.ts";
import { capital } from "#lib/domain/say/capital.ts";
import { err, ok } from "#lib/result.ts";
import { grabStill } from "./grab-still.ts";
import { ObservationsGrid } from "./observations-grid.client.tsx";
import styles from "./video.module.css";
import { removeVideoAction, setPictureAction } from "./video-actions.ts";
import { clockWords } from "./video-keys.ts";
import { VideoPlayer } from "./video-player.client.tsx";
import { VideoUpload } from "./video-upload.client.tsx";

interface RunLogProps {
  readonly lineId: string;
  readonly run: Run;
  /** Those of this run. */
  readonly anchors: readonly Anchor[];
  readonly base: number;
  readonly rows: readonly Observation[];
  readonly unsent: number;
  /** `rows` are the whole table. */
  readonly whole: boolean;
  readonly readOnly: boolean;
  readonly video: Video | null;
  /** Whether the recording's bytes are in this office's store. */
  readonly present: boolean;
}

/** What one run saw, beside its recording where it has one. */
export function RunLog({ video, present, ...props }: RunLogProps) {
  const grid = useRef<GridRemote>(null);
  const sent = useSentRows({ of: "observations", ...props });
  // Rows of this table, here or with the page.
  const log = { ...props, ...sent, rows: sent.rows as readonly Observation[] };
  if (video === null || !present) {
    return (
      <>
        <WithoutVideo video={video} {...log} />
        <ObservationsGrid {...log} remote={grid} />
      </>
    );
  }
  return <WithVideo video={video} grid={grid} {...log} />;
}

type LogProps = Omit<RunLogProps, "video" | "present"> & { readonly hear: HearSaved };

function WithoutVideo({ video, lineId, run, readOnly }: LogProps & { video: Video | null }) {
  const url = videoUrl(lineId, run);
  if (video === null) {
    if (readOnly) return null;
    return (
      <details className="screen-only">
        <summary>Add the video of {run.name}</summary>
        <VideoUpload url={url} label="Video file" />
      </details>
    );
  }
  return (
    <div className="box screen-only stack-tight">
      <p className="box-title">The video of {run.name} is not stored here</p>
      <p>
        {`The line file lists it (${video.name}, ${formatBytes(video.bytes)}) but does not include the video.`}
      </p>
      {readOnly ? null : (
        <>
          <VideoUpload url={url} label="Upload it again" />
          <RemoveVideo lineId={lineId} run={run} video={video} />
        </>
      )}
    </div>
  );
}

function videoUrl(lineId: string, run: Run): string {
  return `/lines/${encodeURIComponent(lineId)}/runs/${encodeURIComponent(run.id)}/video`;
}

function RemoveVideo({
  lineId,
  run,
  video,
}: {
  readonly lineId: string;
  readonly run: Run;
  readonly video: Video;
}) {
  return (
    <details className="small">
      <summary>Remove the video</summary>
      <ActionForm
        action={removeVideoAction.bind(null, { lineId, runId: run.id })}
        label={`Remove the video of ${run.name}`}
      >
        <p>
          {`${video.name} will be removed from this file (noted in the history). Observations stay.`}
        </p>
        <SubmitButton quiet pendingWord="Removing …">
          Remove
        </SubmitButton>
      </ActionForm>
    </details>
  );
}

function WithVideo({
  video,
  grid,
  ...log
}: LogProps & { readonly video: Video; readonly grid: RefObject<GridRemote | null> }) {
  const { lineId, run, readOnly } = log;
  const player = useRef<HTMLVideoElement>(null);
  const logged = useRef<string | null>(null);
  const goesOn = useRef(false);
  const [waits, setWaits] = useState(true);
  const [said, say] = useState("");
  useSeek({ grid, player, logged });

  const onLog = useCallback(
    (kind: ObservationKind, second: number) => {
      const rows = (grid.current?.rows() ?? []) as unknown as readonly Observation[];
      const found = counterAt(rows, second);
      if (waits && player.current?.paused === false) {
        player.current.pause();
        goesOn.current = true;
      }
      const values = {
        kind,
        videoSecond: Math.floor(second),
        counter: found?.counter ?? null,
        reading: found?.reading ?? "read",
        uncertainty: found?.uncertainty ?? null,
      };
      logged.current = grid.current?.add(values, "counter") ?? null;
      const how = found === null ? "enter the footage" : "footage is interpolated by time";
      say(`${capital(OBSERVATION_WORDS[kind])} at ${clockWords(second)}: ${how}.`);
    },
    [grid, waits],
  );
  const onStill = useStill({ ...log, grid, player, say });

  function press(event: KeyboardEvent) {
    if (event.key !== "Enter" || !(event.ctrlKey || event.metaKey)) return;
    event.preventDefault();
    player.current?.focus({ preventScroll: true });
    if (goesOn.current) void player.current?.play().catch(() => undefined);
    goesOn.current = false;
  }

  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: hears the key that leads back to the video
    <div className={styles["run"]} onKeyDown={press}>
      <VideoPlayer
        src={videoUrl(lineId, run)}
        runName={run.name}
        video={player}
        counterAt={(second) => counterNow(grid, second)}
        onLog={readOnly ? null : onLog}
        onStill={readOnly ? null : onStill}
        said={said}
      >
        {readOnly ? null : (
          <>
            <label className="check small">
              <input
                type="checkbox"
                checked={waits}
                onChange={(event) => setWaits(event.target.checked)}
              />
              <span>Pause while I enter the footage</span>
            </label>
            <DropStill {...log} say={say} />
            <RemoveVideo lineId={lineId} run={run} video={video} />
          </>
        )}
      </VideoPlayer>
      <div className={styles["log"]}>
        <ObservationsGrid {...log} remote={grid} />
      </div>
    </div>
  );
}

/** Takes the still away from the selected row, where it has one. */
function DropStill({ lineId, rows, say }: LogProps & { readonly say: (words: string) => void }) {
  const { selected } = useSelection();
  const row = rows.find(({ id }) => id === selected);
  if (row === undefined || row.pictureId === null) return null;
  const drop = async () => {
    const set = await setPictureAction(lineId, row.id, null).catch(() =>
      err("Not changed: the server did not respond. Try again."),
    );
    say(set.ok ? "Photo removed from this row; it is still in the files." : set.error);
  };
  return (
    <button type="button" className="link-button small" onClick={drop}>
      Remove the photo from the selected row
    </button>
  );
}

function counterNow(grid: RefObject<GridRemote | null>, second: number): number | null {
  const rows = (grid.current?.rows() ?? []) as unknown as readonly Observation[];
  return counterAt(rows, second)?.counter ?? null;
}

/** The row that is meant: itself, or the newest sighting of the tie-in that is selected on the strip. */
function rowOf(
  grid: RefObject<GridRemote | null>,
  selected: string | null,
): Partial<Observation> | null {
  const rows = (grid.current?.rows() ?? []) as readonly Partial<Observation>[];
  if (selected === null) return null;
  return (
    rows.find(({ id }) => id === selected) ??
    rows.findLast(({ tieInId }) => tieInId === selected) ??
    null
  );
}

/** What is selected in the table or on the strip is shown in the video. */
function useSeek({
  grid,
  player,
  logged,
}: {
  readonly grid: RefObject<GridRemote | null>;
  readonly player: RefObject<HTMLVideoElement | null>;
  /** The row that was just made from the recording: it needs no seeking. */
  readonly logged: { readonly current: string | null };
}) {
  const { selected } = useSelection();
  useEffect(() => {
    if (selected === null || selected === logged.current) return;
    const second = rowOf(grid, selected)?.videoSecond;
    if (player.current === null || typeof second !== "number") return;
    player.current.currentTime = second;
  }, [selected, grid, player, logged]);
}

/** Takes the picture that is shown for the selected row: saved or still being typed. */
function useStill({
  lineId,
  run,
  rows,
  grid,
  player,
  say,
}: LogProps & {
  readonly grid: RefObject<GridRemote | null>;
  readonly player: RefObject<HTMLVideoElement | null>;
  readonly say: (words: string) => void;
}): () => void {
  const { selected } = useSelection();
  const now = useRef({ selected, rows });
  now.current = { selected, rows };
  const busy = useRef(false);
  return useCallback(() => {
    const row = rowOf(grid, now.current.selected);
    const { current } = player;
    if (current === null || busy.current) return;
    if (row?.id === undefined) return say("Select a row first, then take the photo.");
    const { id } = row;
    const at = clockWords(current.currentTime);
    busy.current = true;
    say(`Taking the photo at ${at} …`);
    const name = `${run.name} at ${at.replaceAll(":", ".")}`;
    grabStill(current, { lineId, name })
      .then(async (sent) => {
        if (!sent.ok) return sent.error;
        const saved = now.current.rows.some((each) => each.id === id);
        if (!saved) grid.current?.set(id, "pictureId", sent.value);
        const set = saved ? await setPictureAction(lineId, id, sent.value) : ok(null);
        return set.ok ? `Photo at ${at} added to the row.` : set.error;
      })
      .catch(() => "Photo not saved: the server did not respond. Try again.")
      .then(say)
      .finally(() => {
        busy.current = false;
      });
  }, [grid, player, say, lineId, run.name]);
}
