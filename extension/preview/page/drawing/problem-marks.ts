import { setAttributes, svg } from "../../../webview/page/dom.ts";
import type { PlanePoint, ShownProblem } from "../../protocol.ts";
import { severitySign } from "../icons.ts";
import type { PageState } from "../page-state.ts";
import { type Size, toScreen, type Viewport } from "../viewport.ts";

export interface ProblemMarks {
  readonly element: SVGGElement;
  update(state: PageState, viewport: Viewport, size: Size): void;
}

type PlacedProblem = ShownProblem & { readonly at: PlanePoint };

/**
 * Signs on the drawing where something is wrong. The list of problems says the same and takes the keyboard, so these
 * are for the eye and the pointer.
 */
export function createProblemMarks(reveal: (problem: ShownProblem) => void): ProblemMarks {
  const element = svg("g", { class: "problem-marks", "aria-hidden": "true" });
  let shown: readonly PlacedProblem[] = [];
  let drawn: PageState["view"] = null;
  return {
    element,
    update: ({ view }, viewport, size) => {
      if (drawn !== view) {
        drawn = view;
        shown = (view?.problems ?? []).filter((problem): problem is PlacedProblem => problem.at !== null);
        element.replaceChildren(...shown.map((problem) => createMark(problem, reveal)));
      }
      for (const [index, { x, y }] of beside(shown.map(({ at }) => toScreen(viewport, size, at))).entries()) {
        const mark = element.children[index];
        if (mark) setAttributes(mark, { transform: `translate(${x.toFixed(1)} ${y.toFixed(1)})` });
      }
    },
  };
}

function createMark(problem: ShownProblem, reveal: (problem: ShownProblem) => void): SVGGElement {
  const mark = svg(
    "g",
    { class: "problem-mark" },
    svg("title", {}, problem.message),
    svg("path", { class: "problem-stem", d: `M0 0L${ASIDE.x} ${ASIDE.y}` }),
    svg("circle", { class: "problem-spot", r: 2.2 }),
    svg(
      "g",
      { transform: `translate(${ASIDE.x} ${ASIDE.y})` },
      svg("circle", { class: "problem-hit", r: 12 }),
      severitySign(problem.severity),
    ),
  );
  mark.addEventListener("click", () => reveal(problem));
  return mark;
}

/** The sign stands beside its place on a stem: what is wrong stays in sight. */
const ASIDE: PlanePoint = { x: 11, y: -19 };

const SIGN_PX = 18;

/** Signs at one place stand side by side. Their stems then begin beside it. */
function beside(places: readonly PlanePoint[]): PlanePoint[] {
  const taken: PlanePoint[] = [];
  for (const place of places) {
    let x = place.x;
    while (taken.some((other) => Math.hypot(other.x - x, other.y - place.y) < SIGN_PX)) x += SIGN_PX;
    taken.push({ x, y: place.y });
  }
  return taken;
}
