/**
 * The forms of an aim. Goals, limits and names may be any number, so that the form is made to measure: of as many as
 * stand before the cursor, and what may follow them.
 */
import type { PlaceToken } from "./cursor-place.ts";
import { AT_SPEED, type Form, LIMIT, optional, type Part, part, RELATION, type Taking } from "./form.ts";

/** The forms that the words behind `aim` may become; more than one where the figure is still to be named. */
export function aimForms(
  item: readonly PlaceToken[],
  takesSpeed: (figureName: string) => boolean,
): readonly Form[] {
  const words = sectionsOf(item);
  // The two differ only where a figure is not named yet.
  return [false, true].map((isSpeed) => ({
    keyword: "aim",
    parts: partsOf(words, (name) => (name === undefined ? isSpeed : takesSpeed(name))),
  }));
}

type TakesSpeed = (name: string | undefined) => boolean;

/** The tokens behind `aim`, by where they stand. */
interface Sections {
  readonly goals: readonly PlaceToken[];
  /** Null without the word `keeping`. */
  readonly limits: readonly PlaceToken[] | null;
  /** Null without the word `by`. */
  readonly names: readonly PlaceToken[] | null;
}

function sectionsOf(item: readonly PlaceToken[]): Sections {
  const tokens = item.slice(1);
  const by = indexOf(tokens, "by");
  const keeping = indexOf(tokens.slice(0, by), "keeping");
  return {
    goals: tokens.slice(0, keeping),
    limits: keeping < by ? tokens.slice(keeping + 1, by) : null,
    names: by < tokens.length ? tokens.slice(by + 1) : null,
  };
}

/** Of the first such word; the length where there is none. */
function indexOf(tokens: readonly PlaceToken[], word: string): number {
  const index = tokens.findIndex(({ kind, text }) => kind === "word" && text === word);
  return index < 0 ? tokens.length : index;
}

function partsOf({ goals, limits, names }: Sections, takesSpeed: TakesSpeed): readonly Part[] {
  const isGoalsOver = limits !== null || names !== null;
  const isSecondGoal = goals.some(({ text }) => text === "and");
  const close = opens(limits) === "" ? "" : ") ";
  return [
    ...splitAt(goals, "and").flatMap((goal, i) =>
      figureParts(i === 0 ? "most|least" : "and most|and least", GOAL, takesSpeed(goal[1]?.text)),
    ),
    ...(isGoalsOver || isSecondGoal ? [] : [MORE_GOALS]),
    ...(isGoalsOver ? [] : [KEEPING]),
    ...limitParts(limits, takesSpeed),
    ...(limits === null || names !== null ? [] : [MORE_LIMITS]),
    part(`${close}by${opens(names)}`, { kind: "let-name" }, "by name", NAME),
    ...moreNames(names),
  ];
}

const GOAL = { shown: "most|least figure", about: "What the bar is to have the most, or the least, of." };
const KEPT = { shown: "keeping figure", about: "A figure that is to stay within a limit." };
const NAME = "A let that may be moved within its bounds.";
const ANY_GOAL: Taking = { kind: "figure", takesSpeed: false, isLimited: false };
const ANY_LIMIT: Taking = { kind: "figure", takesSpeed: false, isLimited: true };
const MORE_GOALS = optional("and most|and least", ANY_GOAL, "[and most|least figure]", GOAL.about);
const KEEPING = optional("keeping", ANY_LIMIT, "[keeping figure <=|>= limit]", KEPT.about);
const MORE_LIMITS = optional(",", ANY_LIMIT, "[, figure <=|>= limit]", KEPT.about);

function figureParts(
  lead: string,
  { shown, about }: typeof GOAL,
  takesSpeed: boolean,
  isLimited = false,
): readonly Part[] {
  const first = part(lead, { kind: "figure", takesSpeed, isLimited }, shown, about);
  return takesSpeed ? [first, AT_SPEED] : [first];
}

function limitParts(limits: Sections["limits"], takesSpeed: TakesSpeed): readonly Part[] {
  if (limits === null) return [];
  const open = opens(limits);
  return splitAt(open === "" ? limits : limits.slice(1), ",").flatMap((limit, i) => [
    ...figureParts(i === 0 ? `keeping${open}` : ",", KEPT, takesSpeed(limit[0]?.text), true),
    RELATION,
    LIMIT,
  ]);
}

/** Behind the first name as many as stand there, and one more. */
function moreNames(names: Sections["names"]): readonly Part[] {
  const count = names?.filter(({ text }) => text === ",").length ?? 0;
  const next = part(",", { kind: "let-name" }, ", name", NAME);
  const close = opens(names) === "" ? [] : [part(")", null, ")", "Closes the list of names.")];
  return [
    ...Array.from({ length: count }, () => next),
    { ...next, shown: "[, name]", isOptional: true },
    ...close,
  ];
}

/** ` (` where a list opens with a parenthesis. */
function opens(tokens: readonly PlaceToken[] | null): "" | " (" {
  return tokens?.[0]?.text === "(" ? " (" : "";
}

function splitAt(tokens: readonly PlaceToken[], separator: string): readonly (readonly PlaceToken[])[] {
  const parts: PlaceToken[][] = [[]];
  let depth = 0;
  for (const token of tokens) {
    depth += token.text === "(" ? 1 : token.text === ")" ? -1 : 0;
    if (depth === 0 && token.text === separator) parts.push([]);
    else parts.at(-1)?.push(token);
  }
  return parts;
}
