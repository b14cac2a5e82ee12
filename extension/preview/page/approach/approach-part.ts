/** One approach, slowed down: bar and target on their way to the first contact, by itself or step by step. */
import type { StrikeKind } from "../../../../geometry/bite/bite.ts";
import { fill } from "../../strings.ts";
import { el, setHidden, setText } from "../dom.ts";
import { createFold } from "../fold.ts";
import { motionReduced } from "../motion.ts";
import { observedSize } from "../observed-size.ts";
import { chosenIndex, type PageContext, type PageState } from "../page-state.ts";
import type { Part } from "../part.ts";
import { shownProfile } from "../strikes/shown-profile.ts";
import { placeText } from "../strikes/strike-text.ts";
import { degreesText, shareText, speedText } from "../units.ts";
import { createScrubber } from "./approach-controls.ts";
import { createApproachPicture } from "./approach-picture.ts";
import { contactKind, contactText } from "./approach-text.ts";
import { createPlayer } from "./player.ts";
import { type Approach, approachOf, slowdown } from "./scene.ts";

const FOLD = "approach";
const FIRST_PHASE_DEG = 60;
const SPEED_STEPS = 200;
const [TALLEST_PX, ASPECT] = [360, 0.83];

/** What the section shows besides the state of the page. */
interface Shown {
  readonly approach: Approach;
  readonly kind: StrikeKind | null;
}

export function createApproachPart(context: PageContext): Part {
  const { strings, post, announce, state } = context;
  const picture = createApproachPicture();
  const canvas = el("div", { class: "approach-canvas" }, picture.element);
  const room = observedSize(canvas, () => context.change({}));
  const button = el("button", { type: "button", class: "main-action approach-play" });
  const near = el("input", { type: "checkbox" });
  const slow = el("p", { class: "soft" });
  const words = el("span");
  const place = el("button", { type: "button", class: "link" });
  const told = el("p", { class: "approach-words" }, words);

  let shown: Shown | null = null;
  /** How much of the way is gone: 1 at contact. */
  let gone = 1;
  let closingMPerS = 0;
  let followed: number | null = null;
  let drawn: Pick<PageState, "view" | "units"> | null = null;

  const course = createScrubber(strings.course, () => {
    player.pause();
    gone = course.value();
    draw();
  });
  const phase = createScrubber(strings.startingPhase, () => settle());
  const speed = createScrubber(strings.approachSpeed, () => {
    closingMPerS = speed.value();
    settle();
  });
  phase.range(0, 359, 1);
  phase.set(FIRST_PHASE_DEG, "");
  near.addEventListener("change", () => draw());

  const player = createPlayer(
    (seconds) => {
      if (!shown) return false;
      const { radPerS } = state().view?.bite ?? { radPerS: 0 };
      gone = Math.min(1, gone + (seconds * radPerS) / slowdown(radPerS) / shown.approach.leadRad);
      draw();
      if (gone === 1) announce(told.textContent);
      return gone < 1;
    },
    () => setText(button, player.playing() ? strings.pause : strings.play),
  );
  setText(button, strings.play);
  button.addEventListener("click", () => {
    if (player.playing()) return player.pause();
    if (gone >= 1) gone = 0;
    player.play();
  });
  place.addEventListener("click", () => {
    const segment = outer()[shown?.approach.contact.place?.index ?? -1];
    if (segment) post({ type: "reveal", source: segment.source });
  });

  const content = el(
    "div",
    { class: "approach" },
    canvas,
    el("div", { class: "approach-row" }, button, el("label", { class: "switch" }, near, strings.closeUp)),
    course.element,
    phase.element,
    speed.element,
    told,
    slow,
  );
  const fold = createFold(context, FOLD, strings.approach, content);

  function outer() {
    return state().view?.drawing?.loops.find(({ kind }) => kind === "outer")?.segments ?? [];
  }

  /** Stop at the contact of the approach that the scrubbers ask for. */
  function settle(): void {
    player.pause();
    gone = 1;
    work();
    draw();
  }

  /** Work out the approach anew. */
  function work(): void {
    const { view } = state();
    const profile = shownProfile(view);
    if (!view?.bite || !profile) {
      shown = null;
      return;
    }
    const { radPerS, squareStrikeRad } = view.bite;
    const approach = approachOf(profile, { closingMPerS, radPerS }, (phase.value() * Math.PI) / 180);
    shown = { approach, kind: contactKind(approach, { closingMPerS, radPerS, squareStrikeRad }) };
  }

  function draw(): void {
    const { view, units } = state();
    if (!shown || !view?.drawing || !view.bite) return;
    const { approach, kind } = shown;
    const width = Math.max(160, room().width);
    const size = { width, height: Math.round(Math.min(TALLEST_PX, width * ASPECT)) };
    const beforeRad = gone >= 1 ? 0 : approach.leadRad * (1 - gone);
    const { loops } = view.drawing;
    picture.draw({ approach, beforeRad, loops, units, size, near: near.checked });
    const ends = contactText(approach, kind, units, strings);
    setText(words, `${ends} `);
    const at = approach.contact.place;
    if (at === null) place.remove();
    else {
      setText(place, placeText(at, outer(), units, strings));
      if (!place.isConnected) told.append(place);
    }
    const degrees = `${phase.value()}°`;
    phase.set(phase.value(), degrees, `${degrees}: ${ends}`);
    speed.set(closingMPerS, speedText(closingMPerS, units));
    const turn = degreesText(beforeRad);
    course.set(gone, shareText(gone), gone >= 1 ? ends : fill(strings.turnLeft, turn));
  }

  return {
    element: fold.element,
    update: (next) => {
      fold.update(next);
      const { view, units } = next;
      const curve = view?.bite?.curve ?? [];
      const chosen = curve[chosenIndex(next)]?.closingMPerS;
      if (!next.openSections.includes(FOLD) || !view?.bite || chosen === undefined) return player.pause();
      const reduced = motionReduced();
      if (reduced) player.pause();
      setHidden(button, reduced);
      const note = reduced ? strings.approachSteps : fill(strings.slowedDown, slowdown(view.bite.radPerS));
      setText(slow, `${note} ${strings.phaseMeaning}`);
      const [least, most] = [curve[0]?.closingMPerS ?? chosen, curve.at(-1)?.closingMPerS ?? chosen];
      speed.range(least, most, (most - least) / SPEED_STEPS || 1);
      if (followed !== chosen) closingMPerS = chosen;
      const same = drawn?.view === view && drawn.units === units && followed === chosen;
      followed = chosen;
      drawn = { view, units };
      closingMPerS = Math.min(most, Math.max(least, closingMPerS));
      if (!same) work();
      draw();
    },
  };
}
