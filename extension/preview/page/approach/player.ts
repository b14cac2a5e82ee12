/** Runs an approach from its start to its end, frame by frame. */
export interface Player {
  playing(): boolean;
  play(): void;
  pause(): void;
}

/**
 * @param step moves on by so many seconds and tells whether there is more to come
 * @param changed called when it starts or stops
 */
export function createPlayer(step: (seconds: number) => boolean, changed: () => void): Player {
  let request = 0;
  let last = 0;
  const frame = (now: number) => {
    const seconds = Math.min(LONGEST_STEP_S, (now - last) / 1000);
    last = now;
    request = requestAnimationFrame(frame);
    if (!step(seconds)) pause();
  };
  const pause = () => {
    if (request === 0) return;
    cancelAnimationFrame(request);
    request = 0;
    changed();
  };
  return {
    playing: () => request !== 0,
    play: () => {
      if (request !== 0) return;
      last = performance.now();
      request = requestAnimationFrame(frame);
      changed();
    },
    pause,
  };
}

/** After a pause of the page it goes on where it was. */
const LONGEST_STEP_S = 0.1;
