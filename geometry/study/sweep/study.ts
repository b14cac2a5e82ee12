/** A study: which lets of a bar are swept from where to where, and which figures are followed. */
import type { Source } from "../../analysis/source.ts";
import type { Settings } from "../../figures/settings.ts";
import { type Variation, variationOf } from "../variation.ts";
import { type StudiedFigure, studiedFigure, USUAL_FIGURES } from "./studied-figure.ts";
import { MOST_PLACES, placesOf, type SweptAxis } from "./sweep.ts";
import { sweptRange, sweptWords } from "./swept-let.ts";

export interface StudyRequest {
  /** One or two, as `tail from 80 mm to 120 mm`, or `tail` for its bounds. */
  readonly lets: readonly string[];
  /** How many values of each let; one number for both. */
  readonly counts: readonly number[];
  /** As `massKg`, `mass` or `bite at 4 m/s`; the usual ones where there are none. */
  readonly figures: readonly string[];
  /** `null` for the bar as it stands. */
  readonly variant?: string | null;
  readonly settings?: Partial<Settings>;
}

export interface Study {
  readonly variation: Variation;
  /** One for each let of the variation. */
  readonly axes: readonly SweptAxis[];
  readonly figures: readonly StudiedFigure[];
}

/** What is wrong with a request, for people. */
export interface StudyRefusal {
  readonly message: string;
}

/** Values of one let, and of each of two, where nothing else is asked. */
export const USUAL_COUNTS = { one: 41, two: 21 } as const;

/** Looks a request up in a file, or says in a sentence what is wrong with it. */
export function studyOf(source: Source, request: StudyRequest): Study | StudyRefusal {
  const { lets, variant = null, settings = {} } = request;
  if (lets.length < 1 || lets.length > 2) return { message: "Name one let to sweep, or two." };
  const words = lets.map(sweptWords);
  const unread = lets[words.indexOf(null)];
  if (unread !== undefined)
    return { message: `'${unread}' is no let to sweep; write tail, or tail from 80 mm to 120 mm.` };
  const named = words.filter((found) => found !== null);
  const names = named.map(({ name }) => name);
  if (new Set(names).size < names.length) return { message: `'${names[0]}' is swept already.` };
  const variation = variationOf(source, { names, variant, settings });
  if ("reason" in variation) return variation;
  const ranges = variation.lets.map((of, i) => sweptRange(of, named[i] ?? { name: of.name, range: null }));
  for (const range of ranges) if ("message" in range) return range;
  const counts = countsOf(request.counts, names.length);
  if ("message" in counts) return counts;
  const axes = ranges.flatMap((range, i) =>
    "message" in range ? [] : [{ ...range, count: counts[i] ?? counts[0] ?? 2 }],
  );
  if (placesOf(axes) > MOST_PLACES)
    return { message: `That makes ${placesOf(axes)} bars; a study takes ${MOST_PLACES} at most.` };
  const figures = figuresOf(request.figures);
  return "message" in figures ? figures : { variation, axes, figures };
}

function countsOf(asked: readonly number[], lets: number): readonly number[] | StudyRefusal {
  if (asked.length === 0)
    return Array.from({ length: lets }, () => (lets === 1 ? USUAL_COUNTS.one : USUAL_COUNTS.two));
  const isCount = (count: number) => Number.isInteger(count) && count >= 2;
  if (!asked.every(isCount)) return { message: "A let takes 2 values or more." };
  if (asked.length !== 1 && asked.length !== lets)
    return { message: "Say how many values for each let, or one number for all." };
  return Array.from({ length: lets }, (_, i) => asked[i] ?? asked[0] ?? 2);
}

function figuresOf(asked: readonly string[]): readonly StudiedFigure[] | StudyRefusal {
  if (asked.length === 0) return USUAL_FIGURES;
  const found: StudiedFigure[] = [];
  for (const words of asked) {
    const figure = studiedFigure(words);
    if ("message" in figure) return figure;
    if (!found.some(({ key }) => key === figure.key)) found.push(figure);
  }
  return found;
}
