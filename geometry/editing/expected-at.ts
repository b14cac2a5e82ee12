/** The forms that what stands before the cursor may become. */
import { REQUIRABLE_FIGURES } from "../figures/catalogue.ts";
import { rowOf } from "../language/blocks/block-table.ts";
import { BLOCKS, isBlockWord } from "../language/blocks/blocks.ts";
import type { Design } from "../language/design.ts";
import { isSettingWord } from "../language/parse/parse-setting.ts";
import { isStatementWord } from "../language/parse/parse-statement.ts";
import { isStepWord } from "../language/parse/parse-step.ts";
import type { Dimension } from "../language/quantity.ts";
import type { BlockWord } from "../language/vocabulary.ts";
import { aimForms } from "./aim-forms.ts";
import { blockLimitForm, settingForm } from "./block-help.ts";
import type { CursorPlace } from "./cursor-place.ts";
import type { Form, Taking } from "./form.ts";
import { OVERRIDE_FORM, STATEMENT_FORMS, STEP_FORMS } from "./forms.ts";
import { type FormMatch, type MatchContext, matchForm } from "./match-form.ts";

/** Every form that fits what stands before the cursor; none at the start of an item, or where the text fits no form. */
export function matchesAt(place: CursorPlace, design: Design): readonly FormMatch[] {
  const context: MatchContext = {
    place,
    dimensionOf: (taking) => dimensionOf(taking, place, design),
    figureTakesSpeed,
  };
  return formsOf(place).flatMap((form) => matchForm(form, context) ?? []);
}

/** The name that the item defines: of a let, or of an override. */
export function definedName({ item, block }: CursorPlace): string | null {
  const [first, second] = item;
  if (block === "file" && first?.text === "let") return second?.kind === "word" ? second.text : null;
  return first?.kind === "word" && second?.text === "=" ? first.text : null;
}

function formsOf({ block, item, letNames }: CursorPlace): readonly Form[] {
  const [first, second] = item;
  if (first?.kind !== "word") return [];
  const word = first.text;
  const isOverride = second?.text === "=" && !(isSettingWord(word) && !letNames.has(word));
  if (block === "path") return isStepWord(word) ? STEP_FORMS[word] : [];
  if (block === "variant") {
    if (isOverride) return [OVERRIDE_FORM];
    return isSettingWord(word) ? STATEMENT_FORMS[word] : [];
  }
  if (isBlockWord(block)) return blockForms(block, word);
  if (block !== "file") return [];
  if (word === "aim") return aimForms(item, figureTakesSpeed);
  if (isStatementWord(word)) return STATEMENT_FORMS[word];
  return isOverride ? [OVERRIDE_FORM] : [];
}

function blockForms(block: BlockWord, word: string): readonly Form[] {
  const table = BLOCKS[block];
  const row = rowOf(table, word);
  if (row !== null) return [settingForm(row)];
  if (table.limitExample === null || figureOf(word) === undefined) return [];
  return [blockLimitForm(word, figureTakesSpeed(word))];
}

/** The kind of value that a part takes at this place; null for any. */
export function dimensionOf(taking: Taking, place: CursorPlace, { lets }: Design): Dimension | null {
  if (taking.kind === "value") return taking.dimension;
  if (taking.kind === "limit") return figureOf(limitedFigure(place))?.dimension ?? null;
  if (taking.kind !== "override") return null;
  const name = definedName(place);
  return lets.find((known) => known.name === name)?.value?.dimension ?? null;
}

/** The figure that the limit at the end of an item is about: the last one named there. */
export function limitedFigure({ item }: CursorPlace): string {
  const named = item.filter(({ kind, text }) => kind === "word" && figureOf(text) !== undefined);
  return named.at(-1)?.text ?? "";
}

function figureTakesSpeed(name: string): boolean {
  return figureOf(name)?.takesSpeed ?? false;
}

function figureOf(name: string) {
  return REQUIRABLE_FIGURES.find((figure) => figure.name === name);
}
