/** The fight around the bar, as far as a file tells of it: steering with the bar spinning, and a blow. */
import { blowOf, type CarriedBar, robotFault, type SceneFault, takenRobot } from "../fight/impact/scene.ts";
import type { OpponentDesign, RobotDesign } from "../language/design.ts";
import type { Assessment } from "./assessment.ts";
import { carriedBar } from "./carried-bar.ts";
import { type OpponentFigures, opponentFigures, opponentTerms } from "./opponent.ts";
import { type RobotFigures, robotFigures, robotTerms } from "./robot.ts";

export interface FightAssessment {
  readonly robot: RobotFigures | null;
  readonly opponent: OpponentFigures | null;
  /** Why there can be no such robot or blow; then what it concerns is null. */
  readonly fault: SceneFault | null;
}

const NOTHING: FightAssessment = { robot: null, opponent: null, fault: null };

/** Nothing without a robot or without a bar of known mass and spin. */
export function fightOf(
  measured: Pick<Assessment, "design" | "outline" | "section" | "mass">,
): FightAssessment {
  const { robot, opponent } = measured.design;
  const bar = robot && carriedBar(measured);
  return robot && bar ? fightWith(bar, robot, opponent) : NOTHING;
}

function fightWith(bar: CarriedBar, robot: RobotDesign, opponent: OpponentDesign | null): FightAssessment {
  const terms = robotTerms(robot);
  const fault = terms && robotFault(bar, terms);
  if (fault) return { ...NOTHING, fault };
  const figures = robotFigures(bar, robot, terms);
  const struck = opponent && opponentTerms(opponent);
  const blow = terms && struck && blowOf(bar, terms, struck);
  if (!terms || !opponent || !blow) return { ...NOTHING, robot: figures };
  if (typeof blow === "string") return { ...NOTHING, robot: figures, fault: blow };
  const { assumed } = takenRobot(bar, terms);
  const bolts = robot.bolts?.value ?? null;
  return { robot: figures, opponent: opponentFigures(blow, opponent, bolts, assumed), fault: null };
}
