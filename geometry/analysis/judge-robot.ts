/** Judging what a file says of its robot and opponent: what cannot be, and what is missing. */

import type { SceneFault } from "../fight/impact/scene.ts";
import type { Assessment } from "../figures/assessment.ts";
import { carriedBar } from "../figures/carried-bar.ts";
import { number, presentMeasure } from "../figures/present.ts";
import { robotTerms } from "../figures/robot.ts";
import type { Problem, Severity } from "../language/problem.ts";
import type { ProblemCode } from "../language/problem-codes.ts";
import type { TextRange } from "../language/text.ts";

export function judgeRobot(assessment: Assessment): Problem[] {
  return [...judgeUnsaid(assessment), ...judgeFault(assessment)];
}

function judgeUnsaid({ design: { robot, opponent } }: Assessment): Problem[] {
  const told: Problem[] = [];
  if (robot && robot.unsaid.length > 0) {
    const message = `The robot does not say ${listed(robot.unsaid)}: without, steering or a blow cannot be worked out.`;
    told.push(problem("information", "robot-unsaid", message, robot.keyword));
  }
  const lacking = [...(robot ? [] : ["a robot that strikes it"]), ...(opponent?.unsaid ?? [])];
  if (opponent && lacking.length > 0) {
    const message = `The blow cannot be worked out without ${listed(lacking)}.`;
    told.push(problem("information", "robot-unsaid", message, opponent.keyword));
  }
  return told;
}

function judgeFault(assessment: Assessment): Problem[] {
  const { robot, opponent } = assessment.design;
  const { fault } = assessment.fight;
  if (!robot || !fault) return [];
  const bar = carriedBar(assessment);
  const terms = robotTerms(robot);
  if (!bar || !terms) return [];
  const ranges: Readonly<Record<SceneFault, TextRange | undefined>> = {
    "lighter-than-bar": robot.massKg?.range,
    "bar-in-floor": robot.axleHeightMm?.range,
    "out-of-reach": opponent?.struckAtMm?.range,
  };
  const reach = millimetres(bar.tipRadiusM);
  const axle = millimetres(terms.axleHeightM);
  const messages: Readonly<Record<SceneFault, string>> = {
    "lighter-than-bar": `The robot weighs ${kilograms(terms.massKg)}, but its bar alone ${kilograms(bar.massKg)}; its mass counts the bar.`,
    "bar-in-floor": `The bar reaches ${reach} from its axle, which is ${axle} above the floor: it would strike the floor.`,
    "out-of-reach": `The bar reaches from ${millimetres(terms.axleHeightM - bar.tipRadiusM)} to ${millimetres(terms.axleHeightM + bar.tipRadiusM)} above the floor; it cannot strike at this height.`,
  };
  return [problem("error", CODES[fault], messages[fault], ranges[fault] ?? robot.keyword)];
}

const CODES: Readonly<Record<SceneFault, ProblemCode>> = {
  "lighter-than-bar": "robot-too-light",
  "bar-in-floor": "bar-in-floor",
  "out-of-reach": "strike-out-of-reach",
};

function problem(severity: Severity, code: ProblemCode, message: string, range: TextRange): Problem {
  return { severity, code, message, range, fixes: [] };
}

const millimetres = (metres: number) => `${number(metres * 1000, 4)} mm`;

function kilograms(massKg: number): string {
  const { text, unit } = presentMeasure("mass", massKg, "mm");
  return `${text} ${unit}`;
}

function listed(words: readonly string[]): string {
  const last = words.at(-1) ?? "";
  return words.length < 2 ? last : `${words.slice(0, -1).join(", ")} and ${last}`;
}
