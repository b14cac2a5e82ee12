/**
 * Templates: texts with places to fill in, written ‹12 mm›, or ‹left|right› where there is a choice; ‹› is where the
 * cursor ends. ‹=2› repeats the second place.
 */
const PLACE = /‹([^›]*)›/g;

/** The template with every place filled in as suggested, and the first of each choice. */
export function filledTemplate(template: string): string {
  const filled: string[] = [];
  return template.replace(PLACE, (_, inside: string) => {
    const again = /^=(\d+)$/.exec(inside)?.[1];
    if (again !== undefined) return filled[Number(again) - 1] ?? "";
    const text = inside.split("|")[0] ?? "";
    filled.push(text);
    return text;
  });
}

/** The template in the snippet syntax of the editor, in which places are numbered. */
export function snippetOf(template: string): string {
  let number = 0;
  let snippet = "";
  let done = 0;
  for (const { 0: mark, 1: inside = "", index } of template.matchAll(PLACE)) {
    snippet += escaped(template.slice(done, index));
    done = index + mark.length;
    if (inside === "") snippet += "$0";
    else if (inside.startsWith("=")) snippet += `$${inside.slice(1)}`;
    else {
      number += 1;
      snippet += placeText(number, inside);
    }
  }
  return snippet + escaped(template.slice(done));
}

function placeText(number: number, inside: string): string {
  const isChoice = inside.includes("|");
  const text = isChoice ? `|${inside.split("|").map(escaped).join(",")}|` : `:${escaped(inside)}`;
  return `$\{${number}${text}}`;
}

function escaped(text: string): string {
  return text.replace(/[\\$}]/g, (sign) => `\\${sign}`);
}

/** A template as what a completion inserts. */
export function insertionOf(template: string): { readonly insertText: string; readonly isSnippet: boolean } {
  const isSnippet = template.includes("‹");
  return { insertText: isSnippet ? snippetOf(template) : template, isSnippet };
}
