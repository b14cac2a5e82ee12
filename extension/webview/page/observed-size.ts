import type { Size } from "./size.ts";

/**
 * The inner size of an element in px, kept by an observer: to read it between two changes of the page would lay the page
 * out each time.
 * @param changed called when the size is known and after each change
 */
export function observedSize(element: Element, changed: () => void): () => Size {
  let size: Size | null = null;
  const measured = () => ({ width: element.clientWidth, height: element.clientHeight });
  new ResizeObserver(() => {
    size = measured();
    changed();
  }).observe(element);
  // The observer's first call comes with the first layout: until then there is nothing kept.
  return () => size ?? measured();
}
