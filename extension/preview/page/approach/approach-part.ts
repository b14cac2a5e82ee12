/** One approach, slowed down: bar and target on their way to the first contact, by itself or step by step. */

import { el, setText } from "../../../webview/page/dom.ts";
import { observedSize } from "../../../webview/page/observed-size.ts";
import { degreesText, shareText, speedText } from "../../../webview/page/units.ts";
import { fill } from "../../strings.ts";
import { createFold } from "../fold.ts";
import { motionReduced } from "../motion.ts";
import { chosenIndex, type PageContext, type PageState } from "../page-state.ts";
import type { Part } from "../part.ts";
import { createPlayButton, createScrubber, noteText } from "./approach-controls.ts";
import { createApproachPicture } from "./approach-picture.ts";
import { contactText } from "./approach-text.ts";
import { createContactWords } from "./contact-words.ts";
import { createPlayer } from "./player.ts";
import { slowdown } from "./scene.ts";
import { type Asked, type Worked, workOut } from "./worked.ts";

const FOLD = "approach";
const FIRST_PHASE_DEG = 60;

/**
 * The section. What is asked and how far it has run is its own; the speed follows the one that is read in the chart, until
 * its own scrubber is moved.
 */
export function createApproachPart(context: PageContext): Part {
  const { strings, announce, state } = context;
  let asked: Asked = { phaseDeg: FIRST_PHASE_DEG, closingMPerS: 0 };
  let worked: Worked | null = null;
  /** How much of the way is gone: 1 at contact. */
  let gone = 1;
  let followed: Followed | null = null;

  const picture = createApproachPicture();
  const canvas = el("div", { class: "approach-canvas" }, picture.element);
  const room = observedSize(canvas, () => context.change({}));
  const near = el("input", { type: "checkbox" });
  const words = createContactWords(context);
  const note = el("p", { class: "soft" });
  const scrubbers = createScrubbers(context, {
    course: (value) => {
      player.pause();
      gone = value;
      draw();
    },
    asked: (changes) => {
      player.pause();
      gone = 1;
      asked = { ...asked, ...changes };
      worked = workOut(state().view, asked);
      draw();
    },
  });
  const button = createPlayButton(strings, () => {
    if (player.playing()) return player.pause();
    if (gone >= 1) gone = 0;
    player.play();
  });
  const player = createPlayer(
    (seconds) => {
      const radPerS = state().view?.bite?.radPerS;
      if (!worked || !radPerS) return false;
      gone = Math.min(1, gone + (seconds * radPerS) / slowdown(radPerS) / worked.approach.leadRad);
      draw();
      if (gone === 1) announce(words.text());
      return gone < 1;
    },
    () => button.update(player.playing(), motionReduced()),
  );
  near.addEventListener("change", () => draw());

  const row = el("label", { class: "switch" }, near, strings.closeUp);
  const content = el(
    "div",
    { class: "approach" },
    canvas,
    el("div", { class: "approach-row" }, button.element, row),
    ...scrubbers.elements,
    words.element,
    note,
  );
  const fold = createFold(context, FOLD, strings.approach, content);

  function draw(): void {
    const { view, units } = state();
    if (!worked || !view?.drawing) return;
    const { approach } = worked;
    const beforeRad = gone >= 1 ? 0 : approach.leadRad * (1 - gone);
    const { loops } = view.drawing;
    picture.draw({ approach, beforeRad, loops, units, size: sizeFor(room().width), near: near.checked });
    words.update(worked);
    scrubbers.update(asked, gone, beforeRad, contactText(worked, units, strings));
  }

  return {
    element: fold.element,
    update: (next) => {
      fold.update(next);
      const speeds = next.openSections.includes(FOLD) ? speedsOf(next) : null;
      if (!next.view?.bite || !speeds) return player.pause();
      const reduced = motionReduced();
      if (reduced) player.pause();
      button.update(player.playing(), reduced);
      setText(note, noteText(slowdown(next.view.bite.radPerS), reduced, strings));
      scrubbers.range(speeds);
      if (followed?.view !== next.view || followed.chosen !== speeds.chosen) {
        const wanted = followed?.chosen === speeds.chosen ? asked.closingMPerS : speeds.chosen;
        asked = { ...asked, closingMPerS: Math.min(speeds.most, Math.max(speeds.least, wanted)) };
        worked = workOut(next.view, asked);
        followed = { view: next.view, chosen: speeds.chosen };
      }
      draw();
    },
  };
}

/** What the section has followed last. */
interface Followed {
  readonly view: PageState["view"];
  readonly chosen: number;
}

interface Speeds {
  readonly least: number;
  readonly most: number;
  /** The speed that is read in the chart. */
  readonly chosen: number;
}

function speedsOf(state: PageState): Speeds | null {
  const curve = state.view?.bite?.curve ?? [];
  const [first, chosen, last] = [curve[0], curve[chosenIndex(state)], curve.at(-1)];
  if (!first || !chosen || !last) return null;
  return { least: first.closingMPerS, chosen: chosen.closingMPerS, most: last.closingMPerS };
}

const [TALLEST_PX, NARROWEST_PX, ASPECT] = [360, 160, 0.83];

function sizeFor(roomPx: number) {
  const width = Math.max(NARROWEST_PX, roomPx);
  return { width, height: Math.round(Math.min(TALLEST_PX, width * ASPECT)) };
}

const SPEED_STEPS = 200;

/** The course of the approach, the phase it starts in and its speed. */
function createScrubbers(
  { strings, state }: PageContext,
  on: { readonly course: (gone: number) => void; readonly asked: (changes: Partial<Asked>) => void },
) {
  const course = createScrubber(strings.course, on.course);
  const phase = createScrubber(strings.startingPhase, (phaseDeg) => on.asked({ phaseDeg }));
  const speed = createScrubber(strings.approachSpeed, (closingMPerS) => on.asked({ closingMPerS }));
  phase.range(0, 359, 1);
  return {
    elements: [course, phase, speed].map(({ element }) => element),
    range: ({ least, most }: Speeds) => speed.range(least, most, (most - least) / SPEED_STEPS || 1),
    update: ({ phaseDeg, closingMPerS }: Asked, gone: number, beforeRad: number, ends: string) => {
      const left = fill(strings.turnLeft, degreesText(beforeRad));
      course.set(gone, shareText(gone), gone >= 1 ? ends : left);
      phase.set(phaseDeg, `${phaseDeg}°`, `${phaseDeg}°: ${ends}`);
      speed.set(closingMPerS, speedText(closingMPerS, state().units));
    },
  };
}
