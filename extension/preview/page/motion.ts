import { betweenViewports, type Viewport } from "./viewport.ts";

/** Whether the reader, in the editor or in the system, asked for less motion. */
export function motionReduced(): boolean {
  return (
    document.body.classList.contains("vscode-reduce-motion") ||
    window.matchMedia("(prefers-reduced-motion: reduce)").matches
  );
}

const GLIDE_MS = 160;

/**
 * Move from one viewport to another in a short glide; at once where motion is reduced. Returns what stops it.
 * @param show called for each step with the viewport to show; the last one is exactly `to`
 */
export function glide(from: Viewport, to: Viewport, show: (viewport: Viewport) => void): () => void {
  if (motionReduced()) {
    show(to);
    return () => {};
  }
  let request = 0;
  const start = performance.now();
  const step = (now: number) => {
    const share = Math.min(1, Math.max(0, (now - start) / GLIDE_MS));
    show(betweenViewports(from, to, 1 - (1 - share) ** 3));
    if (share < 1) request = requestAnimationFrame(step);
  };
  request = requestAnimationFrame(step);
  return () => cancelAnimationFrame(request);
}
