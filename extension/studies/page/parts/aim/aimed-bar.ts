/** One bar that was found: its values, how it stands to the limits, its outline, and what can be done with it. */
import type { UnitSystem } from "../../../../../geometry/figures/present.ts";
import { fill } from "../../../../webview/fill.ts";
import { el, freshId, setAttributes, setHidden, setText, svg } from "../../../../webview/page/dom.ts";
import type { StudiesStrings } from "../../../strings.ts";
import type { AimResult, GoalTitle, ShownBar } from "../../../worker/aim-job.ts";
import { createRowsTable } from "./rows-table.ts";

export interface AimedBarView {
  readonly element: HTMLElement;
  update(shown: ShownAim): void;
}

export interface ShownAim {
  readonly result: AimResult;
  readonly bar: ShownBar;
  readonly units: UnitSystem;
  /** False where the text is no longer the one that was searched. */
  readonly isCurrent: boolean;
  /** A name for the variant that the text does not have. */
  readonly freeName: string;
}

export interface BarActions {
  insertVariant(name: string): void;
  writeLets(): void;
}

export function createAimedBar(strings: StudiesStrings, actions: BarActions): AimedBarView {
  const values = createRowsTable();
  const limits = createRowsTable();
  const picture = createPicture(strings);
  const buttons = createButtons(strings, actions);
  return {
    element: el(
      "div",
      { class: "aimed-bar" },
      el("div", {}, values.element, limits.element, buttons.element),
      picture.element,
    ),
    update: (shown) => {
      const { result, bar, units } = shown;
      values.update(
        strings.aimValues,
        [strings.aimWhat, strings.aimBefore, strings.aimAfter, strings.aimNote],
        valueRows(result.goals, bar, units, strings),
      );
      limits.update(
        strings.aimLimits,
        [strings.aimLimit, strings.aimAllowed, strings.aimLimitIs, strings.aimToSpare, strings.aimNote],
        bar.limits.map((limit) => [
          limit.label,
          `${limit.relation} ${limit.limit[units]}`,
          limit.value[units],
          limit.margin[units],
          limitNote(limit, strings),
        ]),
      );
      picture.update(result, bar);
      buttons.update(shown);
    },
  };
}

function valueRows(
  titles: readonly GoalTitle[],
  { goals, lets }: ShownBar,
  units: UnitSystem,
  strings: StudiesStrings,
): readonly (readonly string[])[] {
  return [
    ...goals.map(({ beforeText, afterText, change }, i) => [
      goalText(titles[i], strings),
      beforeText[units],
      afterText[units],
      change,
    ]),
    ...lets.map(({ name, from, to, reached }) => [
      name,
      from,
      to,
      reached === null ? "" : reached === "least" ? strings.aimAtLowerBound : strings.aimAtUpperBound,
    ]),
  ];
}

export function goalText(title: GoalTitle | undefined, strings: StudiesStrings): string {
  if (title === undefined) return "";
  return fill(title.sense === "most" ? strings.aimMostOf : strings.aimLeastOf, title.label);
}

function limitNote(
  { origin, holds, isReached }: ShownBar["limits"][number],
  strings: StudiesStrings,
): string {
  const standing = holds ? (isReached ? strings.aimHoldsBack : "") : `▲ ${strings.aimNotKept}`;
  return [origin === "expected" ? strings.aimExpectedLimit : "", standing]
    .filter((text) => text !== "")
    .join(", ");
}

/** Room around the outlines, as a share of their extent. */
const ROOM = 0.04;

function createPicture(strings: StudiesStrings) {
  const before = svg("path", { class: "aim-before" });
  const after = svg("path", { class: "aim-after" });
  const axis = svg("path", { class: "axis-cross" });
  const picture = svg("svg", { class: "overlay-picture", role: "img", "aria-label": strings.aimPicture });
  picture.append(after, before, axis);
  return {
    element: el("div", {}, picture, el("p", { class: "soft" }, strings.aimPictureMeaning)),
    update: ({ pathBefore, boundsMm: [x0, y0, x1, y1] }: AimResult, { path }: ShownBar) => {
      const [width, height] = [x1 - x0, y1 - y0];
      const room = ROOM * Math.max(width, height);
      setAttributes(picture, {
        viewBox: `${x0 - room} ${-y1 - room} ${width + 2 * room} ${height + 2 * room}`,
      });
      setAttributes(before, { d: pathBefore });
      setAttributes(after, { d: path });
      setAttributes(axis, { d: `M${-room} 0H${room}M0 ${-room}V${room}` });
    },
  };
}

function createButtons(strings: StudiesStrings, { insertVariant, writeLets }: BarActions) {
  const nameId = freshId("variant-name");
  const name = el("input", { id: nameId, type: "text", size: 14, maxlength: 60, autocomplete: "off" });
  const insert = el("button", { type: "submit", class: "main-action" }, strings.aimInsertVariant);
  const write = el("button", { type: "button", class: "main-action" }, strings.aimWriteLets);
  const note = el("p", { class: "soft" });
  let isTyped = false;
  name.addEventListener("input", () => {
    isTyped = name.value !== "";
  });
  write.addEventListener("click", writeLets);
  const form = el(
    "form",
    { class: "controls" },
    el("div", { class: "field" }, el("label", { for: nameId }, strings.aimVariantName), name),
    insert,
    write,
  );
  form.addEventListener("submit", (event) => {
    event.preventDefault();
    isTyped = false;
    insertVariant(name.value.replace(/["\r\n]/g, "").trim());
  });
  return {
    element: el("div", {}, form, note),
    update: ({ result, bar, isCurrent, freeName }: ShownAim) => {
      if (!isTyped && name.value !== freeName) name.value = freeName;
      const isOffered = result.infeasible === null;
      setHidden(form, !isOffered);
      insert.disabled = !isCurrent;
      const isBest = bar.edits.length === 0;
      write.disabled = !isCurrent || isBest || bar.elsewhere.length > 0;
      const [harm] = bar.elsewhere;
      const why = isCurrent
        ? isBest
          ? strings.aimBestAlready
          : harm
            ? fill(strings.aimHarmsVariant, harm)
            : ""
        : strings.aimTextChanged;
      setText(note, isOffered ? why : "");
      setHidden(note, note.textContent === "");
    },
  };
}
