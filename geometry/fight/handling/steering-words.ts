import type { Edge } from "../impact/strike.ts";

/** Why one direction of the bar is harder to steer, in plain words. */
export function steeringWords(edge: Edge): string {
  return `${COMMON} ${edge === "up" ? UP : DOWN} ${TWO_ARMS}`;
}

const COMMON =
  "A spinning bar resists being turned: as the robot turns, the bar leans it over, and the load shift of cornering leans it to the outside of the turn.";
const UP =
  "With the front edge moving up the bar leans it into the turn, against the load shift, so the robot stays flat up to some ground speed; on its back, or with the bar reversed, both lean it outwards and a wheel lifts sooner.";
const DOWN =
  "With the front edge moving down the bar leans it outwards as the load shift does, so the two add up and a wheel lifts sooner the faster it drives; on its back, or with the bar reversed, they oppose.";
const TWO_ARMS =
  "The faster the bar and the narrower the track, the slower it may be turned. What is told is the mean: a bar with two arms shakes the robot about it, twice a turn.";
