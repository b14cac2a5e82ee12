/** What is always shown with the numbers: estimates do not keep fingers on hands, people do. */
export const CAUTIONS: readonly string[] = [
  "These are estimates for planning, not a guarantee.",
  "Spinning bars kill: guard it, lock it, and spin it only in a test box or arena.",
  "The event's rules and its safety inspector decide.",
  "Inspect steel parts for cracks after every fight.",
  "Have a qualified person check parts whose failure can hurt someone.",
];
