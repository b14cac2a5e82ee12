/** Through holes as statements of the file, and what the checker says of the file that has them. */
import type { Analysis } from "../../analysis/analyse.ts";
import { readSource } from "../../analysis/source.ts";
import { fixed } from "../../figures/present.ts";
import { applyEdits } from "../../language/apply-edits.ts";
import type { Problem } from "../../language/problem.ts";
import type { TextEdit } from "../../language/text.ts";
import type { Statement, SyntaxTree } from "../../language/tree.ts";
import { analyseAll, newProblems } from "../new-problems.ts";
import type { DrilledHole } from "./request.ts";
import { shopSteps, speaksInches } from "./shop-steps.ts";

export interface WrittenHoles {
  /** One insertion behind the last hole of the file, or behind what stands for it. */
  readonly edits: readonly TextEdit[];
  /** The lines written. */
  readonly statements: readonly string[];
  /** The file with them, worked out for the same variant. */
  readonly analysis: Analysis;
  /** Errors and warnings that the file has not without them, in any variant: reasons not to write. */
  readonly problems: readonly Problem[];
  /** Doubts that come with drills thinner than the plate, which were asked for: to be told, no reason not to write. */
  readonly doubts: readonly Problem[];
}

/** The holes written into the file and the file checked as any other. */
export function writeHoles(analysis: Analysis, holes: readonly DrilledHole[]): WrittenHoles {
  const { source, variant, assessment } = analysis;
  const { settings } = assessment;
  const statements = holes.map((hole) => statementOf(hole, speaksInches(analysis)));
  const edits = statements.length === 0 ? [] : [insertionOf(source.tree, statements)];
  const before = analyseAll(source, settings);
  const after = analyseAll(readSource(applyEdits(source.text, edits)), settings);
  const found = newProblems(before, after);
  return {
    edits,
    statements,
    analysis: after.find((candidate) => candidate.variant === variant) ?? analysis,
    problems: found.filter(({ code }) => code !== "hole-too-small"),
    doubts: found.filter(({ code }) => code === "hole-too-small"),
  };
}

function statementOf({ radiusMm, angleDeg, drill }: DrilledHole, inches: boolean): string {
  const { unit, mmPerUnit, decimals } = shopSteps(inches);
  const radius = `${fixed(radiusMm / mmPerUnit, decimals)} ${unit}`;
  const diameter = `${fixed(drill.diameterMm / mmPerUnit, DIAMETER_DECIMALS)} ${unit}`;
  return `hole (${radius} @ ${fixed(angleDeg, 1)} deg) diameter ${diameter}`;
}

/** A sixty-fourth of an inch has six decimals. */
const DIAMETER_DECIMALS = 6;

const BESIDE: readonly Statement["kind"][] = ["hole", "hole-ring", "bore", "slot", "cutout", "outline"];

/** Behind the line of the last hole, or of the bore, slot, cutout or outline where there is none. */
function insertionOf({ text, statements }: SyntaxTree, lines: readonly string[]): TextEdit {
  const ends = BESIDE.map(
    (kind) => statements.filter((statement) => statement.kind === kind).at(-1)?.range.end,
  );
  const holes = Math.max(ends[0] ?? -1, ends[1] ?? -1);
  const behind = holes >= 0 ? holes : Math.max(...ends.map((end) => end ?? -1));
  const lineEnd = /\r?\n|$/.exec(text.slice(behind))?.index ?? 0;
  const at = behind + lineEnd;
  const lineBreak = text.includes("\r\n") ? "\r\n" : "\n";
  return { start: at, end: at, newText: lines.map((line) => `${lineBreak}${line}`).join("") };
}
