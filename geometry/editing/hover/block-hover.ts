/** Hovers in a block: of its settings, of the words in them, and what the block comes to. */
import { FIGURES, figureValue } from "../../figures/catalogue.ts";
import { presentFigure } from "../../figures/present.ts";
import { rowOf } from "../../language/blocks/block-table.ts";
import { BLOCKS, isBlock } from "../../language/blocks/blocks.ts";
import type { SettingItem } from "../../language/tree.ts";
import type { BlockWord } from "../../language/vocabulary.ts";
import type { Hover, HoverPlace } from "../hover.ts";
import { helpLines, type Word } from "./word-hover.ts";

/** The help of the word in a setting; null where the word is none of its block. */
export function blockWordHover({ statement, path }: HoverPlace, { text, range }: Word): Hover | null {
  const item = path.flatMap((node) => (node.type === "block-item" ? [node.node] : [])).at(-1);
  if (item?.kind !== "setting" || !isBlock(statement)) return null;
  const row = rowOf(BLOCKS[statement.kind], item.word);
  if (row === null) return null;
  const isKeyword = range.start === item.keyword.start;
  if (isKeyword) return { range, lines: helpLines(row.word, row) };
  const field = row.fields.find(({ name }) => name === partAt(item, range.start));
  return field === undefined
    ? null
    : { range, lines: helpLines(text, { summary: field.about, example: row.example }) };
}

function partAt({ parts }: SettingItem, offset: number): string | undefined {
  return parts.find(({ range }) => range.start <= offset && offset < range.end)?.name;
}

/** The figures that a block gives, one a line. */
export function blockLines({ analysis: { assessment } }: HoverPlace, word: BlockWord): readonly string[] {
  return FIGURES.filter(({ group, measure }) => group === word && measure !== null).flatMap((figure) => {
    const value = figureValue(figure.key, assessment);
    if (value === null) return [];
    const { text, unit } = presentFigure(figure, value, "mm");
    return [`${figure.label} ${text}${unit === "" ? "" : ` ${unit}`}`];
  });
}
