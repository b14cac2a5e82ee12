import type { Design, Requirement } from "./design.ts";

/** What the label of a limit ends in that an event states. */
export const OF_EVENT = " (event)";

/** Every limit that the bar is held to: the requirements of the file, then the limits of its event. */
export function statedLimits({ requirements, event }: Design): readonly Requirement[] {
  return event === null ? requirements : [...requirements, ...event.limits];
}
