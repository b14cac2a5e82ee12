/** What may come next in a statement or step: its words, points, materials, figures. */
import { FIGURES, REQUIRABLE_FIGURES, TOLD_GRADES } from "../../figures/catalogue.ts";
import { MATERIALS } from "../../materials/table.ts";
import type { Candidate } from "../completion.ts";
import type { Part, Taking } from "../form.ts";
import { codeBlock } from "../markdown.ts";
import { materialLines } from "../material-lines.ts";
import { optionHelp } from "../option-help.ts";
import { filledTemplate, insertionOf } from "../template.ts";

/**
 * The words that lead a part in, with what follows them to fill in.
 * @param isFree false where text follows already: then the words alone
 */
export function leadCandidates(
  leads: readonly (readonly string[])[],
  { takes, about }: Part,
  isFree: boolean,
): readonly Candidate[] {
  return leads.flatMap((words) => {
    const [word = ""] = words;
    const lead = words.join(" ");
    if (!isFree) return [option(lead, about, word)];
    if (takes?.kind === "words")
      return takes.words.map((choice) => option(`${lead} ${choice}`, about, choice));
    return [{ ...option(lead, about, word), ...insertionOf(`${lead}${templateOf(takes)}`) }];
  });
}

/** What follows the words of a part, to be filled in. */
function templateOf(takes: Taking | null): string {
  if (takes?.kind === "point") return ` ${POINT}`;
  return takes?.kind === "value" ? ` ‹${takes.example}›` : "";
}

const POINT = "(‹10 mm›, ‹0 mm›)";

/** What a part takes where nothing of it stands there yet, expressions apart. */
export function startCandidates(taking: Taking, about: string, isFree: boolean): readonly Candidate[] {
  switch (taking.kind) {
    case "point":
      return pointCandidates(about, taking.isFirst);
    case "words":
      return taking.words.map((word) => option(word, about, word));
    case "material":
      return materialCandidates();
    case "figure":
      return figureCandidates(taking, isFree);
    case "relation":
      return [option("<=", "At most.", ""), option(">=", "At least.", "")];
    case "path":
      return [snippet("{ … }", about, "{\n  ‹›\n}")];
    case "overrides":
      return [snippet("{ … }", about, "{ ‹› }")];
    default:
      return [];
  }
}

/** The parentheses behind `by`. */
export function offsetCandidates(): readonly Candidate[] {
  return [snippet("(dx, dy)", "How far in x and in y from the last point.", POINT)];
}

function pointCandidates(about: string, isFirst: boolean): readonly Candidate[] {
  const absolute = [
    snippet("(x, y)", about, POINT),
    snippet("(r @ angle)", "By its distance and direction from the spin axis.", "(‹60 mm› @ ‹45 deg›)"),
  ];
  if (isFirst) return absolute;
  return [...absolute, snippet("by (dx, dy)", "Counted from the last point.", `by ${POINT}`)];
}

/** Limits of a figure as a builder would write them: its example, and balance grades where it takes them. */
export function limitCandidates(figureName: string): readonly Candidate[] {
  const figure = REQUIRABLE_FIGURES.find(({ name }) => name === figureName);
  if (figure === undefined) return [];
  const grades = figure.takesGrade ? Object.keys(TOLD_GRADES) : [];
  const limits = [...new Set([figure.example, ...grades])];
  return limits.map((limit) =>
    option(limit, limit.startsWith("G") ? "Balance grade of ISO 21940-11." : "For example.", ""),
  );
}

function materialCandidates(): readonly Candidate[] {
  return MATERIALS.map((material) => ({
    label: material.name,
    kind: "material",
    detail: material.title,
    documentation: materialLines(material).join("\n\n"),
    insertText: material.name,
    isSnippet: false,
    rank: 0,
  }));
}

/** The figures that may be limited, those at a closing speed too. */
export function limitedFigureCandidates(isFree: boolean): readonly Candidate[] {
  return [false, true].flatMap((takesSpeed) =>
    figureCandidates({ kind: "figure", takesSpeed, isLimited: true }, isFree),
  );
}

function figureCandidates(
  { takesSpeed, isLimited }: Extract<Taking, { kind: "figure" }>,
  isFree: boolean,
): readonly Candidate[] {
  const figures = REQUIRABLE_FIGURES.filter((figure) => figure.takesSpeed === takesSpeed);
  return figures.map(({ name, example }) => {
    const figure = FIGURES.find(({ requirable }) => requirable?.name === name);
    // A builder limits what is wanted small from above, and what is wanted large from below.
    const relations = figure?.better === "less" ? "<=|>=" : ">=|<=";
    const meant = `${name}${takesSpeed ? " at ‹3 m/s›" : ""}`;
    const template = isLimited ? `${meant} ‹${relations}› ‹${example}›` : meant;
    const sense = figure?.better === "less" ? "least" : "most";
    const line = filledTemplate(isLimited ? `require ${template}` : `aim ${sense} ${template} by tail`);
    return {
      label: name,
      kind: "figure",
      detail: figure?.label ?? name,
      documentation: `${figure?.meaning ?? ""}\n\n${codeBlock(line)}`,
      ...insertionOf(isFree ? template : name),
      rank: 0,
    };
  });
}

function option(label: string, about: string, word: string): Candidate {
  const help = optionHelp(word);
  const documentation = help === null ? about : `${help.summary}\n\n${codeBlock(help.example)}`;
  return {
    label,
    kind: "option",
    detail: about,
    documentation,
    insertText: label,
    isSnippet: false,
    rank: 0,
  };
}

function snippet(label: string, about: string, template: string): Candidate {
  return { label, kind: "option", detail: about, documentation: about, ...insertionOf(template), rank: 0 };
}
