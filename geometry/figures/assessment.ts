import type { BitePoint, BiteProfile, SpeedLimit, StruckBite } from "../bite/bite.ts";
import type { Design } from "../language/design.ts";
import type { Outline } from "../outline/segment.ts";
import type { FightAssessment } from "./fight.ts";
import type { MassProperties } from "./mass.ts";
import type { Section } from "./section.ts";
import type { Settings } from "./settings.ts";

/** What the bar does to its target over the closing speeds of the file. */
export interface BiteAssessment {
  readonly profile: BiteProfile;
  readonly teeth: number;
  readonly clean: SpeedLimit;
  readonly teethOnly: SpeedLimit;
  /** The closing speeds of the file, or else of the settings. */
  readonly fromMPerS: number;
  readonly toMPerS: number;
  /** Worked out when it is first looked at: it costs more than all the rest. */
  readonly curve: readonly BitePoint[];
  /** The bite at one more closing speed, for `bite at …`. */
  at(closingMPerS: number): StruckBite;
}

/** Everything measured on one design; each part is `null` where what it needs is missing. */
export interface Assessment {
  readonly design: Design;
  readonly settings: Settings;
  readonly outline: Outline | null;
  readonly section: Section | null;
  readonly mass: MassProperties | null;
  /** Worked out when it is first looked at. */
  readonly bite: BiteAssessment | null;
  /** Worked out when it is first looked at. */
  readonly fight: FightAssessment;
}
